using System.Globalization;
using Coolproof.Notebook;

namespace Coolproof.Evidence.Words;

/// <summary>What earlier days have added to a verdict, and where the new day doesn't agree with them.</summary>
internal static class EarlierWords
{
    // Pairs without any change that are called contradictory, of all pairs of a day together.
    private const double FalseAlarms = 0.05;

    /// <summary>The sentences: contradictions, the strongest first, and what the new day says by itself.</summary>
    /// <param name="before">Tables of the earlier days.</param>
    /// <param name="alone">The verdict from the new day by itself.</param>
    /// <param name="earlier">The verdict from the earlier days by themselves, at the same conditions; null where they can't be judged.</param>
    /// <param name="changes">How each option of the new day stands to what it was.</param>
    public static IReadOnlyList<string> Of(IReadOnlyList<ReadingsTable> before, Verdict alone, Verdict? earlier, IReadOnlyList<OptionChange> changes)
    {
        int days = before.Sum(b => b.Runs.Select(r => r.Day).Distinct().Count()), runs = before.Sum(b => b.Runs.Count);
        return
        [
            .. earlier is null ? [] : Contradictions(alone, earlier),
            .. Changed(before, changes),
            $"{(days == 1 ? "An earlier day" : $"{days} earlier days")} with {runs} {(runs == 1 ? "run" : "runs")} {(days == 1 ? "is" : "are")} in this answer. From this day alone: {alone.Sentence}",
        ];
    }

    // The option that stands out most: another one altered shows in all of them, turned round and weaker.
    private static IEnumerable<string> Changed(IReadOnlyList<ReadingsTable> before, IReadOnlyList<OptionChange> changes)
    {
        foreach (OptionChange c in changes.Where(c => c.Sds > OptionChanges.Limit(changes.Count)).OrderByDescending(c => c.Sds).Take(1))
        {
            double percent = 100 * Math.Abs(Math.Exp(c.LogRatio) - 1);
            int days = before.Sum(b => b.Runs.Where(r => Same(r.Option, c.Option)).Select(r => r.Day).Distinct().Count());
            yield return $"The {c.Option} shed {percent.ToString("0", CultureInfo.InvariantCulture)} % {(c.LogRatio < 0 ? "less" : "more")} heat per degree on this day than on {(days == 1 ? "the day" : $"the {days} days")} before ({c.Sds.ToString("0.0", CultureInfo.InvariantCulture)} standard deviations apart): is it the same one, at the same voltage, in the same place? If not, give it a new name; all its runs count together in this answer.";
        }
    }

    // The difference of two options on the day against that on the days before, in sds of both; the limit is for all pairs together (Šidák).
    private static IEnumerable<string> Contradictions(Verdict alone, Verdict earlier)
    {
        (PairVerdict New, PairVerdict Old)[] both = [.. from a in alone.Pairs
                                                        where a.On == ComparedOn.Can
                                                        from b in earlier.Pairs
                                                        where b.On == ComparedOn.Can && ((Same(a.A, b.A) && Same(a.B, b.B)) || (Same(a.A, b.B) && Same(a.B, b.A)))
                                                        select (a, Same(a.A, b.A) ? b : b.Turned())];
        double limit = MathNet.Numerics.Distributions.Normal.InvCDF(0, 1, 1 - 0.5 * (1 - Math.Pow(1 - FalseAlarms, 1.0 / Math.Max(both.Length, 1))));
        return both.Select(p => (p.New, p.Old, Sds: Math.Abs(p.New.DifferenceK.Mean - p.Old.DifferenceK.Mean) / Math.Sqrt(Square(p.New.DifferenceK.Sd) + Square(p.Old.DifferenceK.Sd))))
            .Where(p => p.Sds > limit).OrderByDescending(p => p.Sds)
            .Select(p => $"This day contradicts the earlier ones: the can with the {p.New.A} ran {Told(p.New.DifferenceK.Mean)} than with the {p.New.B}, before it ran {Told(p.Old.DifferenceK.Mean)} ({p.Sds.ToString("0.0", CultureInfo.InvariantCulture)} standard deviations apart). Was one of them altered or fitted otherwise? Then give it a new name.");
    }

    private static string Told(double k) => $"{Math.Abs(k).ToString("0", CultureInfo.InvariantCulture)} K {(k < 0 ? "cooler" : "hotter")}";

    private static bool Same(string a, string b) => string.Equals(a, b, StringComparison.OrdinalIgnoreCase);

    private static double Square(double x) => x * x;
}
