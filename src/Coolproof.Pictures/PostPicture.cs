using System.Globalization;
using Coolproof.Evidence;
using Coolproof.Evidence.Words;
using Coolproof.Pictures.Drawing;

namespace Coolproof.Pictures;

/// <summary>The verdict as one picture to post, of a fixed size: the sentence, each option with its runs and its interval, the terms, the date. No letter is small.</summary>
public static class PostPicture
{
    /// <summary>Least size of any letter, px: on a phone a square picture is shown some 380 px wide, so that it comes to 10 px there.</summary>
    public const double LeastTextPx = 28;

    /// <summary>A square, for a post: 1080 px.</summary>
    public const int SquarePx = 1080;

    /// <summary>A video's frame: 1920 px wide and as high as a square.</summary>
    public const int WidePx = 1920;

    private const double MarginPx = 48, SentenceShare = 0.34, Leading = 1.24;

    /// <summary>Draws the verdict on a sheet 1080 px high.</summary>
    /// <param name="verdict">One option at least.</param>
    /// <param name="about">When the readings were taken, and by what it was drawn.</param>
    /// <param name="style">Its width is <see cref="SquarePx"/> or <see cref="WidePx"/>; its title stands for the verdict's sentence, its note goes to the foot.</param>
    /// <exception cref="ArgumentException">No option, a quantile that is not a finite number, or another width.</exception>
    public static Picture Of(Verdict verdict, string about, PictureStyle style)
    {
        if (verdict.Options.Count == 0) throw new ArgumentException("There is no option to draw.", nameof(verdict));
        if (style.WidthPx is not (SquarePx or WidePx)) throw new ArgumentException($"A post is {SquarePx} or {WidePx} px wide, not {style.WidthPx}.", nameof(style));
        style.Check();
        var sheet = new Sheet(style, Typesetter.BuiltIn);
        double small = style.WidthPx == WidePx ? 32 : LeastTextPx, width = style.WidthPx - 2 * MarginPx;
        string sentence = style.Title ?? verdict.SentenceIn(style.Units);
        IReadOnlyList<string> foot = sheet.Type.Wrap($"{Terms(verdict.Fair, style.Unit)} {about} {style.Note}", small, false, width, 4);
        double footTop = SquarePx - MarginPx - foot.Count * small * Leading;
        var rows = new PostRows(sheet, verdict, small, MarginPx, style.WidthPx - MarginPx);
        double y = Sentence(sheet, sentence, width, small, footTop - rows.LeastHeight - MarginPx * 1.2) + MarginPx * 0.4;
        rows.Draw(y, footTop - MarginPx * 0.4);
        sheet.Line(MarginPx, footTop - MarginPx * 0.3, style.WidthPx - MarginPx, footTop - MarginPx * 0.3, sheet.Colours.Grid, 2);
        for (int i = 0; i < foot.Count; i++)
        {
            sheet.Text(foot[i], MarginPx, footTop + small * (0.95 + Leading * i), small, colour: sheet.Colours.Quiet);
        }

        return new(sheet, SquarePx, sentence, string.Join(" ", rows.InWords().Append($"{Terms(verdict.Fair, style.Unit)} {about} {style.Note}")));
    }

    /// <summary>The sentence as large as a third of the picture allows; a long one in the least size, cut only where the options would have no room.</summary>
    /// <returns>The y below.</returns>
    private static double Sentence(Sheet sheet, string sentence, double width, double small, double mostBottom)
    {
        double size = small * 1.9;
        double Height(double s) => sheet.Type.Wrap(sentence, s, true, width, int.MaxValue).Count * s * Leading;
        while (size > small && Height(size) > SquarePx * SentenceShare)
        {
            size = Math.Max(small, size - 2);
        }

        int lines = Math.Max(2, (int)((mostBottom - MarginPx) / (size * Leading)));
        return sheet.Paragraph(sentence, MarginPx, MarginPx, width, size, bold: true, maxLines: lines, leading: Leading);
    }

    private static string Terms(FairConditions fair, Degrees unit) => string.Create(CultureInfo.InvariantCulture,
        $"At the end of {fair.DriveS / 60:0.#} minutes of hard driving in {unit.Temperature(fair.AmbientC):0.#} {unit.Symbol} air. Thick bar: half of the chances; thin bar and brackets: nine tenths.");
}
