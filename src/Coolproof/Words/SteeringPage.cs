using Coolproof.Advice.Day;
using Coolproof.Screen;

namespace Coolproof.Words;

/// <summary>What to do next on a day that has begun, for people.</summary>
internal static class SteeringPage
{
    /// <summary>Line by line.</summary>
    public static IEnumerable<string> Lines(DayAdvice advice, DegreeWords degrees, int width)
    {
        foreach (string line in Cells.Wrap(Cells.Clean(Sentence(advice, degrees)), width)) yield return line;
        if (advice.Best is null) yield break;
        foreach (string line in Cells.Wrap(Cells.Clean(
            $"{advice.Best} leads {advice.Rival} by {degrees.SayDifference(advice.DifferenceK, 1)}, ± {degrees.SayDifference(advice.IntervalK / 2, 1)} (nine times in ten); the odds that it is cooler are {100 * advice.ProbabilityBestCooler:0} %."), width)) yield return line;
        if (advice.RunsLeft > 0)
            foreach (string line in Cells.Wrap(
                $"After the {advice.RunsLeft} {(advice.RunsLeft == 1 ? "run that is" : "runs that are")} left: ± {degrees.SayDifference(advice.IntervalThenK / 2, 1)}; settled with a chance of {100 * advice.ChanceSettled:0} %.", width)) yield return line;
        yield return "The next run would narrow that by:";
        string[][] rows = [.. advice.Next.Select(n => new[] { Cells.Clean(n.Option), double.IsNaN(n.NarrowsK) ? "not driven yet" : degrees.SayDifference(n.NarrowsK, 2) })];
        foreach (string line in TextColumns.Lines(rows, [false, true], width)) yield return "  " + line;
        if (advice.Rough) yield return "These readings could be judged only roughly, so nothing counts as settled yet.";
    }

    static string Sentence(DayAdvice advice, DegreeWords degrees) => advice.Call switch
    {
        GoOn.Settled => "Stop if you like: the main difference is settled. `coolproof compare` gives the verdict.",
        GoOn.DayOver => "The day is over: options without readings stay open; `coolproof compare` judges the rest.",
        GoOn.NotToday => $"What is left of the day will hardly settle it: the difference is small beside ± {degrees.SayDifference(advice.IntervalThenK / 2, 1)}. Stop, or drive on to narrow it.",
        _ => advice.Next.Count > 0 ? $"Drive on, next: {advice.Next[0].Option}." : "Drive on.",
    };
}
