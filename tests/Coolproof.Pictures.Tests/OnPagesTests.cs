using System.Xml.Linq;

namespace Coolproof.Pictures.Tests;

/// <summary>Pictures that stand within a page.</summary>
public class OnPagesTests
{
    [Fact]
    public void Looks_that_are_given_go_before_the_place_in_the_table()
    {
        OptionLook chosen = new("#CC79A7", Mark.Star);
        string svg = VerdictPicture.OfRanking(Samples.Six(), new(Looks: new Dictionary<string, OptionLook> { ["Rear blower"] = chosen })).Svg();
        Assert.Contains("#CC79A7", svg);
        Assert.DoesNotContain(OptionLook.At(5).ColourHex, svg);
    }

    [Fact]
    public void The_ranking_alone_has_no_heading_no_doubt_and_no_remarks()
    {
        string svg = VerdictPicture.OfRanking(Samples.Six(), new(358)).Svg(), whole = VerdictPicture.Of(Samples.Six(), new(358)).Svg();
        Assert.All(["Drawn by Coolproof", "Mind:"], words => { Assert.Contains(words, whole); Assert.DoesNotContain(words, svg); });
        Assert.All(Samples.Six().Options, option => Assert.Contains(option.Name, svg));
    }

    [Fact]
    public void Ids_of_two_pictures_in_one_page_differ()
    {
        XElement[] both = [.. new[] { "narrow", "wide" }.Select(id => XElement.Parse(VerdictPicture.OfRanking(Samples.Six(), new(Id: id)).Svg()))];
        string[] ids = [.. both.SelectMany(svg => svg.DescendantsAndSelf().Attributes("id").Select(a => a.Value))];
        Assert.Equal(4, ids.Distinct().Count());
        Assert.All(both, svg => Assert.All(((string)svg.Attribute("aria-labelledby")!).Split(' '), id => Assert.Contains(id, ids)));
    }

    [Fact]
    public void A_picture_that_follows_the_page_leaves_no_colour_of_the_theme_fixed()
    {
        XElement svg = XElement.Parse(VerdictPicture.OfRanking(Samples.Six()).SvgThatFollowsThePage());
        string[] theme = ["#FCFBF8", "#1B1F24", "#4A515B", "#E2DFD8", "#E4EAEC", "#000000", "#010101"];
        Assert.DoesNotContain(svg.Descendants().Attributes().Where(a => a.Name.LocalName is "fill" or "stroke"), a => theme.Contains(a.Value, StringComparer.OrdinalIgnoreCase));
        Assert.DoesNotContain(svg.Descendants().Where(e => e.Name.LocalName is "path"), e => e.Attribute("fill") is null);
        Assert.Contains("var(--picture-ink,#1B1F24)", svg.ToString());
        Assert.Throws<InvalidOperationException>(() => VerdictPicture.OfRanking(Samples.Six(), new(Theme: Theme.Dark)).SvgThatFollowsThePage());
    }
}
