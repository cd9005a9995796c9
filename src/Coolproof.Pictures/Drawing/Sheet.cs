namespace Coolproof.Pictures.Drawing;

/// <summary>Collects what is drawn, from the top down; the height is what was used when all is drawn.</summary>
internal sealed class Sheet(PictureStyle style, Typesetter type)
{
    private readonly List<Shape> shapes = [];

    public Measures Measures { get; } = Measures.Of(style);

    public ThemeColours Colours { get; } = ThemeColours.Of(style.Theme);

    public PictureStyle Style { get; } = style;

    public Typesetter Type { get; } = type;

    public IReadOnlyList<Shape> Shapes => shapes;

    public void Line(double x1, double y1, double x2, double y2, string colour, double width, bool dashed = false) =>
        Polyline([new(x1, y1), new(x2, y2)], colour, width, dashed);

    public void Polyline(IReadOnlyList<Spot> spots, string colour, double width, bool dashed = false) =>
        shapes.Add(new Stroke(spots, colour, width * Colours.Weight, dashed));

    public void Box(double left, double top, double right, double bottom, string fill, double outline = 0, double opacity = 1) =>
        Polygon([new(left, top), new(right, top), new(right, bottom), new(left, bottom)], fill, outline, opacity);

    public void Polygon(IReadOnlyList<Spot> corners, string fill, double outline = 0, double opacity = 1) =>
        shapes.Add(new Area(corners, fill, opacity, Colours.Ink, outline * Colours.Weight));

    /// <summary>An option's mark, outlined in ink; a hollow one is filled with paper.</summary>
    public void Mark(OptionLook look, double x, double y, double radius, bool hollow = false)
    {
        Spot[] corners = [.. MarkOutline.Corners(look.Mark, radius).Select(p => new Spot(x + p.X, y + p.Y))];
        shapes.Add(new Area(corners, hollow ? Colours.Paper : look.ColourOn(Style.Theme), 1, Colours.Ink, (hollow ? 1.6 : 1.1) * Colours.Weight));
    }

    public void Text(string text, double x, double baseline, double size, bool bold = false, string? colour = null, Hang hang = Hang.Start, string? whole = null) =>
        shapes.Add(new Writing(text.Replace(Typesetter.Glue, ' '), new(x, baseline), size, bold, colour ?? Colours.Ink, hang, whole));

    /// <summary>A line that begins in bold ink and goes on in quiet ink.</summary>
    public void BoldThenQuiet(string first, string then, double x, double baseline, double size) =>
        shapes.Add(new Writing(first.Replace(Typesetter.Glue, ' '), new(x, baseline), size, true, Colours.Ink, Hang.Start, null, (then.Replace(Typesetter.Glue, ' '), Colours.Quiet)));

    /// <summary>Lines of text wrapped to a width, at most so many.</summary>
    /// <returns>The y below the last line.</returns>
    public double Paragraph(
        string text, double x, double top, double width, double size, bool bold = false, string? colour = null, int maxLines = 12, double leading = 1.32)
    {
        var lines = Type.Wrap(text, size, bold, width, maxLines);
        for (int i = 0; i < lines.Count; i++)
        {
            bool cut = i == lines.Count - 1 && lines[i].EndsWith(Typesetter.Ellipsis);
            Text(lines[i], x, top + size * (0.95 + leading * i), size, bold, colour, whole: cut ? Typesetter.Clean(text) : null);
        }

        return top + size * leading * lines.Count;
    }
}
