using System.Xml.Linq;
using Coolproof.Pictures.Drawing;

namespace Coolproof.Pictures.Tests;

public sealed class SpendPictureTests
{
    private static Picture Drawn(int width = PictureStyle.PageWidthPx) => SpendPicture.Of(Stairs.Four(), Stairs.Others(), (40, "budget 40 €"), Stairs.Beyond(), "The finding.", new(width));

    [Theory]
    [InlineData(PictureStyle.PageWidthPx)]
    [InlineData(PictureStyle.PhoneWidthPx)]
    public void Every_step_is_numbered_and_told_and_the_one_past_the_budget_is_said_to_be(int width)
    {
        string[] words = [.. XElement.Parse(Drawn(width).Svg()).Elements(XName.Get("text", "http://www.w3.org/2000/svg")).Select(t => t.Value.Replace('\u00a0', ' '))];
        Assert.All(["1", "2", "3", "4", "budget 40 €", "°C cooler", "finned clamp"], word => Assert.Contains(word, words));
        Assert.Contains(words, word => word.Contains("past the budget", StringComparison.Ordinal));
        Assert.All(Stairs.Four().Skip(1), s => Assert.Contains(s.Parts, Drawn().Description));
    }

    // Stairs only go up and to the right, with a step's whole rise at its own money.
    [Fact]
    public void The_stairs_rise_at_each_steps_money_in_proportion()
    {
        Stroke stairs = Drawn().Shapes.OfType<Stroke>().MaxBy(s => s.Spots.Count)!;
        Spot[] p = [.. stairs.Spots];
        Assert.Equal(8, p.Length); // two for each step and the way to the budget
        Assert.All(p.Zip(p.Skip(1)), pair => Assert.True(pair.Second.X >= pair.First.X && pair.Second.Y <= pair.First.Y && (pair.First.X == pair.Second.X || pair.First.Y == pair.Second.Y)));
        double perMoney = (p[1].X - p[0].X) / 14;
        Assert.Equal((31 - 14) * perMoney, p[3].X - p[2].X, 6);
        double perK = (p[1].Y - p[2].Y) / 3.2;
        Assert.Equal((11 - 3.2) * perK, p[3].Y - p[4].Y, 6);
        Assert.Equal((40 - 34) * perMoney, p[7].X - p[6].X, 6);
    }

    [Fact]
    public void What_was_never_driven_together_is_hollow()
    {
        string paper = ThemeColours.Of(Theme.Light).Paper;
        Assert.Equal(2, Drawn().Shapes.OfType<Area>().Count(a => a.Fill == paper && a.OutlineWidth > 1 && a.Corners.Count == 32));
    }

    [Fact]
    public void Nothing_to_draw_is_refused() => Assert.Throws<ArgumentException>(() => SpendPicture.Of([], [], null, null, "x"));
}
