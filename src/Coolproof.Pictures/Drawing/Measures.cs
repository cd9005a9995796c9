namespace Coolproof.Pictures.Drawing;

/// <summary>Sizes that follow from width and theme, px.</summary>
internal sealed record Measures(double Width, double Margin, double TitleSize, double HeadSize, double BodySize, double SmallSize, bool Narrow)
{
    /// <summary>Below this width the columns of a picture stand one below the other.</summary>
    private const int NarrowBelow = 1000;

    public double Left => Margin;

    public double Right => Width - Margin;

    public static Measures Of(PictureStyle style)
    {
        double more = ThemeColours.Of(style.Theme).Larger;
        return style.WidthPx < NarrowBelow
            ? new(style.WidthPx, 16, 21 + more, 17 + more, 15 + more, 13 + more, true)
            : new(style.WidthPx, 44, 29 + more, 20 + more, 17 + more, 15 + more, false);
    }
}
