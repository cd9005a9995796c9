using Coolproof.Evidence;
using Coolproof.Evidence.Words;
using Coolproof.Notebook;
using Coolproof.Screen;

namespace Coolproof.Words;

/// <summary>All that stands behind a verdict, for whoever wants to check it: every option, pair, doubt and reading.</summary>
internal static class DetailsPage
{
    const int DoubtIndent = 7;

    /// <summary>The lines of the page, as long as it takes.</summary>
    public static IReadOnlyList<string> Lines(Verdict verdict, PageSettings page) =>
    [
        .. Cells.Wrap(Cells.Clean(verdict.SentenceIn(page.Degrees.In)), page.Width).Select(page.Ink.Bold), "", .. VerdictPage.Fair(verdict, page), "",
        .. RankingTable.Lines(Ranking.Of(verdict), int.MaxValue, page),
        .. Shed(verdict, page), .. Pairs(verdict, ComparedOn.Can, page), .. Pairs(verdict, ComparedOn.Winding, page), .. Doubts(verdict, page),
        .. CorrectedReadings.Lines(verdict, page), .. Second(verdict, page), .. How(verdict, page),
        .. All("Mind", verdict.Warnings, page), .. All("Next", verdict.Advice, page),
        "", .. Labelled.Text("At the stop", Cautions.Of(verdict, page.Degrees), page),
    ];

    static IEnumerable<string> Shed(Verdict verdict, PageSettings page)
    {
        if (verdict.Options.Count == 0) yield break;
        var perDegree = page.Degrees.In == TemperatureUnitChoice.Fahrenheit ? 1 / 1.8 : 1;
        yield return "";
        yield return page.Ink.Bold("Watts shed per degree over the air, while driving");
        foreach (var line in Cells.Wrap(
            $"Against {Cells.Clean(verdict.Options[0].Name)}: what the readings give. In watts per {page.Degrees.Unit}: scale from the motor's mass.", page.Width))
            yield return page.Ink.Faint(line);
        var rows = Ranking.Of(verdict).Select(option => new[]
        {
            Cells.Clean(option.Name), $"{option.Runs} runs", $"{option.Readings} readings", $"× {Range(option.RelativeConductance, 1)}",
            $"{Range(option.WattsPerKelvin, perDegree)} W/{page.Degrees.Unit}",
        });
        foreach (var line in TextColumns.Lines(rows, [false, true, true, false, false], page.Width)) yield return line;
    }

    static string Range(Summary s, double factor) =>
        $"{DegreeWords.Number(s.Q50 * factor, 2)} ({DegreeWords.Number(s.Q05 * factor, 2)} to {DegreeWords.Number(s.Q95 * factor, 2)})";

    static IEnumerable<string> Pairs(Verdict verdict, ComparedOn on, PageSettings page)
    {
        var pairs = verdict.Pairs.Where(pair => pair.On == on).Select(Ranking.CoolerFirst).ToList();
        if (pairs.Count == 0) yield break;
        yield return "";
        yield return page.Ink.Bold(on == ComparedOn.Can ? "Every pair, on the can" : "Every pair, on the winding");
        var rows = pairs.Select(pair => new[]
        {
            Cells.Clean(pair.A), $"{page.Degrees.DifferenceAndRange(pair.DifferenceK.Turned())} cooler than", Cells.Clean(pair.B),
            VerdictWords.Call(pair, verdict.SameWithinK, page.Degrees),
        });
        foreach (var line in TextColumns.Lines(rows, [false, true, false, true], page.Width)) yield return line;
    }

    static IEnumerable<string> Doubts(Verdict verdict, PageSettings page)
    {
        if (verdict.Doubt.Count == 0 || verdict.MainPair is null) yield break;
        yield return "";
        foreach (var line in Cells.Wrap(
            $"Where the doubt comes from, between {Cells.Clean(verdict.MainPair.A)} and {Cells.Clean(verdict.MainPair.B)}", page.Width))
            yield return page.Ink.Bold(line);
        foreach (var share in verdict.Doubt)
        {
            var source = SourceOfDoubt.Of(share.Source);
            var percent = Cells.Right($"{DegreeWords.Number(share.Share * 100)} %", DoubtIndent - 2) + "  ";
            foreach (var line in Cells.Wrap($"{source.Plain}; to make it smaller, {source.Remedy}", page.Width, percent, new string(' ', DoubtIndent))) yield return line;
        }
    }

    static IEnumerable<string> Second(Verdict verdict, PageSettings page)
    {
        if (verdict.SecondOpinion is not { } second) yield break;
        yield return "";
        foreach (var line in Cells.Wrap($"A second look: {page.Put(second.Method)}", page.Width)) yield return page.Ink.Bold(line);
        foreach (var line in Cells.Wrap(Cells.Clean(verdict.RemarkIn(page.Degrees.In)), page.Width)) yield return line;
        var rows = second.Pairs.Select(pair => new[]
        {
            Cells.Clean(pair.A), "against", Cells.Clean(pair.B),
            $"{DegreeWords.Signed(page.Degrees.Difference(pair.DifferenceK), 1)} {page.Degrees.Unit}",
            double.IsNaN(pair.StandardErrorK) ? "doubt unknown" : $"give or take {page.Degrees.SayDifference(pair.StandardErrorK, 1)}",
            pair.Agrees ? "agrees" : "differs",
        });
        foreach (var line in TextColumns.Lines(rows, [false, false, false, true, false, false], page.Width)) yield return line;
    }

    static IEnumerable<string> How(Verdict verdict, PageSettings page)
    {
        yield return "";
        yield return page.Ink.Bold("How the calculation went");
        foreach (var line in Cells.Wrap(VerdictWords.How(verdict), page.Width)) yield return line;
    }

    static IEnumerable<string> All(string label, IReadOnlyList<string> texts, PageSettings page)
    {
        if (texts.Count == 0) yield break;
        yield return "";
        foreach (var line in Labelled.Items(label, [.. texts.Select(page.Put)], int.MaxValue, page)) yield return line;
    }
}
