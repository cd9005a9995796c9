using Coolproof.Evidence.Model;

namespace Coolproof.Evidence.Curves;

/// <summary>
/// The runs one by one as the evidence sees them. Every run of the model with at least one reading that counts is there, in the order of the table; void
/// runs, warm-ups and runs whose fan failed too (the option then is the one that the model has for it), so a comparison
/// of options on corrected readings has to leave those out. Readings of can and endbell are brought to the can at the end of hard driving, readings of the winding to the winding then: what
/// they say of the can rests on the motor's constants more than on the reading. A run's own heat is left as it was.
/// </summary>
internal static class RunCurves
{
    // Once a process: what runs for each draw is compiled fully at once (AggressiveOptimization), since it is over before it would have warmed up.
    private const int MostDraws = 200;

    /// <summary>Curve, corrected readings and misfit of each run.</summary>
    /// <param name="posterior">Draws; at most 200 of them, evenly thinned, are used.</param>
    public static IReadOnlyList<RunCurve> Of(Posterior posterior)
    {
        DayModel model = posterior.Fit.Model;
        double[][] draws = Thinned(posterior.Draws);
        DayDensity density = new(model);
        TypicalTimes times = TypicalTimes.Of(density, draws);
        int[] runs = [.. Enumerable.Range(0, model.Runs.Length).Where(r => model.Runs[r].EndReading > model.Runs[r].FirstReading)
            .OrderBy(r => model.Runs[r].TableRun)];
        AfterStop after = new(model, [.. runs.Select(r => (r, times.Grid(model, r)))]);
        RunTally[] tallies = [.. runs.Select((r, k) => new RunTally(model, r, after.Grid(k), draws.Length))];
        for (int d = 0; d < draws.Length; d++)
        {
            density.Visit(draws[d]);
            after.Step(density, draws[d]);
            double heatSpread = Math.Sqrt(Math.Pow(Priors.RunHeatSpread * HalfNormal.At(draws[d][Global.RunHeatSpread]).X, 2) + Priors.RunHeatFloor * Priors.RunHeatFloor);
            for (int k = 0; k < runs.Length; k++)
                tallies[k].Add(d, density, after, k, heatSpread);
        }
        return [.. tallies.Select(t => t.Curve(posterior, times))];
    }

    private static double[][] Thinned(IReadOnlyList<double[]> draws)
    {
        int count = Math.Min(MostDraws, draws.Count);
        return [.. Enumerable.Range(0, count).Select(i => draws[(int)((long)i * draws.Count / count)])];
    }
}
