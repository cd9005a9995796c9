using System.Xml.Linq;
using Coolproof.Evidence.Forecasts;

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
    public void The_map_has_a_number_in_each_square_and_a_ground_where_it_is_above_the_odds_accepted()
    {
        RaceMap map = Races.Map();
        XElement[] read = [.. XElement.Parse(ForecastPicture.Of(Races.Of(1, 78, 155), Races.Day(1), 2, map: map, acceptedOdds: 0.3).Svg()).Elements(Svg + "text")];
        string[] words = [.. read.Select(t => t.Value.Replace('\u00a0', ' '))];
        Assert.All(["31 °C", "36 °C", "41 °C", "<1", "12", "30", "40", "95", ">99", "4:30", "6", "7:30", "min"], word => Assert.Contains(word, words));
        Assert.Contains(words, word => word.Contains("above the 30 that you accept", StringComparison.Ordinal));
        int Bold(double accepted) => XElement.Parse(ForecastPicture.Of(Races.Of(1, 78, 155), Races.Day(1), 2, map: map, acceptedOdds: accepted).Svg()).Elements(Svg + "text").Count(t => t.ToString().Contains("bold", StringComparison.Ordinal) || t.ToString().Contains("700", StringComparison.Ordinal));
        Assert.Equal(5, Bold(0.1) - Bold(0.4));
    }

    [Fact]
    public void Can_winding_and_magnet_are_named_apart_at_the_end_and_so_are_limits_that_are_alike()
    {
        XElement[] texts = [.. XElement.Parse(ForecastPicture.Of(Races.Of(1, 100, 101), Races.Day(1), 2).Svg()).Elements(Svg + "text")];
        double At(string word) => double.Parse(texts.Single(t => t.Value == word).Attribute("y")!.Value, System.Globalization.CultureInfo.InvariantCulture);
        double[] ends = [.. new[] { At("can"), At("winding"), At("magnet") }.Order()];
        Assert.True(ends[1] - ends[0] > 10 && ends[2] - ends[1] > 10);
        (double X, double Y)[] limits = [.. texts.Where(t => t.Value.Contains(" limit ", StringComparison.Ordinal)).Select(t => ((double)t.Attribute("x")!, (double)t.Attribute("y")!))];
        Assert.Equal(3, limits.Length);
        for (int i = 0; i < 3; i++)
            for (int j = 0; j < i; j++)
                Assert.True(Math.Abs(limits[i].X - limits[j].X) > 200 || Math.Abs(limits[i].Y - limits[j].Y) > 10);
    }

    [Fact]
    public void A_forecast_without_times_is_refused() =>
        Assert.Throws<ArgumentException>(() => ForecastPicture.Of(Races.Of(1, 78, 155) with { Seconds = [] }, Races.Day(1), 0));
}
