using System.Globalization;
using System.Text;
using Wcwidth;

namespace Coolproof.Screen;

/// <summary>Text measured in the cells of a terminal: two for an East Asian wide character, none for a combining one.</summary>
internal static class Cells
{
    /// <summary>Cells that a text takes on one line.</summary>
    public static int Width(string text)
    {
        var width = 0;
        foreach (var rune in text.EnumerateRunes()) width += Math.Max(0, WidthOf(rune));
        return width;
    }

    /// <summary>
    /// A name from a file made harmless: control and format characters, which could move the cursor or turn the writing round, are taken out.
    /// </summary>
    public static string Clean(string text)
    {
        if (text.All(c => c is >= ' ' and <= '~')) return text;
        var clean = new StringBuilder(text.Length);
        foreach (var rune in text.EnumerateRunes())
        {
            var category = Rune.GetUnicodeCategory(rune);
            if (category is UnicodeCategory.Control or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator) clean.Append(' ');
            else if (category is not (UnicodeCategory.Format or UnicodeCategory.Surrogate or UnicodeCategory.OtherNotAssigned)) clean.Append(rune);
        }
        return clean.ToString();
    }

    /// <summary>A text cut to a number of cells, with an ellipsis where something was cut.</summary>
    public static string Fit(string text, int cells)
    {
        if (Width(text) <= cells) return text;
        var kept = new StringBuilder();
        var width = 1; // the ellipsis
        foreach (var rune in text.EnumerateRunes())
        {
            width += Math.Max(0, WidthOf(rune));
            if (width > cells) break;
            kept.Append(rune);
        }
        return kept.ToString().TrimEnd() + "…";
    }

    /// <summary>A text filled with blanks on the right.</summary>
    public static string Left(string text, int cells) => text + Blank(cells - Width(text));

    /// <summary>A text filled with blanks on the left.</summary>
    public static string Right(string text, int cells) => Blank(cells - Width(text)) + text;

    /// <summary>A text broken at its blanks into lines of at most a number of cells; later lines are set in.</summary>
    public static List<string> Wrap(string text, int cells, string firstIndent = "", string laterIndent = "")
    {
        var lines = new List<string>();
        var line = new StringBuilder(firstIndent);
        var width = Width(firstIndent);
        var empty = true;
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            var piece = word;
            if (!empty && width + 1 + Width(piece) > cells)
            {
                lines.Add(line.ToString());
                line.Clear().Append(laterIndent);
                width = Width(laterIndent);
                empty = true;
            }
            if (empty) piece = Fit(piece, cells - width);
            else line.Append(' ');
            line.Append(piece);
            width += Width(piece) + (empty ? 0 : 1);
            empty = false;
        }
        if (!empty) lines.Add(line.ToString());
        return lines;
    }

    static string Blank(int cells) => cells > 0 ? new string(' ', cells) : "";

    // Latin text, nearly all there is, must not pay for loading the tables.
    static int WidthOf(Rune rune) => rune.Value is >= 0x20 and < 0x300 ? 1 : rune.Value is >= 0x2010 and < 0x2030 or >= 0x2500 and < 0x2600 ? 1 : UnicodeCalculator.GetWidth(rune);
}
