using ScottPlot;
using SkiaSharp;

namespace Coolproof.Pictures.Drawing;

/// <summary>Draws shapes with ScottPlot on a plot whose coordinates are the pixels of the sheet, y down.</summary>
internal static class PlotPaper
{
    public static void Draw(SKCanvas canvas, IEnumerable<Shape> shapes, int width, int height)
    {
        using var plot = new Plot();
        plot.HideAxesAndGrid();
        plot.Layout.Fixed(new PixelPadding(0));
        plot.FigureBackground.Color = ScottPlot.Colors.Transparent;
        plot.DataBackground.Color = ScottPlot.Colors.Transparent;
        plot.Axes.SetLimits(0, width, height, 0);
        plot.RenderManager.ClearCanvasBeforeEachRender = false;
        foreach (Shape shape in shapes)
        {
            Add(plot, shape);
        }

        // A plot draws itself twice the first time, which would double all that is half transparent: the first time goes nowhere.
        using var nowhere = new SKNoDrawCanvas(width, height);
        var whole = new PixelRect(0, width, height, 0);
        plot.Render(nowhere, whole);
        plot.Render(canvas, whole);
    }

    private static void Add(Plot plot, Shape shape)
    {
        switch (shape)
        {
            case Stroke stroke:
                var line = plot.Add.ScatterLine(Coordinates(stroke.Spots), Color.FromHex(stroke.Colour));
                line.LineWidth = (float)stroke.Width;
                line.LinePattern = stroke.Dashed ? LinePattern.Dashed : LinePattern.Solid;
                line.MarkerSize = 0;
                break;
            case Area area:
                var polygon = plot.Add.Polygon(Coordinates(area.Corners));
                polygon.FillColor = Color.FromHex(area.Fill).WithAlpha(area.Opacity);
                polygon.LineColor = Color.FromHex(area.Outline);
                polygon.LineWidth = (float)area.OutlineWidth;
                polygon.MarkerSize = 0;
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(shape), shape, "Words are not drawn by the plot.");
        }
    }

    private static Coordinates[] Coordinates(IReadOnlyList<Spot> spots) => [.. spots.Select(s => new Coordinates(s.X, s.Y))];
}
