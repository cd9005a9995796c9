using Coolproof.Evidence.Model;
using MathNet.Numerics.Statistics;

namespace Coolproof.Evidence.Curves;

/// <summary>Roll-ins and delays as noted, else their posterior medians.</summary>
/// <param name="RollInS">Roll-in of each run of the model, s.</param>
/// <param name="DelayS">Delay of each reading of the model, s from halt.</param>
internal sealed record TypicalTimes(double[] RollInS, double[] DelayS)
{
    /// <summary>The times over some draws; the density is visited only where a delay was not noted.</summary>
    public static TypicalTimes Of(DayDensity density, double[][] draws)
    {
        DayModel model = density.Model;
        double[] rollIn = [.. model.Runs.Select(run => run.RollIn < 0 ? run.RollInS : draws.Select(u => Math.Exp(u[run.RollIn])).Median())];
        double[] delay = [.. model.Readings.Select(r => r.DelayS)];
        int[] unknown = [.. Enumerable.Range(0, delay.Length).Where(i => model.Readings[i].Gap >= 0)];
        if (unknown.Length == 0)
            return new(rollIn, delay);
        double[][] drawn = [.. unknown.Select(_ => new double[draws.Length])];
        for (int d = 0; d < draws.Length; d++)
        {
            density.Visit(draws[d]);
            for (int k = 0; k < unknown.Length; k++)
                drawn[k][d] = density.Seen[unknown[k]].Delay;
        }
        for (int k = 0; k < unknown.Length; k++)
            delay[unknown[k]] = drawn[k].Median();
        return new(rollIn, delay);
    }

    /// <summary>Grid of a run that has readings.</summary>
    public RunGrid Grid(DayModel model, int run) =>
        RunGrid.Of(model.Runs[run], RollInS[run], DelayS[model.Runs[run].FirstReading..model.Runs[run].EndReading].Max());
}
