using Coolproof.Advice.Spending;
using Coolproof.Evidence;
using Coolproof.Screen;

namespace Coolproof.Words;

/// <summary>The best use of a budget for people.</summary>
internal static class SpendPage
{
    const int MostSteps = 8;
    const double LeastStepK = 0.4;

    /// <summary>Line by line.</summary>
    public static IEnumerable<string> Lines(SpendAnswer answer, CostWords costs, PageSettings page)
    {
        foreach (string line in Cells.Wrap(Sentence(answer, costs, page.Degrees), page.Width)) yield return page.Ink.Bold(line);
        yield return "";
        foreach (string line in Cells.Wrap($"Against the {Cells.Clean(answer.Sheet.Base)} at {page.Degrees.Say(answer.Fair.AmbientC, 1)} air and {answer.Fair.DriveS:0} s of driving, the same load for all. Brackets hold the truth 9 times in 10. {GramsCount(answer, costs)}", page.Width)) yield return line;
        yield return "";
        SpendStep[] shown = Shown(answer);
        string[][] rows = [["money", "adds", "counts", $"can cooler {page.Degrees.Unit}", "work", "known by"], .. shown.Select(s => Row(s.Choice, costs, page.Degrees))];
        string[] table = [.. TextColumns.Lines(rows, [true, true, true, true, false, false], page.Width)];
        yield return table[0];
        for (int i = 0; i < shown.Length; i++)
        {
            yield return table[i + 1];
            foreach (string line in Cells.Wrap(Parts(shown[i].Choice), page.Width, "      ", "      ")) yield return line;
        }
        if (shown.Length < answer.Steps.Count)
            foreach (string line in Cells.Wrap($"({answer.Steps.Count - shown.Length} more lie between: --json has them.)", page.Width)) yield return line;
        yield return "";
        foreach (string line in Labelled.Items("Next", [.. Next(answer, shown, costs, page.Degrees)], int.MaxValue, page)) yield return line;
        foreach (string line in Labelled.Items("Mind", [.. Mind(answer)], int.MaxValue, page)) yield return line;
    }

    /// <summary>The answer in a sentence.</summary>
    public static string Sentence(SpendAnswer answer, CostWords costs, DegreeWords degrees)
    {
        string[] limits = [.. new[] { answer.Sheet.Money is { } m ? costs.Money((double)m) : null, answer.Sheet.Grams is { } g ? $"{costs.Grams(g)} over the minimum" : null }.OfType<string>()];
        string within = limits.Length == 0 ? "Whatever it costs" : $"Within {string.Join(" and ", limits)}";
        SpendChoice best = answer.Best;
        if (best.Parts.Count == 0) return $"{within} nothing that fits makes the can cooler: keep the {Cells.Clean(answer.Sheet.Base)}.";
        string how = best.Basis switch { SpendBasis.Driven => "as driven", SpendBasis.AddedUp => "its parts added up, never driven together", SpendBasis.Predicted => "with a predicted mount in it, never driven", _ => "with a guess of yours in it" };
        return $"{within}: {Parts(best)}, for {costs.Money((double)best.Money)}. The can gets {Cooler(best.CanCoolerK, degrees)}, the winding {Cooler(best.WindingCoolerK, degrees)}, {how}.{Lap(best.LapS)}{Nearly(answer, costs)}";
    }

    // A last step that can't be told from nothing is money for a hope: the one before is named.
    static string Nearly(SpendAnswer answer, CostWords costs) => answer.Steps.Count > 2 && answer.Steps[^1].MoreK is { Q05: <= 0 } && answer.Steps[^2].Choice is { Parts.Count: > 0 } before
        ? $" It can't be told from {Parts(before)}, for {costs.Money((double)before.Money)}."
        : "";

    /// <summary>Which grams count.</summary>
    public static string GramsCount(SpendAnswer answer, CostWords costs) => answer.Sheet.Rules.FreeG switch
    {
        > 0 and var free => $"The first {costs.Grams(free)} don't count: the car is under the class's minimum by so much.",
        < 0 => "The car is over the class's minimum already: every gram counts.",
        _ => "Every gram counts.",
    };

    static string[] Row(SpendChoice c, CostWords costs, DegreeWords degrees) =>
    [
        costs.Money((double)c.Money), costs.Grams(c.MassG), costs.Grams(c.CountedG), c.Parts.Count == 0 ? "–" : CoolerBy(c.CanCoolerK, degrees), Work(c),
        Known(c),
    ];

    /// <summary>How it is known.</summary>
    public static string Known(SpendChoice c) => c.Parts.Count == 0 ? "" : c.Basis switch { SpendBasis.Driven => "driven", SpendBasis.AddedUp => "added up", SpendBasis.Predicted => "predicted", _ => "your guess" };

    /// <summary>Degrees cooler with their range, without the unit.</summary>
    public static string CoolerBy(Summary kelvin, DegreeWords degrees) =>
        $"{DegreeWords.Number(degrees.Difference(kelvin.Q50))} ({DegreeWords.Number(degrees.Difference(kelvin.Q05))} to {DegreeWords.Number(degrees.Difference(kelvin.Q95))})";

    /// <summary>Minutes, soldering, cutting.</summary>
    public static string Work(SpendChoice c) => c.Parts.Count == 0 ? "" : string.Join(", ", new[] { $"{c.FitMin:0} min", c.Soldering ? "soldering" : "", c.Cutting ? "cutting" : "" }.Where(t => t.Length > 0));

    /// <summary>Its parts, in words.</summary>
    public static string Parts(SpendChoice c) => c.Parts.Count == 0 ? "nothing" : Cells.Clean(string.Join(", ", c.Parts));

    static string Cooler(Summary kelvin, DegreeWords degrees) => kelvin.Q50 >= 0
        ? degrees.DifferenceAndRange(kelvin).Replace(" (", " cooler (", StringComparison.Ordinal)
        : degrees.DifferenceAndRange(kelvin.Turned()).Replace(" (", " hotter (", StringComparison.Ordinal);

    static string Lap(double? seconds) => seconds is { } s ? $" A lap takes {DegreeWords.Number(Math.Abs(s), 2)} s {(s > 0 ? "longer" : "less")} with it." : "";

    /// <summary>The steps that are told: those that bring something, the first and the last always.</summary>
    public static SpendStep[] Shown(SpendAnswer answer) => [.. Thinned(answer.Steps)];

    // The steps that bring something, the first and the last always.
    static IEnumerable<SpendStep> Thinned(IReadOnlyList<SpendStep> steps)
    {
        double least = LeastStepK;
        while (true)
        {
            List<SpendStep> kept = [steps[0]];
            foreach (SpendStep step in steps.Skip(1).SkipLast(1))
                if (step.Choice.CanCoolerK.Q50 - kept[^1].Choice.CanCoolerK.Q50 >= least && steps[^1].Choice.CanCoolerK.Q50 - step.Choice.CanCoolerK.Q50 >= least) kept.Add(step);
            if (steps.Count > 1) kept.Add(steps[^1]);
            if (kept.Count <= MostSteps) return kept;
            least *= 1.3;
        }
    }

    /// <summary>What the last bit of money brought, and what the next would.</summary>
    public static IEnumerable<string> Next(SpendAnswer answer, SpendStep[] shown, CostWords costs, DegreeWords degrees)
    {
        if (shown.Length > 2 && answer.Steps[^1].MoreK is { } last)
            yield return $"The last {costs.Money((double)answer.Steps[^1].MoreMoney)} bring {degrees.DifferenceAndRange(last)}{(last.Q05 <= 0 ? ": that can't be told from nothing" : "")}.";
        if (answer.BeyondMoney is { MoreK: { } more } money)
            yield return $"{costs.Money((double)money.MoreMoney)} more buy {degrees.DifferenceAndRange(more)}: {Parts(money.Choice)} ({costs.Money((double)money.Choice.Money)}{(more.Q05 <= 0 ? "; that can't be told from nothing" : "")}).";
        else if (answer.Sheet.Money is not null)
            yield return $"More money buys nothing cooler within twice the budget{(answer.Sheet.Grams is null ? "" : " and these grams")}.";
        if (answer.BeyondGrams is { MoreK: { } lighter } grams)
            yield return $"With {costs.Grams(grams.Choice.CountedG)} over the minimum, {degrees.DifferenceAndRange(lighter)} more: {Parts(grams.Choice)} ({costs.Money((double)grams.Choice.Money)}).";
        if (answer.Steps.Concat(answer.BeyondMoney is { } b ? [b] : []).Any(s => s.Choice.Basis is SpendBasis.AddedUp or SpendBasis.Predicted))
            yield return "Drive what was only added up or predicted before you trust it.";
    }

    /// <summary>What to mind.</summary>
    public static IEnumerable<string> Mind(SpendAnswer answer)
    {
        yield return "What was driven as one option is taken as measured. For parts never driven together the watts that each adds are added up, with a third of doubt more: they may share air and surface.";
        if (answer.NotAllowed.Count > 0) yield return $"Not allowed in this class as you typed it, and left out: {Cells.Clean(string.Join(", ", answer.NotAllowed))}.";
        if (answer.Unknown.Count > 0) yield return $"Of these nothing is known (neither driven nor a coolsK), so they are not bought: {Cells.Clean(string.Join(", ", answer.Unknown))}.";
        if (answer.Best.Soldering || answer.Best.Cutting) yield return $"{(answer.Best.Soldering ? "Solder with the pack unplugged, never on it." : "")}{(answer.Best.Soldering && answer.Best.Cutting ? " " : "")}{(answer.Best.Cutting ? "What is cut stays cut: measure twice." : "")}";
        yield return "Class rules, makers' limits and local codes come first.";
    }
}
