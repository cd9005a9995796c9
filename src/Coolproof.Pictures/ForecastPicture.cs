using Coolproof.Evidence;
using Coolproof.Evidence.Forecasts;
using Coolproof.Pictures.Drawing;

namespace Coolproof.Pictures;

/// <summary>Can, winding and magnet of one option over a race day, with the limits set for them; beneath, where asked for, the odds of other airs and lengths.</summary>
public static class ForecastPicture
{
    /// <summary>Draws an option's race day.</summary>
    /// <param name="forecast">The option.</param>
    /// <param name="scenario">The race day.</param>
    /// <param name="place">Its place in the table: colour and mark where the style gives none.</param>
    /// <param name="style">Width, theme, units; null: a page, light, Celsius.</param>
    /// <param name="map">Odds of other airs and lengths; null: none are drawn.</param>
    /// <param name="acceptedOdds">Odds that the person accepts, 0 to 1.</param>
    /// <exception cref="ArgumentException">A forecast without times.</exception>
    public static Picture Of(OptionForecast forecast, RaceScenario scenario, int place, PictureStyle? style = null, RaceMap? map = null, double acceptedOdds = 0.1)
    {
        if (forecast.Seconds.Count < 2) throw new ArgumentException("There is no time to draw over.", nameof(forecast));
        style ??= new();
        style.Check();
        var sheet = new Sheet(style, Typesetter.BuiltIn);
        Words words = new(style.Unit, 0);
        Summary can = Hottest(forecast.Stops.Select(s => s.HighestCanC)), winding = Hottest(forecast.Stops.Select(s => s.HighestWindingC));
        string finding = style.Title ?? $"{Typesetter.Clean(forecast.Option)}: can up to {words.Temperature(can)}, winding up to {words.Temperature(winding)}";
        string about = $"Air {words.Temperature(scenario.AirC)}. Line and band: the middle and nine tenths of the chances; dashed: winding; thin: magnet. Shaded: racing.";
        double top = Heading.Draw(sheet, finding, about) + sheet.Measures.Margin * 0.8, height = sheet.Measures.Narrow ? 280 : 400;
        OptionLook look = style.Looks?.GetValueOrDefault(forecast.Option) ?? OptionLook.At(place);
        double bottom = new RaceDayPanel(sheet, forecast, scenario, look).Draw(top, height);
        if (map is not null) bottom = new RaceMapPanel(sheet, map, scenario, acceptedOdds, look).Draw(bottom + sheet.Measures.Margin * 0.5);
        return new(sheet, Heading.Foot(sheet, bottom, ["A forecast, not a measurement. Drawn by Coolproof.", style.Note]), finding,
            $"{about} {(map is null ? "" : RaceMapPanel.About(map, acceptedOdds) + " ")}{string.Join(" ", forecast.Stops.Select(s => $"Race {s.Race}: can {words.Temperature(s.CanC)} and winding {words.Temperature(s.WindingC)} at its end; magnet up to {words.Temperature(s.HighestMagnetC)}."))}");
    }

    private static Summary Hottest(IEnumerable<Summary> stops) => stops.MaxBy(s => s.Q50)!;
}
