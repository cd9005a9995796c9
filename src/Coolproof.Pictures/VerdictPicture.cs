using System.Globalization;
using Coolproof.Evidence;
using Coolproof.Pictures.Drawing;

namespace Coolproof.Pictures;

/// <summary>The verdict as one picture: options coolest first, differences to the coolest, the doubt beneath.</summary>
public static class VerdictPicture
{
    private const int WarningsShown = 4;

    /// <summary>Draws the verdict.</summary>
    /// <param name="verdict">Any number of options, none included.</param>
    /// <param name="style">Width, theme, units; null: a page, light, Celsius.</param>
    /// <exception cref="ArgumentException">A quantile is not a finite number.</exception>
    public static Picture Of(Verdict verdict, PictureStyle? style = null)
    {
        style ??= new();
        style.Check();
        var sheet = new Sheet(style, Typesetter.BuiltIn);
        Measures m = sheet.Measures;
        string title = style.Title ?? verdict.Sentence;
        string conditions = Conditions(verdict.Fair, style.Unit);
        double y = Heading.Draw(sheet, title, conditions);
        var said = new List<string> { conditions };
        if (verdict.Options.Count == 0)
        {
            y = sheet.Paragraph("No option has a reading that counts yet. Shoot the motor after a run, and it will stand here.", m.Left, y + m.Margin, m.Right - m.Left, m.BodySize);
        }
        else
        {
            var ranking = new Ranking(sheet, verdict);
            y = ranking.Draw(y + m.Margin * (m.Narrow ? 1.4 : 0.8));
            said.AddRange(ranking.InWords());
        }

        if (verdict.Doubt.Count > 0)
        {
            y = Heading.Section(sheet, m.Left, y + m.Margin * (m.Narrow ? 1.6 : 0.9), m.Right - m.Left, DoubtBars.Finding(verdict), DoubtBars.About(verdict));
            y = DoubtBars.Draw(sheet, verdict, y + 12);
            said.Add($"Doubt: {string.Join(", ", DoubtBars.InWords(verdict))}.");
        }

        double height = Heading.Foot(sheet, y + m.Margin * 0.6, [.. Warnings(verdict), Counted(verdict), style.Note]);
        return new(sheet, height, title, string.Join(" ", said));
    }

    /// <summary>Draws only the options, coolest first, with their differences: for a page whose own words say the finding, the doubt and the remarks.</summary>
    /// <param name="verdict">One option at least.</param>
    /// <param name="style">Width, theme, units; its title is only for who can't see the picture. Null: a page, light.</param>
    /// <exception cref="ArgumentException">No option, or a quantile that is not a finite number.</exception>
    public static Picture OfRanking(Verdict verdict, PictureStyle? style = null)
    {
        if (verdict.Options.Count == 0) throw new ArgumentException("There is no option to draw.", nameof(verdict));
        style ??= new();
        style.Check();
        var sheet = new Sheet(style, Typesetter.BuiltIn);
        var ranking = new Ranking(sheet, verdict);
        double height = ranking.Draw(sheet.Measures.Margin * 0.5) + sheet.Measures.Margin * 0.5;
        return new(sheet, height, style.Title ?? verdict.Sentence, string.Join(" ", ranking.InWords()));
    }

    /// <summary>Draws the verdict and writes it.</summary>
    /// <param name="verdict">What was judged.</param>
    /// <param name="path">Ends in .svg or .png.</param>
    /// <param name="style">Width, theme, units.</param>
    /// <exception cref="PictureException">Another extension, or a place that can't be written.</exception>
    public static void Save(Verdict verdict, string path, PictureStyle? style = null) => Of(verdict, style).Save(path);

    private static string Conditions(FairConditions fair, Degrees unit) => string.Create(CultureInfo.InvariantCulture,
        $"All brought to the same terms: air {unit.Temperature(fair.AmbientC):0.#} {unit.Symbol}, {fair.DriveS / 60:0.#} minutes of hard driving, start at {(fair.Start == "ambient" ? "air temperature" : fair.Start)}.");

    private static IEnumerable<string> Warnings(Verdict verdict) => verdict.Warnings.Take(WarningsShown).Select(w => "Mind: " + w)
        .Concat(verdict.Warnings.Count > WarningsShown ? [$"Mind: {Words.Count(verdict.Warnings.Count - WarningsShown, "more remark")} in the table."] : []);

    private static string Counted(Verdict verdict) =>
        $"From {Words.Count(verdict.Options.Sum(o => o.Runs), "run")} and {Words.Count(verdict.Options.Sum(o => o.Readings), "reading")}. Drawn by Coolproof.";
}
