using System.Globalization;
using Coolproof.Pictures.Drawing;

namespace Coolproof.Pictures;

/// <summary>A gun's spot on the can at one distance.</summary>
/// <param name="DistanceM">Distance, m.</param>
/// <param name="SpotM">Diameter of the spot, m.</param>
/// <param name="Said">A line under it.</param>
public sealed record SpotShown(double DistanceM, double SpotM, string Said);

/// <summary>A gun's spot against the band of the can or the piece of tape that it should read, at some distances, all to one scale.</summary>
public static class SpotPicture
{
    private const double Tallest = 190, LeastCanM = 0.036;
    private static readonly string Light = OptionLook.Palette[1];

    /// <summary>Draws it.</summary>
    /// <param name="spots">Distances, one at least, the nearest first.</param>
    /// <param name="targetM">Width of what is to be read, m.</param>
    /// <param name="isBand">Whether it is a band across the can; else a round piece of tape on it.</param>
    /// <param name="finding">What to say on top.</param>
    /// <param name="style">Width, theme; null: a page, light.</param>
    public static Picture Of(IReadOnlyList<SpotShown> spots, double targetM, bool isBand, string finding, PictureStyle? style = null)
    {
        if (spots.Count == 0) throw new ArgumentException("There is no distance to draw.", nameof(spots));
        style ??= new();
        style.Check();
        Sheet sheet = new(style, Typesetter.BuiltIn);
        Measures m = sheet.Measures;
        const string About = "To one scale, from where the gun is. Grey: the motor’s can; white: what is to be read; coloured: what the gun averages over.";
        double y = Heading.Draw(sheet, finding, About) + m.Margin * 0.6, width = m.Right - m.Left;
        int across = m.Narrow ? 1 : spots.Count;
        double column = width / across, pixels = Math.Min(Tallest / Math.Max(LeastCanM, spots.Max(s => s.SpotM)), (column - m.Margin) / (1.5 * Math.Max(LeastCanM, spots.Max(s => s.SpotM))));
        double tall = pixels * Math.Max(LeastCanM, spots.Max(s => s.SpotM));
        Bar(sheet, y, pixels);
        y += m.SmallSize * 2;
        double bottom = y;
        for (int i = 0; i < spots.Count; i++)
        {
            double left = m.Left + i % across * column, top = across == 1 ? bottom : y;
            double below = Panel(sheet, spots[i], targetM, isBand, left, top, column - m.Margin * 0.5, tall, pixels);
            bottom = across == 1 ? below + m.Margin * 0.4 : Math.Max(bottom, below);
        }
        return new(sheet, Heading.Foot(sheet, bottom + 8, ["By the ratio printed on the gun; its dot need not lie in the middle of the spot close up. Drawn by Coolproof.", style.Note]), finding,
            $"{About} {string.Join(" ", spots.Select(s => $"{Cm(s.DistanceM)}: {s.Said}"))}");
    }

    private static double Panel(Sheet sheet, SpotShown spot, double targetM, bool isBand, double left, double top, double width, double tall, double pixels)
    {
        Measures m = sheet.Measures;
        top = Heading.Section(sheet, left, top, width, Cm(spot.DistanceM), null) + 8;
        double x = left + width / 2, y = top + tall / 2, can = Math.Min(width / 2, 0.75 * pixels * 0.05), half = pixels * LeastCanM / 2, target = pixels * targetM / 2;
        sheet.Box(x - can, y - half, x + can, y + half, sheet.Colours.Grid, 1.4);
        if (isBand) sheet.Box(x - Math.Min(target, can), y - half, x + Math.Min(target, can), y + half, sheet.Colours.Paper, 1.2);
        else sheet.Polygon(Round(x, y, target), sheet.Colours.Paper, 1.2);
        sheet.Polygon(Round(x, y, pixels * spot.SpotM / 2), Light, 1.4, 0.55);
        return sheet.Paragraph(spot.Said, left, top + tall + 10, width, m.SmallSize);
    }

    private static void Bar(Sheet sheet, double y, double pixels)
    {
        double left = sheet.Measures.Left, right = left + pixels * 0.01;
        sheet.Line(left, y, right, y, sheet.Colours.Ink, 2);
        sheet.Line(left, y - 5, left, y + 5, sheet.Colours.Ink, 2);
        sheet.Line(right, y - 5, right, y + 5, sheet.Colours.Ink, 2);
        sheet.Text("10 mm", right + 8, y + sheet.Measures.SmallSize * 0.35, sheet.Measures.SmallSize);
    }

    private static Spot[] Round(double x, double y, double radius) => [.. Enumerable.Range(0, 72).Select(i => 2 * Math.PI * i / 72).Select(a => new Spot(x + radius * Math.Cos(a), y + radius * Math.Sin(a)))];

    private static string Cm(double metres) => string.Create(CultureInfo.InvariantCulture, $"{100 * metres:0.#} cm away");
}
