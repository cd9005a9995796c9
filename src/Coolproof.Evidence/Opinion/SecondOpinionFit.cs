using Coolproof.Evidence.Model;
using Coolproof.Evidence.Words;
using Coolproof.Notebook;
using Coolproof.Sampling.Classical;
using MathNet.Numerics.Distributions;

namespace Coolproof.Evidence.Opinion;

/// <summary>
/// A classical comparison of run averages beside the main answer: each run's corrected readings averaged, options as fixed effects, with driver and gearing
/// where they vary and can be told apart, days (or else mountings) as random effects. It knows nothing of the motor but the corrections.
/// </summary>
internal static class SecondOpinionFit
{
    private const double Confidence = 0.9;

    /// <summary>The second opinion; null with a single option.</summary>
    /// <param name="posterior">What is left to believe, for the table and for which option is coolest.</param>
    /// <param name="runs">Each run with its corrected readings.</param>
    /// <param name="canPairs">The main answer's pairs on the can; others are passed over.</param>
    public static SecondOpinion? Of(Posterior posterior, IReadOnlyList<RunCurve> runs, IReadOnlyList<PairVerdict> canPairs)
    {
        if (posterior.Options.Count < 2)
            return null;
        PairVerdict[] pairs = [.. canPairs.Where(p => p.On == ComparedOn.Can)];
        RunMean[] means = [.. Means(posterior, runs)];
        if (means.Select(m => m.Option).Distinct().Count() < 2)
            return new("a plain comparison of run averages", [], "A plain comparison of run averages needs readings of the can on at least two options.");
        Layout layout = Layout.Of(means);
        TreatmentComparison comparison = TreatmentComparison.Fit([.. means.Select(m => m.FairC)], DesignTerm.Factor("option", [.. means.Select(m => m.Option)]),
            layout.Fixed, layout.Random);
        HashSet<string> known = [.. means.Select(m => m.Option)];
        (PairVerdict Main, SecondOpinionPair Second)[] found = [.. pairs.Where(p => known.Contains(p.A) && known.Contains(p.B))
            .Select(p => (p, Second: Pair(comparison, p))).Where(x => double.IsFinite(x.Second.DifferenceK))];
        SecondOpinionPair[] seconds = [.. found.Select(f => f.Second)];
        return new(layout.Method, seconds, SecondOpinionRemark.Of(seconds, pairs, posterior.Table.Options[posterior.Options[Coolest(posterior.CanC)]]));
    }

    private static IEnumerable<RunMean> Means(Posterior posterior, IReadOnlyList<RunCurve> curves)
    {
        ReadingsTable table = posterior.Table;
        Dictionary<(string, string), int> mounting = [];
        foreach (ModelRun run in posterior.Fit.Model.Runs)
            mounting[(table.Runs[run.TableRun].Day, table.Runs[run.TableRun].Name)] = run.Mounting;
        foreach (int option in posterior.Options)
        {
            // Races are weak evidence, and a plain average can't weigh them.
            foreach (Run run in Judge.Counted(table, option).Where(r => r.Kind == RunKind.Test))
            {
                RunCurve? curve = curves.FirstOrDefault(c => c.Day == run.Day && c.Run == run.Name);
                double[] fair = [.. (curve?.Readings ?? []).Select(r => r.FairC).Where(double.IsFinite)];
                if (fair.Length > 0)
                    yield return new(table.Options[option], run, mounting.GetValueOrDefault((run.Day, run.Name), -1), fair.Average());
            }
        }
    }

    private static SecondOpinionPair Pair(TreatmentComparison comparison, PairVerdict main)
    {
        ContrastEstimate estimate = comparison.Difference(main.A, main.B);
        double half = double.IsFinite(estimate.StandardError) && estimate.DegreesOfFreedom > 0
            ? estimate.StandardError * StudentT.InvCDF(0, 1, Math.Max(estimate.DegreesOfFreedom, 1), 0.5 + Confidence / 2)
            : 0;
        bool agrees = estimate.Estimate - half <= main.DifferenceK.Q95 && estimate.Estimate + half >= main.DifferenceK.Q05;
        return new(main.A, main.B, estimate.Estimate, estimate.StandardError, agrees);
    }

    private static int Coolest(double[][] canC)
    {
        int[] coolest = new int[canC.Length];
        for (int i = 0; i < canC[0].Length; i++)
            coolest[Enumerable.Range(0, canC.Length).MinBy(k => canC[k][i])]++;
        return Array.IndexOf(coolest, coolest.Max());
    }
}
