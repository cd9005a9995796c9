using Coolproof.Evidence.Causes;
using Coolproof.Evidence.Words;
using Coolproof.Screen;

namespace Coolproof.Words;

/// <summary>A difference by its causes for people.</summary>
internal static class WhyPage
{
    const double LeastSaidK = 0.5;

    /// <summary>Line by line.</summary>
    public static IEnumerable<string> Lines(RunsNamed a, RunsNamed b, RunDifference difference, DegreeWords degrees, int width)
    {
        foreach (string line in Cells.Wrap(Sentence(a, b, difference, degrees), width)) yield return line;
        yield return "";
        string[][] rows =
        [
            ["from", degrees.Unit, "9 times in 10"],
            .. difference.Parts.Select(p => new[] { CauseWords.Name(p.Cause), Signed(p.DifferenceK.Mean), $"{Signed(p.DifferenceK.Q05)} to {Signed(p.DifferenceK.Q95)}" }),
            ["read", Signed(difference.ReadK), ""],
        ];
        foreach (string line in TextColumns.Lines(rows, [false, true, true], width)) yield return line;

        string Signed(double kelvin) => DegreeWords.Signed(degrees.Difference(kelvin), 1);
    }

    /// <summary>The answer in a sentence: largest parts first, those under half a kelvin left out.</summary>
    public static string Sentence(RunsNamed a, RunsNamed b, RunDifference difference, DegreeWords degrees)
    {
        string[] parts = [.. difference.Parts.Where(p => Math.Abs(p.DifferenceK.Mean) >= LeastSaidK).OrderByDescending(p => Math.Abs(p.DifferenceK.Mean))
            .Select(p => $"{DegreeWords.Signed(degrees.Difference(p.DifferenceK.Mean), 1)} {degrees.Unit} {(p.Cause == Cause.Rest ? "not explained" : "by " + CauseWords.Name(p.Cause))}")];
        string read = $"{Cells.Clean(a.Name)} read {degrees.SayDifference(Math.Abs(difference.ReadK), 1)} {(difference.ReadK < 0 ? "less" : "more")} than {Cells.Clean(b.Name)}";
        return char.ToUpperInvariant(read[0]) + read[1..] + (parts.Length > 0 ? $": {string.Join(", ", parts)}." : "; no cause makes half a degree.");
    }
}
