using Coolproof.Notebook;
using Coolproof.Rehearsal;
using Coolproof.Traces.Thinning;

namespace Coolproof.Evidence.Tests.Calibration;

/// <summary>Simulated days read three times after each run by the gun, and the same days with the trace of a can probe in place of those readings.</summary>
internal static class TraceDays
{
    // A trace without a note of when power and fan went off, or the pack came out, counts no longer than this.
    private const double UntilS = 60;

    /// <summary>A day of some kind with three readings after each run, traced.</summary>
    public static SimulatedDay ThreeReadings(long seed) => Rehearse.Day(DayGenerator.Settings(seed, sameOptionTwice: false) with { ReadingsPerRun = 3, Traced = true });

    /// <summary>Judges a day by its trace, and again as an ideal observer of it.</summary>
    public static DayOutcome Judged(long seed, SimulatedDay day)
    {
        TrueProbe probe = TrueProbe.Drawn(seed);
        return DayJudging.Of(seed, day, WithTrace(day, probe), KnownWith(day, probe));
    }

    /// <summary>What is noted of it where a probe's trace stands in place of the gun's readings: the can before each run too, and no other note changes.</summary>
    public static ReadingsTable WithTrace(SimulatedDay day, TrueProbe probe)
    {
        IReadOnlyList<(double AtS, double ReadC)> logged = probe.Logged(day, 0);
        double[] at = [.. logged.Select(row => row.AtS)], read = [.. logged.Select(row => row.ReadC)];
        return day.Table with { Runs = [.. day.Runs.Zip(day.Truth.Runs, (noted, truth) => Traced(noted, truth, at, read))] };
    }

    private static Run Traced(Run noted, RunTruth truth, double[] at, double[] read)
    {
        double halt = truth.GoS + truth.DriveS + truth.RollInS;
        double until = noted.PowerOffS is { } off && off > 10 ? Math.Min(off, UntilS) : UntilS;
        IReadOnlyList<StopReading> readings = StopReadings.Of([.. at.Select(s => s - halt)], read, until);
        return noted with
        {
            Readings = [.. readings.Select(r => new Reading(0, Math.Round(r.Value, 2), Math.Round(r.AfterHaltS, 1), Instrument: "probe", Surface: SpotSurface.Tape, Hold: Hold.Average))],
        };
    }

    /// <summary>What an ideal observer of the trace knows: the generator's spreads, and the probe's scatter, which no aim adds to.</summary>
    public static Hyperparameters KnownWith(SimulatedDay day, TrueProbe probe) => day.Truth.Hyperparameters with { ScatterK = Math.Max(probe.ScatterK, 0.21), AimLossMean = 0.004 };
}
