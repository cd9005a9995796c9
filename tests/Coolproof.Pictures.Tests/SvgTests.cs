using System.Xml.Linq;
using Coolproof.Evidence;
using Coolproof.Notebook;
using Coolproof.Pictures.Drawing;

namespace Coolproof.Pictures.Tests;

public sealed class SvgTests
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    public static TheoryData<int> Widths => [PictureStyle.PhoneWidthPx, PictureStyle.PageWidthPx];

    [Theory]
    [MemberData(nameof(Widths))]
    public void Every_option_stands_in_the_svg_as_text_with_its_unit(int width)
    {
        foreach (Verdict verdict in new[] { Samples.One(), Samples.Two(), Samples.Six(), Samples.Forty() })
        {
            XElement svg = XElement.Parse(VerdictPicture.Of(verdict, new(width)).Svg());
            string read = string.Join(" ", svg.Elements(Svg + "text").Select(t => t.Value));
            Assert.All(verdict.Options, o => Assert.Contains(o.Name, read));
            Assert.Contains("°C", read);
            Assert.DoesNotContain("°F", read);
        }
    }

    [Fact]
    public void Fahrenheit_stands_everywhere_when_it_is_chosen()
    {
        string svg = VerdictPicture.Of(Samples.Six(), new(Units: TemperatureUnitChoice.Fahrenheit, Title: "Twin fans are the coolest.")).Svg();
        Assert.DoesNotContain("°C", svg);
        Assert.Contains("air 80.6 °F", svg);
        // The can of the bare motor, 93.4 °C, is 200.1 °F; it is 21.3 K hotter than the coolest, which is 38.3 °F.
        Assert.Contains("can 200 °F", svg);
        Assert.Contains("38 °F hotter", svg);
        Assert.Contains("the same within 3.6 °F", svg);
    }

    [Fact]
    public void A_run_that_was_read_on_the_winding_alone_shows_those_readings_as_read_and_as_brought_back()
    {
        string Drawn(int onCan, bool winding)
        {
            RunCurve run = Samples.ReadOnTheWinding(onCan);
            return RunPicture.OfRun(Samples.Six(), winding ? run : run with { WindingReadings = [] }, new(PictureStyle.PhoneWidthPx)).Svg();
        }

        XElement with = XElement.Parse(Drawn(0, true)), without = XElement.Parse(Drawn(0, false));
        string read = string.Join(" ", with.Elements(Svg + "text").Select(t => t.Value));
        Assert.Contains("Small marks: readings of the winding.", read.Replace('\u00A0', ' '));
        Assert.Contains("Read on the winding alone.", read);
        Assert.DoesNotContain("No reading of this run counts.", read);
        Assert.Contains("No reading of this run counts.", string.Join(" ", without.Elements(Svg + "text").Select(t => t.Value)));
        // Three readings: a hollow mark filled with paper and a solid one in the quiet ink of the winding's curve for each.
        string paper = ThemeColours.Of(Theme.Light).Paper, quiet = ThemeColours.Of(Theme.Light).Quiet;
        Assert.Equal(3, Filled(with, paper) - Filled(without, paper));
        Assert.Equal(3, Filled(with, quiet) - Filled(without, quiet));
        Assert.DoesNotContain("Read on the winding alone.", Drawn(2, true));
        Assert.DoesNotContain("Small marks", Drawn(2, false));

        static int Filled(XElement svg, string colour) => svg.Elements(Svg + "path").Count(p => string.Equals(p.Attribute("fill")?.Value, colour, StringComparison.OrdinalIgnoreCase));
    }

    [Fact]
    public void Names_with_markup_stay_words()
    {
        string source = VerdictPicture.Of(Samples.Named(OddNames.Markup, "Bare can"), new()).Svg();
        XElement svg = XElement.Parse(source);
        Assert.Contains(svg.Elements(Svg + "text"), t => t.Value == OddNames.Markup);
        Assert.DoesNotContain("<b>", source);
        Assert.Equal(["desc", "ellipse", "path", "rect", "svg", "text", "title", "tspan"],
            svg.DescendantsAndSelf().Select(e => e.Name.LocalName).Append("ellipse").Distinct().Order());
    }

    [Theory]
    [MemberData(nameof(Widths))]
    public void Odd_names_parse_as_xml_and_long_ones_stand_whole_in_the_description(int width)
    {
        Verdict verdict = Samples.Named(OddNames.All);
        XElement svg = XElement.Parse(VerdictPicture.Of(verdict, new(width)).Svg());
        string description = svg.Element(Svg + "desc")!.Value;
        Assert.Contains(OddNames.Long, description);
        Assert.Contains(OddNames.Unicode, description);
        Assert.Contains("Duct  with tab \uFFFD", description);
        Assert.Contains(svg.Descendants(Svg + "title"), t => t.Parent!.Name == Svg + "text" && t.Value == OddNames.Long);
    }

    [Theory]
    [MemberData(nameof(GalleryTests.Names), MemberType = typeof(GalleryTests))]
    public void Every_svg_has_a_title_a_description_and_a_fallback_typeface(string name)
    {
        Picture picture = GalleryTests.Draw(name, new(PictureStyle.PhoneWidthPx));
        XElement svg = XElement.Parse(picture.Svg());
        Assert.Equal(picture.Title, svg.Element(Svg + "title")!.Value);
        Assert.NotEmpty(svg.Element(Svg + "desc")!.Value);
        Assert.Equal("img", svg.Attribute("role")!.Value);
        Assert.EndsWith("sans-serif", svg.Attribute("font-family")!.Value);
        Assert.Equal($"0 0 {picture.WidthPx} {picture.HeightPx}", svg.Attribute("viewBox")!.Value);
        Assert.DoesNotContain(svg.Descendants(), e => e.Name.Namespace != Svg);
    }

    [Fact]
    public void Each_option_of_a_run_picture_is_named_beside_its_run()
    {
        Verdict verdict = Samples.Six();
        XElement svg = XElement.Parse(RunPicture.OfDay(verdict).Svg());
        string[] read = [.. svg.Elements(Svg + "text").Select(t => t.Value)];
        Assert.All(verdict.Runs, r => Assert.Contains(read, t => t.Contains($"run {r.Run},")));
        Assert.All(verdict.Options, o => Assert.Equal(verdict.Runs.Count(r => r.Option == o.Name), read.Count(t => t == o.Name)));
        Assert.Equal(verdict.Runs.Count, read.Count(t => t == "can"));
        Assert.Equal(verdict.Runs.Count, read.Count(t => t == "winding"));
    }

    [Fact]
    public void A_run_of_which_nothing_is_known_says_so_and_draws_no_curve()
    {
        Summary unknown = new(double.NaN, double.NaN, double.NaN, double.NaN, double.NaN, double.NaN, double.NaN);
        RunCurve blank = new("Friday", "1", "Bare can", unknown, [-8, 0, 60], [unknown, unknown, unknown], [unknown, unknown, unknown], [], null);
        string svg = RunPicture.OfRun(Samples.Six(), blank).Svg();
        Assert.Contains("Bare can, run 1: nothing is known of it yet", svg);
        Assert.DoesNotContain("NaN", svg);
        Assert.Contains("NaN", RunPicture.OfRun(Samples.Six(), blank with { Run = "NaN" }).Svg());
    }

    [Fact]
    public void A_day_that_nobody_drove_says_so() =>
        Assert.Contains("No run counts yet", RunPicture.OfDay(Samples.Six(), "Friday").Svg());
}
