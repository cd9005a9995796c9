using Coolproof.Notebook;
using NodaTime;

namespace Coolproof.Evidence.Tests;

/// <summary>Small invented tables for tests of the model's pieces; the numbers are made up.</summary>
internal static class InventedDays
{
    public static ReadingsTable Plain(int options, int rounds, int readings = 3, bool clock = false, bool delays = true, int seed = 1) =>
        Make(seed, options, rounds, readings, (_, run) => run with
        {
            StartedAt = clock ? run.StartedAt : null,
            Readings = [.. run.Readings.Select(r => r with { StopToReadS = delays ? r.StopToReadS : null })],
        });

    /// <summary>Two runs a day, with clock times: more days than are laid out as globals.</summary>
    public static ReadingsTable ManyDays(int days) => Make(1, 2, days, 2, (i, run) => run with
    {
        Day = $"day {i / 2 + 1}",
        StartedAt = new LocalDateTime(2026, 6, 1, 15, 0).PlusDays(i / 2).PlusMinutes(30 * (i % 2)),
    });

    /// <summary>Everything at once: two days, one without clock, drivers, gearing, charge, unknown and cut-off delays, fan stops, endbell, resistance, void runs.</summary>
    public static ReadingsTable Rich(int seed = 1) => Make(seed, 3, 6, 4, (i, run) => run with
    {
        Day = i < 9 ? "first" : "second",
        StartedAt = i < 9 ? run.StartedAt : null,
        Kind = i == 2 ? RunKind.Void : i == 4 ? RunKind.Race : i == 0 ? RunKind.WarmUp : RunKind.Test,
        StartC = i % 3 == 0 ? 33 : null,
        RollInS = i % 2 == 0 ? 5 : null,
        StoodS = i == 5 ? 20 : 0,
        AirC = i == 3 ? null : run.AirC,
        FanAfterStop = i % 4 == 0 ? FanAfterStop.On : i % 4 == 1 ? FanAfterStop.Off : FanAfterStop.Unknown,
        PowerOffS = i % 8 == 0 ? 15 : null,
        Remounted = i == 11 ? false : null,
        Load = new(Driver: i % 5 == 0 ? "second driver" : "first driver", PinionTeeth: i % 6 == 0 ? 23 : 22, SpurTeeth: 78),
        Pack = new(i % 2 == 0 ? "one" : "two", null, i % 3 == 2 ? null : 1900 + 37 * i),
        Readings = [.. run.Readings.Select((r, k) => ((i + k) % 5) switch
        {
            0 => r with { StopToReadS = null },
            1 => r with { Spot = Spot.Endbell },
            2 => r with { Hold = Hold.Max, Surface = SpotSurface.Tape },
            3 when k == 2 => r with { ReadC = null, Winding = new(61, 22, 50, 25, null) },
            _ => r,
        })],
    });

    private static ReadingsTable Make(int seed, int options, int rounds, int readings, Func<int, Run, Run> change)
    {
        Random random = new(seed);
        List<Run> runs = [];
        string[] names = [.. Enumerable.Range(0, options).Select(i => $"option {(char)('A' + i)}")];
        for (int i = 0; i < options * rounds; i++)
        {
            double top = 62 + 4 * (i % options) + random.NextDouble() * 3, air = 26 + 0.1 * i + random.NextDouble();
            Reading[] shots = [.. Enumerable.Range(0, readings).Select(k =>
                new Reading(2 + i * readings + k, Math.Round(top - (8 + 7 * k) * 0.12 + random.NextDouble(), 1), 8 + 7 * k))];
            Run run = new("day", $"{i + 1}", names[i % options], new LocalDateTime(2026, 6, 1, 15, 0).PlusMinutes(25 * i), null, RunKind.Test, 360, false, 6, 0,
                CutShort.No, Math.Round(air, 1), AirSource.Thermometer, null, null, FanInRun.Ok, FanAfterStop.On, null, new(), new(), shots);
            runs.Add(change(i, run));
        }
        return new(runs, [], names);
    }
}
