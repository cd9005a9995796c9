using Coolproof.Notebook;

namespace Coolproof.Evidence.Words;

/// <summary>What to do next, in plain words, most useful first.</summary>
internal static class Advice
{
    private const int MostPairs = 3;

    // Two options this many bands apart at most, this surely, are near enough for any use.
    private const double NearBands = 2, NearAt = 0.8;

    /// <summary>The advice; empty only where nothing is left to do.</summary>
    /// <param name="table">The table.</param>
    /// <param name="options">Options judged.</param>
    /// <param name="pairs">Every pair on can and winding.</param>
    /// <param name="main">The most probable coolest and its closest rival; null with a single option.</param>
    /// <param name="doubt">Where the doubt about the main difference comes from, largest first.</param>
    /// <param name="sameWithinK">Half-width of the "same" band, K.</param>
    public static IReadOnlyList<string> Of(
        ReadingsTable table, IReadOnlyList<OptionVerdict> options, IReadOnlyList<PairVerdict> pairs, PairVerdict? main, IReadOnlyList<DoubtShare> doubt, double sameWithinK)
    {
        List<string> said = [];
        PairVerdict[] open = main is null ? [] : [.. OpenAtTheTop(options, pairs, main)];
        if (main is null)
            said.Add("Drive a second option, or the bare can, on the same day: one option alone can't be ranked.");
        said.AddRange(Settling(table, options, [.. open.Take(MostPairs)], doubt, sameWithinK));
        if (doubt.Count > 0)
            said.AddRange(Sharper(SourceOfDoubt.Of(doubt[0].Source), answered: open.Length == 0));
        said.AddRange(Habits(table, options));
        return [.. said.Distinct()];
    }

    // The most probable coolest against each rival that it can't be told from, the closest first.
    private static IEnumerable<PairVerdict> OpenAtTheTop(IReadOnlyList<OptionVerdict> options, IReadOnlyList<PairVerdict> pairs, PairVerdict main)
    {
        string best = options.Where(o => o.Name == main.A || o.Name == main.B).MaxBy(o => o.ProbabilityCoolest)!.Name;
        return pairs.Where(p => p.On == ComparedOn.Can && p.Call == PairCall.Open && (p.A == best || p.B == best))
            .Select(p => Facing.From(p, best)).OrderBy(p => Math.Abs(p.DifferenceK.Mean));
    }

    // What would settle the open pairs, all with the same option as A.
    private static IEnumerable<string> Settling(
        ReadingsTable table, IReadOnlyList<OptionVerdict> options, PairVerdict[] open, IReadOnlyList<DoubtShare> doubt, double sameWithinK)
    {
        List<string> stubborn = [];
        foreach (PairVerdict pair in open)
        {
            string both = $"{Say.Option(pair.A)} and {Say.Option(pair.B)}";
            int? more = RunsToSettle.Each(pair.DifferenceK, Runs(pair.A), Runs(pair.B), doubt, sameWithinK);
            double alike = RunsToSettle.Inside(Math.Abs(pair.DifferenceK.Mean), pair.DifferenceK.Sd, NearBands * sameWithinK);
            if (!Spots.Common(table, pair.A, pair.B))
                yield return $"Read the same spot on {both}, the band of the can between mount and endbell: they can't be compared as they were read.";
            else if (more is { } n)
                yield return $"About {(n == 1 ? "one more run" : InWords(n) + " more runs")} each of {both} would settle which is cooler, or that they are the same.";
            else if (alike >= NearAt)
                yield return $"More runs of {both} are hardly worth it: they are within {Say.Number(NearBands * sameWithinK)} K of each other, {Odds.Say(alike)} sure.";
            else
                stubborn.Add(Say.Option(pair.B));
        }
        if (stubborn.Count > 0)
            yield return $"Six more runs each would hardly settle {Say.Option(open[0].A)} against {Say.List(stubborn)} as things stand: make the largest doubt smaller first.";

        int Runs(string name) => options.First(o => o.Name == name).Runs;
    }

    private static string InWords(int count) => count switch { 2 => "two", 3 => "three", 4 => "four", 5 => "five", _ => "six" };

    private static IEnumerable<string> Sharper(SourceOfDoubt largest, bool answered)
    {
        if (answered)
            yield return "The question is answered.";
        yield return $"{(answered ? "For sharper numbers next time, " + largest.Remedy : Say.Capital(largest.Remedy))}: the largest doubt is {largest.Plain}.";
    }

    private static IEnumerable<string> Habits(ReadingsTable table, IReadOnlyList<OptionVerdict> options)
    {
        string[] once = [.. options.Where(o => o.Runs == 1).Select(o => Say.Option(o.Name))];
        if (options.Count > 1 && once.Length > 0)
        {
            yield return once.Length == options.Count
                ? "Repeat every option at least once: with one run each, a hard run looks like a bad option."
                : $"Repeat {Say.List(once)} at least once: with one run, a hard run looks like a bad option.";
        }
        switch (RunSequence.Of(table))
        {
            case OrderOfRuns.SameEachRound:
                yield return "Shuffle the order from round to round: in a fixed order the same option always gets the warmth of the one before it.";
                break;
            case OrderOfRuns.OneAfterAnother:
                yield return "Mix the order of the options: one after another, the drift of the day counts for or against whichever came last.";
                break;
        }
        string[] failed = [.. table.Runs.Where(r => r.Fan == FanInRun.Failed).Select(r => Say.Option(r.Option)).Distinct(StringComparer.OrdinalIgnoreCase)];
        if (failed.Length > 0)
            yield return $"Put the fan of {Say.List(failed)} right and drive {(failed.Length == 1 ? "it" : "them")} again: runs with a fan that failed don't count for the option.";
        if (Spots.SurfacesDiffer(table, options))
            yield return "Put the same matt tape on the same spot under every option, and shoot only that.";
    }
}
