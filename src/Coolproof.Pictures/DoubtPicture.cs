using Coolproof.Evidence;
using Coolproof.Pictures.Drawing;

namespace Coolproof.Pictures;

/// <summary>Where the doubt in the main difference comes from.</summary>
public static class DoubtPicture
{
    /// <summary>Draws the shares, largest first.</summary>
    /// <param name="verdict">With a single option it says that there is nothing to share out.</param>
    /// <param name="style">Width, theme; null: a page, light.</param>
    public static Picture Of(Verdict verdict, PictureStyle? style = null)
    {
        style ??= new();
        style.Check();
        var sheet = new Sheet(style, Typesetter.BuiltIn);
        string title = style.Title ?? DoubtBars.Finding(verdict);
        double y = Heading.Draw(sheet, title, DoubtBars.About(verdict));
        if (verdict.Doubt.Count > 0)
        {
            y = DoubtBars.Draw(sheet, verdict, y + sheet.Measures.Margin * 0.7);
        }

        double height = Heading.Foot(sheet, y + 12, [style.Note]);
        return new(sheet, height, title, $"{DoubtBars.About(verdict)} {string.Join(", ", DoubtBars.InWords(verdict))}.");
    }
}
