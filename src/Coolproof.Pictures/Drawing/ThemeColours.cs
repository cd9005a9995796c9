namespace Coolproof.Pictures.Drawing;

/// <summary>Colours and weight of one theme. Ink and quiet ink stand at 7:1 or better on the paper (WCAG 2.2, 1.4.6).</summary>
/// <param name="Paper">Ground.</param>
/// <param name="Ink">Words and strokes that carry the finding.</param>
/// <param name="Quiet">Words and strokes of second rank.</param>
/// <param name="Grid">Lines that only guide the eye.</param>
/// <param name="Band">Fill of the "same within" band.</param>
/// <param name="Weight">Factor on stroke widths.</param>
/// <param name="Larger">Added to the size of words, px.</param>
/// <param name="BandOpacity">Opacity of a band in an option's colour.</param>
internal sealed record ThemeColours(string Paper, string Ink, string Quiet, string Grid, string Band, double Weight, double Larger, double BandOpacity)
{
    public static ThemeColours Of(Theme theme) => theme switch
    {
        Theme.Light => new("#FCFBF8", "#1B1F24", "#4A515B", "#E2DFD8", "#E4EAEC", 1, 0, 0.28),
        Theme.Dark => new("#14181D", "#F4F2EC", "#B9C0C9", "#2D343C", "#2A3943", 1, 0, 0.34),
        Theme.Sun => new("#FFFEF6", "#000000", "#000000", "#CFCCC2", "#E6E3D8", 1.4, 1, 0.45),
        _ => throw new ArgumentOutOfRangeException(nameof(theme), theme, "No such theme."),
    };
}
