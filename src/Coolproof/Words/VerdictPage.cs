using Coolproof.Evidence;
using Coolproof.Evidence.Words;
using Coolproof.Screen;

namespace Coolproof.Words;

/// <summary>A verdict for people, on one screen: the sentence, the ranking, what can't be told yet, the doubt, what to do.</summary>
internal static class VerdictPage
{
    const int WarningLines = 5;
    const int AdviceLines = 4;
    const int OpenPairs = 3;

    /// <summary>The lines of the page.</summary>
    public static IReadOnlyList<string> Lines(Verdict verdict, PageSettings page)
    {
        List<string> above = [.. Cells.Wrap(page.Put(verdict.Sentence), page.Width).Select(page.Ink.Bold), "", .. Fair(verdict, page), ""];
        var below = Below(verdict, page);
        var ranked = Ranking.Of(verdict);
        return [.. above, .. RankingTable.Lines(ranked, PageSettings.Height - above.Count - below.Count, page), .. below];
    }

    static List<string> Below(Verdict verdict, PageSettings page)
    {
        List<string> lines = [""];
        var open = Ranking.Open(verdict);
        if (open.Count > 0) lines.AddRange(Labelled.Items("Not told yet", OpenLines(open, verdict, page), OpenPairs + 1, page));
        if (verdict.Doubt.Count > 0) lines.AddRange(Labelled.Text("Largest doubt", Doubt(verdict.Doubt[0]), page));
        if (verdict.SecondOpinion is { } second) lines.AddRange(Labelled.Text("Second look", page.Put(second.Remark), page, faint: true));
        if (verdict.Warnings.Count > 0) lines.AddRange(Labelled.Items("Mind", [.. verdict.Warnings.Select(page.Put)], WarningLines, page));
        var advice = verdict.Advice.Where(text => !SaidBesideTheDoubt(text, verdict)).ToList();
        if (advice.Count > 0) lines.AddRange(Labelled.Items("Next", [.. advice.Select(page.Put)], AdviceLines, page));
        lines.AddRange(Labelled.Text("At the stop", Cautions.Of(verdict, page.Degrees), page));
        return lines;
    }

    /// <summary>Under which conditions, and how the numbers are to be read.</summary>
    internal static IEnumerable<string> Fair(Verdict verdict, PageSettings page) => Cells.Wrap(
        $"Can and winding as hard driving ends: {page.Degrees.Say(verdict.Fair.AmbientC, Decimals(verdict.Fair.AmbientC))} air, " +
        $"{DegreeWords.Number(verdict.Fair.DriveS)} s of driving, started at air, the same load for all. Brackets hold the truth 9 times in 10.", page.Width);

    static int Decimals(double celsius) => Math.Abs(celsius - Math.Round(celsius)) > 0.04 ? 1 : 0;

    static string Doubt(DoubtShare largest) =>
        $"{SourceOfDoubt.Of(largest.Source).Plain} ({DegreeWords.Number(largest.Share * 100)} % of it). To make it smaller, {SourceOfDoubt.Of(largest.Source).Remedy}.";

    static bool SaidBesideTheDoubt(string advice, Verdict verdict) =>
        verdict.Doubt.Count > 0 && advice.Contains(SourceOfDoubt.Of(verdict.Doubt[0].Source).Remedy, StringComparison.OrdinalIgnoreCase);

    static List<string> OpenLines(IReadOnlyList<PairVerdict> open, Verdict verdict, PageSettings page)
    {
        var runs = verdict.Options.ToDictionary(option => option.Name, option => option.Runs);
        return [.. open.Select(pair => OpenLine(pair, RunsToSettle.Each(pair.DifferenceK, runs[pair.A], runs[pair.B], verdict.Doubt, verdict.SameWithinK), page))];
    }

    static string OpenLine(PairVerdict pair, int? more, PageSettings page)
    {
        var difference = page.Degrees.DifferenceAndRange(pair.DifferenceK.Turned());
        var bracket = difference.IndexOf('(');
        var settle = more switch
        {
            null => "Runs alone won't tell",
            1 => "About 1 more run each",
            _ => $"About {more} more runs each",
        };
        var middle = $" {difference[..bracket]}cooler {difference[bracket..]} than ";
        var (a, b) = (Cells.Clean(pair.A), Cells.Clean(pair.B));
        var room = Math.Max(16, page.Width - Labelled.Gutter - Cells.Width(middle + settle) - 2);
        // A short name leaves its room to the other one.
        var forA = Math.Max(room / 2, room - Cells.Width(b));
        a = Cells.Fit(a, forA);
        return $"{a}{middle}{Cells.Fit(b, room - Cells.Width(a))}? {settle}";
    }
}
