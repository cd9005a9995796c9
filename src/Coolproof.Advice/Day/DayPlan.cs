using Coolproof.Advice.Orders;

namespace Coolproof.Advice.Day;

/// <summary>One run of the day as planned.</summary>
/// <param name="Option">Option, by name.</param>
/// <param name="Round">Which round, from 1.</param>
/// <param name="GoS">Go, s from the first go.</param>
/// <param name="HaltS">End of hard driving, s from the first go.</param>
public readonly record struct RunOfDay(string Option, int Round, double GoS, double HaltS);

/// <summary>A day as planned.</summary>
/// <param name="Options">Options of the question.</param>
/// <param name="Runs">Runs in order.</param>
/// <param name="Order">The order with its expected width and balance.</param>
/// <param name="Evenings">Where not all options fit: which to drive on which evening, the reference on each; a single entry where all fit.</param>
/// <param name="Dropped">Where there is but this day: options to leave out, those that swap most slowly first; empty where all fit.</param>
/// <param name="Advice">What to know of this day, in plain words.</param>
public sealed record DayPlan(
    IReadOnlyList<string> Options, IReadOnlyList<RunOfDay> Runs, PlannedOrder Order, IReadOnlyList<IReadOnlyList<string>> Evenings, IReadOnlyList<string> Dropped,
    IReadOnlyList<string> Advice)
{
    // With one run each nothing tells an option from how it happened to be fitted and driven that time.
    private const int LeastRunsEach = 2;

    /// <summary>Plans a day.</summary>
    /// <param name="options">Names of the options, in the order of the limits.</param>
    /// <param name="limits">What the day allows.</param>
    /// <param name="noise">What runs are off by.</param>
    /// <param name="seed">Seed.</param>
    public static DayPlan Of(IReadOnlyList<string> options, DayLimits limits, RunNoise noise, long seed)
    {
        PlannedOrder order = OrderSearch.Best(limits, noise, seed);
        int[] seen = new int[options.Count];
        RunOfDay[] runs = [.. order.Options.Select((o, i) => new RunOfDay(options[o], ++seen[o], order.StartS[i], order.StartS[i] + limits.DriveS))];
        int hold = Math.Max(order.Options.Count, Holding(limits)), most = options.Count == 1 ? 1 : hold / LeastRunsEach;
        bool fit = most >= options.Count || options.Count < 2;
        return new(options, runs, order, fit ? [options] : Split(options, limits, most), fit ? [] : Slowest(options, limits, Math.Max(most, 2)), [.. Advised(options, limits, order, seen, fit ? null : hold)]);
    }

    // How many runs the day has room for, as far as it takes for each option to come often enough. The order itself may be shorter: with what can't be
    // undone it holds whole rounds only.
    private static int Holding(DayLimits limits)
    {
        IEnumerable<int> free = Enumerable.Range(0, limits.Options).Except(limits.CantBeUndone);
        return DaySchedule.Of([.. Enumerable.Repeat(free, LeastRunsEach).SelectMany(o => o), .. limits.CantBeUndone.SelectMany(o => Enumerable.Repeat(o, LeastRunsEach))], limits).Runs;
    }

    // As many evenings as it takes, each with the reference, the rest dealt evenly.
    private static IReadOnlyList<IReadOnlyList<string>> Split(IReadOnlyList<string> options, DayLimits limits, int most)
    {
        int reference = limits.Reference ?? 0, others = Math.Max(most - 1, 1);
        int[] rest = [.. Enumerable.Range(0, options.Count).Where(o => o != reference)];
        int evenings = (rest.Length + others - 1) / others;
        return [.. Enumerable.Range(0, evenings).Select(e => (IReadOnlyList<string>)[options[reference], .. rest.Where((_, i) => i % evenings == e).Select(o => options[o])])];
    }

    private static string[] Slowest(IReadOnlyList<string> options, DayLimits limits, int most)
    {
        double Swaps(int o) => Enumerable.Range(0, options.Count).Sum(p => limits.SwapS[o, p] + limits.SwapS[p, o]);
        return [.. Enumerable.Range(0, options.Count).Where(o => o != (limits.Reference ?? 0)).OrderByDescending(Swaps).ThenByDescending(o => o).Take(Math.Max(options.Count - most, 0)).Select(o => options[o])];
    }

    private static IEnumerable<string> Advised(IReadOnlyList<string> options, DayLimits limits, PlannedOrder order, int[] seen, int? tooFew)
    {
        if (tooFew is { } hold)
            yield return $"{hold} runs fit, too few for {options.Count} options twice each: leave some out, or split them over evenings that share {options[limits.Reference ?? 0]}.";
        else if (seen.Min() < LeastRunsEach && options.Count > 1)
            yield return $"Not every option comes twice: {string.Join(", ", options.Where((_, o) => seen[o] < LeastRunsEach))}. One run each can seldom tell options apart.";
        else if (seen.Max() - seen.Min() > 1)
            yield return "Options have unlike numbers of runs, since what can't be undone comes last: that is how the day fits.";
        if (order.WaitedForPackS > 60)
            yield return $"{order.WaitedForPackS / 60:0} min of this day are spent waiting for a charged pack: one more pack or charger gives them back.";
        if (limits.CantBeUndone.Count > 0)
            yield return $"Last, since it can't be undone: {string.Join(", ", limits.CantBeUndone.Select(o => options[o]))}. Drift of the day falls on it; with a second shell it could take turns with the others.";
        if (order.WidthAfterRoundK.Count > 1)
            yield return "Rounds hold each option once: cut the day short after any round and it still compares fairly.";
    }
}
