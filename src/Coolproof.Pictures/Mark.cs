using System.Globalization;

namespace Coolproof.Pictures;

/// <summary>The shape that stands for an option, so that colour is never alone.</summary>
public enum Mark
{
    /// <summary>Disc.</summary>
    Circle,

    /// <summary>Square on its side.</summary>
    Square,

    /// <summary>Triangle, point up.</summary>
    TriangleUp,

    /// <summary>Square on its corner.</summary>
    Diamond,

    /// <summary>Triangle, point down.</summary>
    TriangleDown,

    /// <summary>Upright cross with thick arms.</summary>
    Cross,

    /// <summary>Star with five points.</summary>
    Star,

    /// <summary>Two triangles that meet in the middle.</summary>
    Hourglass,
}

/// <summary>Outlines of the marks.</summary>
public static class MarkOutline
{
    /// <summary>Corners of a mark, about the origin, all marks of much the same weight; y runs down.</summary>
    /// <param name="mark">The mark.</param>
    /// <param name="radius">Radius of the disc, px; the others fit it.</param>
    public static IReadOnlyList<(double X, double Y)> Corners(Mark mark, double radius) =>
        [.. Unit(mark).Select(p => (p.X * radius, p.Y * radius))];

    /// <summary>The outline as the <c>d</c> of an SVG path about the origin, so that pages draw the same mark as pictures.</summary>
    /// <param name="mark">The mark.</param>
    /// <param name="radius">Radius of the disc, px.</param>
    public static string SvgPath(Mark mark, double radius) =>
        "M" + string.Join("L", Corners(mark, radius).Select(p => string.Create(CultureInfo.InvariantCulture, $"{p.X:0.##} {p.Y:0.##}"))) + "Z";

    private static IEnumerable<(double X, double Y)> Unit(Mark mark) => mark switch
    {
        Mark.Circle => Ring(32, _ => 1, 0),
        Mark.Square => Ring(4, _ => 1.25, Math.PI / 4),
        Mark.TriangleUp => Ring(3, _ => 1.3, -Math.PI / 2),
        Mark.Diamond => Ring(4, _ => 1.3, 0),
        Mark.TriangleDown => Ring(3, _ => 1.3, Math.PI / 2),
        Mark.Star => Ring(10, i => i % 2 == 0 ? 1.4 : 0.62, -Math.PI / 2),
        Mark.Cross => [(-.4, -1.1), (.4, -1.1), (.4, -.4), (1.1, -.4), (1.1, .4), (.4, .4), (.4, 1.1), (-.4, 1.1), (-.4, .4), (-1.1, .4), (-1.1, -.4), (-.4, -.4)],
        Mark.Hourglass => [(-1, -1.1), (1, -1.1), (.2, 0), (1, 1.1), (-1, 1.1), (-.2, 0)],
        _ => throw new ArgumentOutOfRangeException(nameof(mark), mark, "No such mark."),
    };

    private static IEnumerable<(double X, double Y)> Ring(int corners, Func<int, double> radius, double start) =>
        Enumerable.Range(0, corners).Select(i =>
            (radius(i) * Math.Cos(start + 2 * Math.PI * i / corners), radius(i) * Math.Sin(start + 2 * Math.PI * i / corners)));
}
