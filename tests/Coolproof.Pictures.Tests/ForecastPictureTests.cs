using System.Xml.Linq;

namespace Coolproof.Pictures.Tests;

public sealed class ForecastPictureTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    [Fact]
    public void Races_limits_and_the_highest_values_stand_in_the_picture()
    {
        string[] read = [.. XElement.Parse(ForecastPicture.Of(Races.Of(3, 78, 155), Races.Day(3), 2).Svg()).Elements(Svg + "text").Select(t => t.Value.Replace('\u00a0', ' '))];
        Assert.All(["race 1", "race 2", "race 3", "can limit 78 °C", "winding limit 155 °C", "can", "winding", "start"], words => Assert.Contains(words, read));
        Assert.Contains(read, words => words.Contains("can up to", StringComparison.Ordinal));
    }

    [Fact]
    public void Another_limit_moves_its_line_and_a_colour_given_is_used()
    {
        string Drawn(double limit) => ForecastPicture.Of(Races.Of(1, limit, 155), Races.Day(1), 2, new(Looks: new Dictionary<string, OptionLook> { ["Clamp with 25 mm fan"] = new("#CC79A7", Mark.Star) })).Svg();
        Assert.NotEqual(Drawn(78).Replace("78", "74", StringComparison.Ordinal), Drawn(74));
        Assert.Contains("#CC79A7", Drawn(78));
    }

    [Fact]
    public void A_forecast_without_times_is_refused() =>
        Assert.Throws<ArgumentException>(() => ForecastPicture.Of(Races.Of(1, 78, 155) with { Seconds = [] }, Races.Day(1), 0));
}
