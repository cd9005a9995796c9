namespace Coolproof.Pictures.Drawing;

/// <summary>Keeps short labels within a plot from lying over each other: the first place of several that is free is taken; where none is, the label is left out, so what it says must stand elsewhere too.</summary>
internal sealed class LabelRoom(Sheet sheet, double left, double right)
{
    private const double Air = 2;

    private readonly List<(double Left, double Top, double Right, double Bottom)> taken = [];

    /// <summary>Keeps labels off a place where something else is drawn.</summary>
    public void Take(double left, double top, double right, double bottom) => taken.Add((left, top, right, bottom));

    /// <summary>Puts a label at the first of its places that is free.</summary>
    /// <param name="text">What it says.</param>
    /// <param name="size">Size of its words, px.</param>
    /// <param name="bold">Whether it is bold.</param>
    /// <param name="places">Where it may hang, in the order of liking: x, baseline, hang.</param>
    /// <returns>Whether it was put anywhere.</returns>
    public bool Put(string text, double size, bool bold, params (double X, double Baseline, Hang Hang)[] places)
    {
        double width = sheet.Type.Width(text, size, bold);
        foreach ((double x, double baseline, Hang hang) in places)
        {
            double from = x - (hang == Hang.End ? width : hang == Hang.Middle ? width / 2 : 0);
            (double Left, double Top, double Right, double Bottom) box = (from - Air, baseline - size, from + width + Air, baseline + size * 0.25);
            if (box.Left < left || box.Right > right || taken.Any(t => box.Left < t.Right && box.Right > t.Left && box.Top < t.Bottom && box.Bottom > t.Top)) continue;
            taken.Add(box);
            sheet.Text(text, x, baseline, size, bold: bold, hang: hang);
            return true;
        }

        return false;
    }
}
