using System.Globalization;
using Coolproof.Pictures.Drawing;

namespace Coolproof.Pictures.Tests;

public sealed class OptionLookTests
{
    [Fact]
    public void The_colours_are_those_of_Okabe_and_Ito()
    {
        // M. Okabe, K. Ito, "Color Universal Design: How to make figures and presentations that are friendly to colorblind people" (2008), red, green, blue, from memory.
        (int R, int G, int B)[] published = [(0, 0, 0), (230, 159, 0), (86, 180, 233), (0, 158, 115), (240, 228, 66), (0, 114, 178), (213, 94, 0), (204, 121, 167)];
        Assert.Equal(published, OptionLook.Palette.Select(Rgb));
    }

    [Fact]
    public void Sixty_four_options_look_different_and_eight_differ_in_both_colour_and_mark()
    {
        OptionLook[] looks = [.. Enumerable.Range(0, 64).Select(OptionLook.At)];
        Assert.Equal(64, looks.Distinct().Count());
        for (int round = 0; round < 8; round++)
        {
            Assert.Equal(8, looks[(8 * round)..(8 * round + 8)].Select(l => l.ColourHex).Distinct().Count());
            Assert.Equal(8, looks[(8 * round)..(8 * round + 8)].Select(l => l.Mark).Distinct().Count());
        }
    }

    [Fact]
    public void An_option_keeps_its_look_by_its_place_in_the_table_however_it_ranks()
    {
        var standings = Standing.All(Samples.Six(), new());
        Assert.All(standings, s => Assert.Equal(OptionLook.At(Array.IndexOf(Samples.SixNames, s.Option.Name)), s.Look));
        Assert.Equal(OptionLook.At(5), Standing.LookOf(Samples.Six(), "Rear blower", new()));
    }

    [Fact]
    public void Words_stand_out_from_the_paper_at_seven_to_one()
    {
        foreach (ThemeColours c in Enum.GetValues<Theme>().Select(ThemeColours.Of))
        {
            Assert.True(Contrast(c.Ink, c.Paper) >= 7, c.ToString());
            Assert.True(Contrast(c.Quiet, c.Paper) >= 7, c.ToString());
            Assert.True(Contrast(c.Ink, c.Band) >= 7, c.ToString());
        }

        Assert.Equal("#000000", ThemeColours.Of(Theme.Sun).Quiet);
    }

    [Fact]
    public void Marks_are_of_much_the_same_size()
    {
        foreach (Mark mark in Enum.GetValues<Mark>())
        {
            var corners = MarkOutline.Corners(mark, 10);
            double width = corners.Max(p => p.X) - corners.Min(p => p.X);
            Assert.InRange(width, 17, 28);
            Assert.StartsWith("M", MarkOutline.SvgPath(mark, 10));
            Assert.EndsWith("Z", MarkOutline.SvgPath(mark, 10));
            Assert.DoesNotContain("E", MarkOutline.SvgPath(mark, 10));
        }
    }

    /// <summary>Contrast ratio by relative luminance: W3C, Web Content Accessibility Guidelines 2.2, glossary.</summary>
    private static double Contrast(string a, string b)
    {
        double x = Luminance(a), y = Luminance(b);
        return (Math.Max(x, y) + 0.05) / (Math.Min(x, y) + 0.05);
    }

    private static double Luminance(string hex)
    {
        static double Linear(int channel) => channel / 255.0 <= 0.04045 ? channel / 255.0 / 12.92 : Math.Pow((channel / 255.0 + 0.055) / 1.055, 2.4);
        (int r, int g, int b) = Rgb(hex);
        return 0.2126 * Linear(r) + 0.7152 * Linear(g) + 0.0722 * Linear(b);
    }

    private static (int R, int G, int B) Rgb(string hex) => (Channel(hex, 1), Channel(hex, 3), Channel(hex, 5));

    private static int Channel(string hex, int at) => int.Parse(hex.AsSpan(at, 2), NumberStyles.HexNumber, CultureInfo.InvariantCulture);
}
