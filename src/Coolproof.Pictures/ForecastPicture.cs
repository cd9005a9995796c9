using Coolproof.Evidence;
using Coolproof.Evidence.Forecasts;
using Coolproof.Pictures.Drawing;

namespace Coolproof.Pictures;

/// <summary>Can and winding of one option over a race day, with the limits set for them.</summary>
public static class ForecastPicture
{
    /// <summary>Draws an option's race day.</summary>
    /// <param name="forecast">The option.</param>
    /// <param name="scenario">The race day.</param>
    /// <param name="place">Its place in the table: colour and mark where the style gives none.</param>
    /// <param name="style">Width, theme, units; null: a page, light, Celsius.</param>
    /// <exception cref="ArgumentException">A forecast without times.</exception>
    public static Picture Of(OptionForecast forecast, RaceScenario scenario, int place, PictureStyle? style = null)
    {
        if (forecast.Seconds.Count < 2) throw new ArgumentException("There is no time to draw over.", nameof(forecast));
        style ??= new();
        style.Check();
        var sheet = new Sheet(style, Typesetter.BuiltIn);
        Words words = new(style.Unit, 0);
        Summary can = Hottest(forecast.Stops.Select(s => s.HighestCanC)), winding = Hottest(forecast.Stops.Select(s => s.HighestWindingC));
        string finding = style.Title ?? $"{Typesetter.Clean(forecast.Option)}: can up to {words.Temperature(can)}, winding up to {words.Temperature(winding)}";
        string about = $"Air {words.Temperature(scenario.AirC)}. Line and band: the middle and nine tenths of the chances; dashed: winding. Shaded: racing.";
        double top = Heading.Draw(sheet, finding, about) + sheet.Measures.Margin * 0.8, height = sheet.Measures.Narrow ? 280 : 400;
        OptionLook look = style.Looks?.GetValueOrDefault(forecast.Option) ?? OptionLook.At(place);
        double bottom = new RaceDayPanel(sheet, forecast, scenario, look).Draw(top, height);
        return new(sheet, Heading.Foot(sheet, bottom, ["A forecast, not a measurement. Drawn by Coolproof.", style.Note]), finding,
            $"{about} {string.Join(" ", forecast.Stops.Select(s => $"Race {s.Race}: can {words.Temperature(s.CanC)} and winding {words.Temperature(s.WindingC)} at its end."))}");
    }

    private static Summary Hottest(IEnumerable<Summary> stops) => stops.MaxBy(s => s.Q50)!;
}
