using CsCheck;
using NodaTime;

namespace Coolproof.Notebook.Tests;

/// <summary>Random readings tables that are valid by the rules of FORMATS.md, with awkward names and full-length numbers.</summary>
internal static class TableGen
{
    private static readonly string[] OptionNames = ["bare can", "25\" fan, twin", "clamp; \"red\"", "=SUM(A1)", "naïve ✓ 你好", "-", "sep=;", "тест"];
    private static readonly string[] Texts = ["x", "two words", "comma, and \"quotes\"", "line\nbreak", "CR\r\nLF", "semi;colon", "\"", "61,5", "°", "# no comment", "1e5", "n/a"];
    private static readonly Gen<string> Text = OneOf(Texts);
    private static readonly Gen<string> Name = OneOf("Kim", "O'Neil, jr.", "car 2", "\"A\"", "ümlaut", "0");

    private static readonly Gen<WindingResistance?> Winding =
        Gen.Select(Gen.Double[1, 100], Gen.Double[1, 1.6], Or(Gen.Double[0, 3600]), Gen.Double[-30, 60], Or(Gen.Enum<WindingPair>()))
            .Select(WindingResistance? (cold, ratio, at, coldC, pair) => new(cold * ratio, at, cold, coldC, pair));

    private static readonly Gen<Reading> Reading =
        from readC in Or(Gen.Double[-40, 350])
        from delay in Gen.Frequency((5, Gen.Double[0, 3600].Select(double? (s) => s)), (1, Gen.Const((double?)null)))
        from instrument in OneOf("gun", "probe", "gun 2, old")
        from emissivity in Or(Gen.Double[0.05, 1])
        from kinds in Gen.Select(Gen.Enum<SpotSurface>(), Gen.Enum<Spot>(), Gen.Enum<Hold>())
        from winding in Gen.Frequency((3, Gen.Const((WindingResistance?)null)), (1, Winding))
        from words in Gen.Select(OrText(Text), OrText(Text))
        select Normal(new Reading(0, readC, delay, instrument, emissivity, kinds.Item1, kinds.Item2, kinds.Item3, winding, words.Item1, words.Item2));

    private static readonly Gen<Run> Run =
        from option in OneOf(OptionNames)
        from kind in Gen.Enum<RunKind>()
        from drive in Gen.Double[1, 7200]
        from assumed in Gen.Bool
        from seconds in Gen.Select(Or(Gen.Double[0, 300]), Gen.Double[0, 1], Or(Gen.Double[0, 3600]), Or(Gen.Double[1, 600]))
        from celsius in Gen.Select(Or(Gen.Double[-30, 60]), Or(Gen.Double[-40, 200]), Or(Gen.Double[-30, 90]))
        from states in Gen.Select(Gen.Enum<CutShort>(), Gen.Enum<AirSource>(), Or(Gen.Bool), Gen.Enum<FanInRun>(), Gen.Enum<FanAfterStop>())
        from weather in Gen.Select(Or(Gen.Enum<Sky>()), Or(Gen.Enum<Wind>()), Or(Gen.Enum<TrackState>()))
        from names in OrText(Name).Array[8]
        from counts in Gen.Select(Or(Gen.Int[5, 80]), Or(Gen.Int[10, 250]), Or(Gen.Int[0, 1000]))
        from figures in Gen.Select(Or(Gen.Double[-30, 90]), Or(Gen.Double[1, 70]), Or(Gen.Double[10, 30000]))
        from readings in Reading.List[kind is RunKind.WarmUp or RunKind.Void ? 0 : 1, 4]
        from note in OrText(Text)
        select new Run(
            "", "", option, null, null, kind, drive, assumed, seconds.Item1, seconds.Item2, states.Item1, celsius.Item1, states.Item2, celsius.Item2, states.Item3,
            states.Item4, states.Item5, seconds.Item3,
            new LoadNotes(names[0], names[1], names[2], names[3], names[4], names[5], names[6], counts.Item1, counts.Item2, figures.Item1),
            new PackNotes(names[7], figures.Item2, figures.Item3), Ordered(readings))
        {
            Sky = weather.Item1,
            Wind = weather.Item2,
            Track = weather.Item3,
            TrackC = celsius.Item3,
            Laps = counts.Item3,
            MeanLapS = seconds.Item4,
            Note = kind is RunKind.WarmUp or RunKind.Void ? note : null,
        };

    private static readonly Gen<List<Run>> Day =
        from runs in Run.List[1, 5]
        from clocked in Gen.Bool
        from starts in Gen.Long[0, 1_800_000_000_000].Array[runs.Count]
        from offset in Or(Gen.Int[-12, 14])
        select runs.Select((run, i) => run with
        {
            Name = i % 2 == 0 ? $"r{i}" : $"{i}, \"late\"",
            StartedAt = clocked ? new LocalDateTime(2026, 6, 13, 0, 0).PlusHours(4 * i).PlusNanoseconds(starts[i]) : null,
            StartedOffset = clocked && offset is { } hours ? Offset.FromHours(hours) : null,
        }).ToList();

    /// <summary>Tables of one to three days.</summary>
    public static readonly Gen<ReadingsTable> Table = Day.List[1, 3].Select(days =>
    {
        List<Run> runs = [.. days.SelectMany((day, d) => day.Select(run => run with { Day = $"day {d}", StartedAt = run.StartedAt?.PlusDays(d) }))];
        runs[0] = runs[0] with { DriveAssumed = false };
        double[] noted = [.. runs.Where(run => !run.DriveAssumed).Select(run => run.DriveS).Order()];
        double median = noted.Length % 2 == 1 ? noted[noted.Length / 2] : (noted[(noted.Length / 2) - 1] + noted[noted.Length / 2]) / 2;
        runs = [.. runs.Select(run => run.DriveAssumed ? run with { DriveS = median } : run)];
        return new ReadingsTable(runs, [], [.. runs.Select(run => run.Option).Distinct()]);
    });

    private static Gen<T> OneOf<T>(params T[] values) => Gen.Int[0, values.Length - 1].Select(i => values[i]);

    private static Gen<T?> Or<T>(Gen<T> some) where T : struct => Gen.Bool.SelectMany(noted => noted ? some.Select(T? (value) => value) : Gen.Const((T?)null));

    private static Gen<string?> OrText(Gen<string> some) => Gen.Bool.SelectMany(noted => noted ? some.Select(string? (value) => value) : Gen.Const((string?)null));

    // A row needs a reading or a winding; a winding alone is as late as its row.
    private static Reading Normal(Reading reading)
    {
        if (reading.ReadC is null && reading.Winding is null) reading = reading with { ReadC = 61.5 };
        return reading is { ReadC: null, Winding: { AtS: null } winding } ? reading with { Winding = winding with { AtS = reading.StopToReadS } } : reading;
    }

    private static List<Reading> Ordered(List<Reading> readings) =>
        readings.TrueForAll(reading => Time(reading) is not null) ? [.. readings.OrderBy(Time)] : readings;

    private static double? Time(Reading reading) => reading.StopToReadS ?? reading.Winding?.AtS;
}
