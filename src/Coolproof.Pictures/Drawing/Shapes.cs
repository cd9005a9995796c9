namespace Coolproof.Pictures.Drawing;

/// <summary>A point of the sheet, px from its upper left corner.</summary>
internal readonly record struct Spot(double X, double Y);

/// <summary>Where a word hangs on its spot.</summary>
internal enum Hang
{
    Start,
    Middle,
    End,
}

/// <summary>Something drawn on a sheet.</summary>
internal abstract record Shape;

/// <summary>An open line through spots.</summary>
internal sealed record Stroke(IReadOnlyList<Spot> Spots, string Colour, double Width, bool Dashed) : Shape;

/// <summary>A closed area; no outline where its width is 0.</summary>
internal sealed record Area(IReadOnlyList<Spot> Corners, string Fill, double Opacity, string Outline, double OutlineWidth) : Shape;

/// <summary>
/// Words on one line, their baseline at the spot. <paramref name="Whole"/> is the uncut text where the line was cut short;
/// <paramref name="Then"/> follows in the regular weight and its own colour.
/// </summary>
internal sealed record Writing(string Text, Spot At, double Size, bool Bold, string Colour, Hang Hang, string? Whole, (string Text, string Colour)? Then = null) : Shape;
