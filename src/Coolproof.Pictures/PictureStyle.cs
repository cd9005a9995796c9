using Coolproof.Notebook;
using Coolproof.Pictures.Drawing;

namespace Coolproof.Pictures;

/// <summary>How a picture is drawn.</summary>
/// <param name="WidthPx">Width in pixels, 320 to 4000: <see cref="PhoneWidthPx"/> and <see cref="PageWidthPx"/> are the two it is designed for.</param>
/// <param name="Theme">Where it is read.</param>
/// <param name="Units">Celsius or Fahrenheit.</param>
/// <param name="Title">
/// The finding; null: the verdict's own sentence, or what the picture works out itself. The verdict's sentence is in °C, so give it
/// anew with Fahrenheit.
/// </param>
/// <param name="Note">A line at the foot, such as "Made-up readings."; null: none.</param>
/// <param name="PixelDensity">Image pixels per pixel of layout in a PNG, 1 to 4; an SVG has no need of it.</param>
/// <param name="Looks">Colour and mark of options by name; null, or an option that is not in it: by its place in the table.</param>
/// <param name="Id">What the ids within an SVG begin with, so that several can stand in one page.</param>
public sealed record PictureStyle(
    int WidthPx = PictureStyle.PageWidthPx, Theme Theme = Theme.Light, TemperatureUnitChoice Units = TemperatureUnitChoice.Celsius, string? Title = null, string? Note = null,
    int PixelDensity = 1, IReadOnlyDictionary<string, OptionLook>? Looks = null, string Id = "picture")
{
    /// <summary>A phone held upright, px.</summary>
    public const int PhoneWidthPx = 390;

    /// <summary>A laptop or a printed page, px.</summary>
    public const int PageWidthPx = 1280;

    internal Degrees Unit => new(Units);

    internal void Check()
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(WidthPx, 320, nameof(WidthPx));
        ArgumentOutOfRangeException.ThrowIfGreaterThan(WidthPx, 4000, nameof(WidthPx));
        ArgumentOutOfRangeException.ThrowIfLessThan(PixelDensity, 1, nameof(PixelDensity));
        ArgumentOutOfRangeException.ThrowIfGreaterThan(PixelDensity, 4, nameof(PixelDensity));
    }
}
