using System.Xml.Linq;
using Coolproof.Pictures.Drawing;

namespace Coolproof.Pictures.Tests;

public sealed class GearPictureTests
{
    private static string[] Read(Picture picture) => [.. XElement.Parse(picture.Svg()).Elements(XName.Get("text", "http://www.w3.org/2000/svg")).Select(t => t.Value.Replace('\u00a0', ' '))];

    [Fact]
    public void Teeth_lap_times_limit_and_each_options_quickest_stand_in_it()
    {
        string[] words = Read(GearPicture.Of(Gears.Six(), Gears.Limit(85), "The finding."));
        Assert.All(["18", "30", "27.00", "25.56", "can limit 85 °C", "teeth", "lap s", "The finding."], word => Assert.Contains(word, words));
        foreach (GearLine line in Gears.Six()) // by the numbers: the last pinion that is more than 5 K under the limit
            Assert.Contains(words, word => word == $"{line.Spots.Last(s => s.PeakC.Q50 < 80).Pinion} teeth, lap {line.Spots.Last(s => s.PeakC.Q50 < 80).LapS:0.00} s");
    }

    [Fact]
    public void What_is_not_accepted_is_hollow_and_dashed_and_none_accepted_is_said()
    {
        GearLine[] one = [Gears.Of("Bare can", 60, 85)];
        Picture picture = GearPicture.Of(one, Gears.Limit(85), "x");
        int accepted = one[0].Spots.Count(s => s.Accepted);
        Stroke[] strokes = [.. picture.Shapes.OfType<Stroke>().Where(s => s.Spots.Count == 2 && s.Spots[0].X != s.Spots[1].X && s.Spots[0].Y > s.Spots[1].Y)];
        Assert.Equal(accepted - 1, strokes.Count(s => !s.Dashed));
        Assert.Contains(strokes, s => s.Dashed);
        Assert.Contains("none within the odds", Read(GearPicture.Of(Gears.Hot(), Gears.Limit(60), "x")));
    }

    [Fact]
    public void Hotter_stands_higher_and_nothing_leaves_the_plot()
    {
        GearLine[] one = [Gears.Of("Bare can", 60, 85), new("Runs away", [.. Gears.Of("x", 60, 85).Spots.Select(s => s with { PeakC = Samples.Normal(s.Pinion > 25 ? 4000 : 70, 1), Accepted = false })], null)];
        Picture picture = GearPicture.Of(one, Gears.Limit(85), "x");
        Assert.All(picture.Shapes.OfType<Stroke>().SelectMany(s => s.Spots), spot => Assert.InRange(spot.Y, 0, picture.HeightPx));
    }

    [Fact]
    public void Nothing_to_draw_and_options_that_dont_go_together_are_refused()
    {
        Assert.Throws<ArgumentException>(() => GearPicture.Of([], Gears.Limit(85), "x"));
        Assert.Throws<ArgumentException>(() => GearPicture.Of([Gears.Of("a", 60, 85), Gears.Hot()[0]], Gears.Limit(85), "x"));
    }
}
