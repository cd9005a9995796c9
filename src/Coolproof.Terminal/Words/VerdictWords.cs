using Coolproof.Evidence;
using Coolproof.Evidence.Words;

namespace Coolproof.Words;

/// <summary>What is said of a verdict, whether on a terminal or on a page.</summary>
internal static class VerdictWords
{
    /// <summary>Under which conditions, and how the numbers are to be read.</summary>
    public static string Fair(Verdict verdict, DegreeWords degrees) =>
        $"Can and winding as hard driving ends: {degrees.Say(verdict.Fair.AmbientC, Decimals(verdict.Fair.AmbientC))} air, " +
        $"{DegreeWords.Number(verdict.Fair.DriveS)} s of driving, started at air, the same load for all. Brackets hold the truth 9 times in 10.";

    /// <summary>The largest doubt and what makes it smaller, by plain names.</summary>
    public static string Doubt(DoubtShare largest) =>
        $"{SourceOfDoubt.Of(largest.Source).Plain} ({DegreeWords.Number(largest.Share * 100)} % of it). To make it smaller, {SourceOfDoubt.Of(largest.Source).Remedy}.";

    /// <summary>Whether a piece of advice only repeats what stands beside the largest doubt.</summary>
    public static bool SaidBesideTheDoubt(string advice, Verdict verdict) =>
        verdict.Doubt.Count > 0 && advice.Contains(SourceOfDoubt.Of(verdict.Doubt[0].Source).Remedy, StringComparison.OrdinalIgnoreCase);

    /// <summary>How many more runs each would settle an open pair.</summary>
    public static string Settles(int? more) => more switch
    {
        null => "Runs alone won't tell",
        1 => "About 1 more run each",
        _ => $"About {more} more runs each",
    };

    /// <summary>How many more runs each would settle a pair of a verdict; null: runs alone won't.</summary>
    public static int? MoreRuns(PairVerdict pair, Verdict verdict)
    {
        int Runs(string name) => verdict.Options.First(option => option.Name == name).Runs;
        return RunsToSettle.Each(pair.DifferenceK, Runs(pair.A), Runs(pair.B), verdict.Doubt, verdict.SameWithinK);
    }

    /// <summary>What is said of a pair whose A is the likelier cooler one.</summary>
    public static string Call(PairVerdict pair, double sameWithinK, DegreeWords degrees) => pair.Call switch
    {
        PairCall.Open => $"not told yet ({Odds.Say(pair.ProbabilityACooler)})",
        PairCall.Same => $"the same within {degrees.SayDifference(sameWithinK, 1)}",
        _ => $"{Odds.Say(pair.ProbabilityACooler)} sure",
    };

    /// <summary>How the calculation went.</summary>
    public static string How(Verdict verdict)
    {
        var sampler = verdict.Sampler;
        return $"{sampler.Chains} independent walks of {sampler.Draws / Math.Max(1, sampler.Chains)} steps agree to within a factor of " +
            $"{DegreeWords.Number(sampler.RHatMax, 3)} and are worth at least {DegreeWords.Number(sampler.EssMin)} independent ones; " +
            $"{sampler.Divergences} steps went astray. Random seed {verdict.Seed}: the same table, options and seed give the same answer.";
    }

    static int Decimals(double celsius) => Math.Abs(celsius - Math.Round(celsius)) > 0.04 ? 1 : 0;
}
