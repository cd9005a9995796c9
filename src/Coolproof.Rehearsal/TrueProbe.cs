namespace Coolproof.Rehearsal;

/// <summary>The probe on the can and its logger, as they truly are.</summary>
/// <param name="OffsetK">Offset, K.</param>
/// <param name="Miss">What it misses of the can's rise over the air.</param>
/// <param name="LagS">Lag, s.</param>
/// <param name="ScatterK">Scatter from second to second, K.</param>
/// <param name="StepK">Steps of its numbers, K.</param>
/// <param name="ClockS">What its clock is ahead by after it was set by the trace's shape, s.</param>
public sealed record TrueProbe(double OffsetK, double Miss, double LagS, double ScatterK, double StepK, double ClockS)
{
    /// <summary>Draws one, by a day's seed.</summary>
    public static TrueProbe Drawn(long seed)
    {
        RandomStream chance = new(seed, "probe");
        return new(
            chance.Normal(TruthRanges.ProbeOffsetSdK), Math.Max(0, TruthRanges.ProbeMissMean + chance.Normal(TruthRanges.ProbeMissSd)), chance.In(TruthRanges.ProbeLagS),
            chance.In(TruthRanges.ProbeScatterK), TruthRanges.ProbeSteps[chance.Pick(TruthRanges.ProbeSteps.Length)], chance.Normal(TruthRanges.ProbeClockSdS));
    }

    /// <summary>What the logger writes each second of an evening: time by its clock, s from the first go, and °C. A first-order lag behind the can.</summary>
    /// <param name="day">A day that was traced.</param>
    /// <param name="evening">Which evening, from 0.</param>
    public IReadOnlyList<(double AtS, double ReadC)> Logged(SimulatedDay day, int evening)
    {
        ArgumentNullException.ThrowIfNull(day);
        CanTrace can = day.Traces[evening];
        RunTruth[] runs = [.. day.Truth.Runs.Where(run => run.Evening == evening)];
        RandomStream chance = new(day.Settings.Seed, "probe's scatter", evening);
        List<(double, double)> rows = [];
        double seen = double.NaN;
        for (double at = Math.Ceiling(can.AtS[0]); at <= can.AtS[^1]; at++)
        {
            double air = runs.MinBy(run => Math.Abs(run.GoS - at))!.AirC, truth = can.At(at);
            double meant = air + ((1 - Miss) * (truth - air)) + OffsetK;
            // Exact for a can that stays as it is over the second.
            seen = double.IsNaN(seen) ? meant : meant + ((seen - meant) * Math.Exp(-1 / LagS));
            rows.Add((at + ClockS, Math.Round((seen + chance.Normal(ScatterK)) / StepK) * StepK));
        }
        return rows;
    }
}
