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
        List<string> above = [.. Cells.Wrap(Cells.Clean(verdict.SentenceIn(page.Degrees.In)), page.Width).Select(page.Ink.Bold), "", .. Fair(verdict, page), ""];
        var below = Below(verdict, page);
        var ranked = Ranking.Of(verdict);
        return [.. above, .. RankingTable.Lines(ranked, PageSettings.Height - above.Count - below.Count, page), .. below];
    }

    static List<string> Below(Verdict verdict, PageSettings page)
    {
        List<string> lines = [""];
        var open = Ranking.Open(verdict);
        if (open.Count > 0) lines.AddRange(Labelled.Items("Not told yet", OpenLines(open, verdict, page), OpenPairs + 1, page));
        if (verdict.Doubt.Count > 0) lines.AddRange(Labelled.Text("Largest doubt", Cells.Clean(VerdictWords.Doubt(verdict.Doubt[0])), page));
        if (verdict.SecondOpinion is not null) lines.AddRange(Labelled.Text("Second look", Cells.Clean(verdict.RemarkIn(page.Degrees.In)), page, faint: true));
        if (verdict.Warnings.Count > 0) lines.AddRange(Labelled.Items("Mind", [.. verdict.Warnings.Select(page.Put)], WarningLines, page));
        var advice = verdict.Advice.Where(text => !VerdictWords.SaidBesideTheDoubt(text, verdict)).ToList();
        if (advice.Count > 0) lines.AddRange(Labelled.Items("Next", [.. advice.Select(page.Put)], AdviceLines, page));
        lines.AddRange(Labelled.Text("At the stop", Cautions.Of(verdict, page.Degrees), page));
        return lines;
    }

    /// <summary>Under which conditions, and how the numbers are to be read.</summary>
    internal static IEnumerable<string> Fair(Verdict verdict, PageSettings page) => Cells.Wrap(VerdictWords.Fair(verdict, page.Degrees), page.Width);

    static List<string> OpenLines(IReadOnlyList<PairVerdict> open, Verdict verdict, PageSettings page) =>
        [.. open.Select(pair => OpenLine(pair, VerdictWords.Settles(VerdictWords.MoreRuns(pair, verdict)), page))];

    static string OpenLine(PairVerdict pair, string settle, PageSettings page)
    {
        var difference = page.Degrees.DifferenceAndRange(pair.DifferenceK.Turned());
        var bracket = difference.IndexOf('(');
        var middle = $" {difference[..bracket]}cooler {difference[bracket..]} than ";
        var (a, b) = (Cells.Clean(pair.A), Cells.Clean(pair.B));
        var room = Math.Max(16, page.Width - Labelled.Gutter - Cells.Width(middle + settle) - 2);
        // A short name leaves its room to the other one.
        var forA = Math.Max(room / 2, room - Cells.Width(b));
        a = Cells.Fit(a, forA);
        return $"{a}{middle}{Cells.Fit(b, room - Cells.Width(a))}? {settle}";
    }
}
