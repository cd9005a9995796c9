namespace Coolproof.Pictures.Drawing;

/// <summary>Upright guide lines with their labels.</summary>
internal static class Axis
{
    /// <summary>Draws guides from top to bottom, labels above the top and, where asked, below the bottom too; none beyond the last bar.</summary>
    public static void Upright(Sheet sheet, Scale scale, double top, double bottom, bool alsoBelow, string unit, double last = double.PositiveInfinity)
    {
        double size = sheet.Measures.SmallSize;
        IReadOnlyList<double> all = scale.Ticks(sheet.Measures.Narrow ? 50 : 64);
        IReadOnlyList<double> ticks = [.. all.Where((t, i) => i < 2 || t <= last)];
        foreach (double tick in ticks)
        {
            double x = scale.At(tick);
            string label = tick == ticks[^1] ? $"{Scale.Label(tick)} {unit}" : Scale.Label(tick);
            sheet.Line(x, top, x, bottom, sheet.Colours.Grid, 1);
            sheet.Text(label, x, top - 6, size, colour: sheet.Colours.Quiet, hang: Hang.Middle);
            if (alsoBelow)
            {
                sheet.Text(label, x, bottom + size + 4, size, colour: sheet.Colours.Quiet, hang: Hang.Middle);
            }
        }
    }
}
