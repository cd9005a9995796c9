using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using SkiaSharp;

namespace Coolproof.Pictures.Drawing;

/// <summary>Measures, wraps and draws words in the typeface that is built in; letters it lacks come from the machine where it has them.</summary>
internal sealed partial class Typesetter
{
    public const string Ellipsis = "…";

    /// <summary>A space at which no line is broken.</summary>
    public const char Glue = '\u00A0';

    public const string Family = "Roboto";

    private readonly SKTypeface regular;
    private readonly SKTypeface bold;

    private Typesetter(SKTypeface regular, SKTypeface bold)
    {
        this.regular = regular;
        this.bold = bold;
    }

    /// <summary>The typeface that is built in.</summary>
    public static Typesetter BuiltIn { get; } = Load(name => typeof(Typesetter).Assembly.GetManifestResourceStream(name));

    /// <summary>Loads regular and bold; text that vanishes silently is a wrong picture, so a missing or empty typeface is refused.</summary>
    /// <exception cref="PictureException">A file is missing, unreadable or has no letters.</exception>
    public static Typesetter Load(Func<string, Stream?> open) => new(Face(open, "Roboto-Regular.ttf"), Face(open, "Roboto-Bold.ttf"));

    /// <summary>Text on one line, without what neither a line nor XML can hold: control characters, half surrogate pairs.</summary>
    public static string Clean(string text)
    {
        var clean = new StringBuilder(text.Length);
        foreach (Rune rune in text.EnumerateRunes())
        {
            // EnumerateRunes gives U+FFFD for half a surrogate pair; U+FFFE and U+FFFF are not allowed in XML 1.0.
            clean.Append(Rune.IsControl(rune) || rune.Value is 0x2028 or 0x2029 ? " " : rune.Value is 0xFFFE or 0xFFFF ? "\uFFFD" : rune.ToString());
        }

        return clean.ToString().Trim();
    }

    public double Width(string text, double size, bool isBold) => Pieces(text, isBold).Sum(p => Measure(p, size));

    /// <summary>Lines no wider than a width; the last is cut with an ellipsis where there is more text than lines.</summary>
    public IReadOnlyList<string> Wrap(string text, double size, bool isBold, double width, int maxLines)
    {
        var lines = new List<string>();
        string line = "";
        foreach (string word in NumberAndUnit().Replace(Clean(text), "$1" + Glue + "$2").Split(' ', StringSplitOptions.RemoveEmptyEntries).SelectMany(w => Split(w, size, isBold, width)))
        {
            string longer = line.Length == 0 ? word : line + " " + word;
            if (line.Length == 0 || Width(longer, size, isBold) <= width)
            {
                line = longer;
                continue;
            }

            lines.Add(line);
            line = word;
        }

        lines.Add(line);
        return lines.Count <= maxLines ? lines : [.. lines.Take(maxLines - 1), Cut(string.Join(" ", lines.Skip(maxLines - 1)), size, isBold, width, always: true)];
    }

    /// <summary>One line no wider than a width, cut with an ellipsis where it must be.</summary>
    public string Cut(string text, double size, bool isBold, double width, bool always = false)
    {
        if (Width(text, size, isBold) <= width && !always)
        {
            return text;
        }

        int[] starts = StringInfo.ParseCombiningCharacters(text);
        for (int n = starts.Length; n > 0; n--)
        {
            string head = text[..(n == starts.Length ? text.Length : starts[n])].TrimEnd() + Ellipsis;
            if (Width(head, size, isBold) <= width)
            {
                return head;
            }
        }

        return Ellipsis;
    }

    /// <summary>One line no wider than a width, cut in its middle where it must be: names that begin alike often differ at their end.</summary>
    public string CutMiddle(string text, double size, bool isBold, double width)
    {
        if (Width(text, size, isBold) <= width)
        {
            return text;
        }

        int[] starts = StringInfo.ParseCombiningCharacters(text);
        for (int n = starts.Length - 1; n > 1; n--)
        {
            string cut = text[..starts[(n + 1) / 2]].TrimEnd() + Ellipsis + text[starts[starts.Length - n / 2]..].TrimStart();
            if (Width(cut, size, isBold) <= width)
            {
                return cut;
            }
        }

        return Ellipsis;
    }

    public void Draw(SKCanvas canvas, Writing writing)
    {
        double width = Width(writing.Text, writing.Size, writing.Bold);
        double x = writing.At.X - (writing.Hang == Hang.End ? width : writing.Hang == Hang.Middle ? width / 2 : 0);
        Draw(canvas, writing.Text, x, writing.At.Y, writing.Size, writing.Bold, writing.Colour);
        if (writing.Then is { } then)
        {
            Draw(canvas, then.Text, x + width, writing.At.Y, writing.Size, false, then.Colour);
        }
    }

    private void Draw(SKCanvas canvas, string text, double x, double baseline, double size, bool isBold, string colour)
    {
        using var paint = new SKPaint { Color = SKColor.Parse(colour), IsAntialias = true };
        foreach (var piece in Pieces(text, isBold))
        {
            using var font = Font(piece.Face, size);
            canvas.DrawText(piece.Text, (float)x, (float)baseline, font, paint);
            x += Measure(piece, size);
        }
    }

    /// <summary>A number keeps its unit on its line.</summary>
    [GeneratedRegex(@"(\d) (°[CF]|K|%|mm|s|minutes?)(?=\W|$)")]
    private static partial Regex NumberAndUnit();

    private static double Measure((string Text, SKTypeface Face) piece, double size)
    {
        using var font = Font(piece.Face, size);
        return font.MeasureText(piece.Text);
    }

    private static SKFont Font(SKTypeface face, double size) => new(face, (float)size)
    {
        Subpixel = true,
        LinearMetrics = true,
        Hinting = SKFontHinting.None,
        Edging = SKFontEdging.Antialias,
    };

    private static SKTypeface Face(Func<string, Stream?> open, string name)
    {
        using Stream? file = open(name);
        SKTypeface? face = file is null ? null : SKTypeface.FromStream(file);
        return face is not null && "Aa0°ä→−".EnumerateRunes().Count(r => face.GetGlyph(r.Value) != 0) >= 5
            ? face
            : throw new PictureException($"Nothing was drawn: the typeface {name} is missing or damaged. Your readings are safe. Install Coolproof again.");
    }

    private IEnumerable<string> Split(string word, double size, bool isBold, double width)
    {
        while (word.Length > 1 && Width(word, size, isBold) > width)
        {
            int[] starts = StringInfo.ParseCombiningCharacters(word);
            int fits = Enumerable.Range(1, starts.Length - 1).LastOrDefault(n => Width(word[..starts[n]], size, isBold) <= width, 1);
            if (fits >= starts.Length)
            {
                break;
            }

            yield return word[..starts[fits]];
            word = word[starts[fits]..];
        }

        yield return word;
    }

    /// <summary>Stretches of text that one typeface can set.</summary>
    private List<(string Text, SKTypeface Face)> Pieces(string text, bool isBold)
    {
        SKTypeface own = isBold ? bold : regular;
        if (own.ContainsGlyphs(text))
        {
            return [(text, own)];
        }

        var pieces = new List<(string Text, SKTypeface Face)>();
        foreach (Rune rune in text.EnumerateRunes())
        {
            SKTypeface face = own.GetGlyph(rune.Value) != 0 ? own : SKFontManager.Default.MatchCharacter(rune.Value) ?? own;
            if (pieces.Count > 0 && (pieces[^1].Face == face || pieces[^1].Face.FamilyName == face.FamilyName))
            {
                pieces[^1] = (pieces[^1].Text + rune, pieces[^1].Face);
            }
            else
            {
                pieces.Add((rune.ToString(), face));
            }
        }

        return pieces;
    }
}
