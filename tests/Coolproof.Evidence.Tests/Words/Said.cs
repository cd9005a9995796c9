using Coolproof.Notebook;

namespace Coolproof.Evidence.Tests.Words;

/// <summary>Options and pairs with invented numbers, and what is found wrong with words.</summary>
internal static class Said
{
    public static readonly FairConditions Fair = new(28, 360);

    // Statistics' own words stay off the pages; "odds" and "doubt" are plain.
    private static readonly string[] Jargon =
        ["posterior", "regret", "divergence", "r-hat", "rhat", "conductance", "prior", "p-value", "significant", "confidence", "bayes", "variance", "random effect", "NaN", "Infinity", "∞"];

    public static Summary Around(double middle, double sd) =>
        new(middle, sd, middle - 1.645 * sd, middle - 0.674 * sd, middle, middle + 0.674 * sd, middle + 1.645 * sd);

    public static OptionVerdict Option(string name, double canC, double coolest, int runs = 3, double windingC = 90, double sd = 2) =>
        new(name, runs, 3 * runs, Around(canC, sd), Around(windingC, 2 * sd), Around(1, 0.05), Around(0.8, 0.1), coolest);

    public static PairVerdict Pair(string a, string b, double differenceK, double sd, PairCall? call = null, ComparedOn on = ComparedOn.Can)
    {
        double cooler = MathNet.Numerics.Distributions.Normal.CDF(0, 1, -differenceK / sd);
        return new(a, b, on, Around(differenceK, sd), cooler, call ?? (cooler >= 0.975 ? PairCall.ACooler : cooler <= 0.025 ? PairCall.BCooler : PairCall.Open));
    }

    public static ReadingsTable With(this ReadingsTable table, Func<Run, int, Run> change)
    {
        Run[] runs = [.. table.Runs.Select(change)];
        return table with { Runs = runs, Options = [.. runs.Select(r => r.Option).Distinct()] };
    }

    /// <summary>Options of a table, all alike but for their runs.</summary>
    public static OptionVerdict[] Options(ReadingsTable table) => [.. Enumerable.Range(0, table.Options.Count).Where(o => Judge.Counted(table, o).Any())
        .Select(o => Option(table.Options[o], 70, 1.0 / table.Options.Count, Judge.Counted(table, o).Count()))];

    public static void AssertPlain(string sentence)
    {
        Assert.DoesNotContain("!", sentence, StringComparison.Ordinal);
        Assert.DoesNotContain("  ", sentence, StringComparison.Ordinal);
        Assert.DoesNotContain("the the ", sentence, StringComparison.Ordinal);
        Assert.DoesNotContain("-", System.Text.RegularExpressions.Regex.Replace(sentence, "[a-zA-Z0-9]-[a-zA-Z]", ""), StringComparison.Ordinal);
        Assert.EndsWith(".", sentence, StringComparison.Ordinal);
        Assert.True(char.IsUpper(sentence[0]) || char.IsDigit(sentence[0]), sentence);
        foreach (string word in Jargon)
            Assert.DoesNotContain(word, sentence, StringComparison.OrdinalIgnoreCase);
    }
}
