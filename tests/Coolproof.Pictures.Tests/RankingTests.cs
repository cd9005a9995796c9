using Coolproof.Evidence;
using Coolproof.Pictures.Drawing;

namespace Coolproof.Pictures.Tests;

public sealed class RankingTests
{
    [Fact]
    public void Options_stand_coolest_first()
    {
        Assert.Equal(["Twin 30 mm fans in a printed duct", "Clamp with 25 mm fan", "Rear blower", "Clip-on finned clamp", "Nose-scoop duct", "Bare can"],
            Standing.All(Samples.Six(), new()).Select(s => s.Option.Name));
        double[] tops = [.. Standing.All(Samples.Six(), new()).Select(s => VerdictPicture.Of(Samples.Six(), new(390)).Words.First(w => w.Text == s.Option.Name).At.Y)];
        Assert.Equal(tops.Order(), tops);
    }

    [Fact]
    public void A_difference_is_turned_so_that_the_hotter_option_is_above_zero()
    {
        // In the table the bare can comes first (pair: bare can minus twin fans), the rear blower last (pair: twin fans minus rear blower).
        var standings = Standing.All(Samples.Six(), new());
        Standing first = standings.Single(s => s.Option.Name == "Bare can"), last = standings.Single(s => s.Option.Name == "Rear blower");
        Assert.Equal(93.4 - 72.1, first.HotterK!.Q50, 9);
        Assert.Equal(79.6 - 72.1, last.HotterK!.Q50, 9);
        Assert.True(last.HotterK.Q05 < last.HotterK.Q25 && last.HotterK.Q75 < last.HotterK.Q95);
        Assert.True(first.ProbabilityHotter > 0.99 && last.ProbabilityHotter > 0.99);
        Assert.Null(standings[0].HotterK);
    }

    [Fact]
    public void The_differences_are_beside_the_most_probable_coolest_even_where_another_middle_is_lower()
    {
        Verdict verdict = Samples.Two();
        verdict = verdict with { Options = [verdict.Options[0] with { ProbabilityCoolest = 0.6 }, verdict.Options[1] with { ProbabilityCoolest = 0.4 }] };
        Assert.Equal("Bare can", Standing.Coolest(verdict)!.Name);
        Assert.Contains(VerdictPicture.Of(verdict).Words, w => w.Text == "The can beside that of Bare can.");
        Assert.Contains(VerdictPicture.Of(verdict).Words, w => w.Then?.Text == ": 2 °C cooler (−3 to 6)");
    }

    [Fact]
    public void Bars_end_where_the_quantiles_are()
    {
        var sheet = new Sheet(new(), Typesetter.BuiltIn);
        Interval.Loud(sheet, new Scale(0, 100, 200, 1200), 50, new Summary(40, 1, 10, 20, 40, 55, 90), v => v, OptionLook.At(1));
        Stroke thin = Assert.Single(sheet.Shapes.OfType<Stroke>());
        Assert.Equal([300.0, 1100.0], thin.Spots.Select(s => s.X));
        Area thick = sheet.Shapes.OfType<Area>().ElementAt(1), mark = sheet.Shapes.OfType<Area>().Last();
        Assert.Equal((400.0, 750.0), (thick.Corners.Min(c => c.X), thick.Corners.Max(c => c.X)));
        Assert.Equal(600, (mark.Corners.Min(c => c.X) + mark.Corners.Max(c => c.X)) / 2, 6);
        Assert.Equal("#E69F00", mark.Fill);
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void A_quantile_that_is_no_number_is_refused_by_the_name_of_its_option(double bad)
    {
        Verdict verdict = Samples.Two();
        OptionVerdict broken = verdict.Options[1] with { PeakWindingC = verdict.Options[1].PeakWindingC with { Q95 = bad } };
        var error = Assert.Throws<ArgumentException>(() => VerdictPicture.Of(verdict with { Options = [verdict.Options[0], broken] }));
        Assert.Contains("winding of Clip-on finned clamp", error.Message);
    }

    [Fact]
    public void A_single_option_is_drawn_without_differences_and_without_doubt()
    {
        string[] words = [.. VerdictPicture.Of(Samples.One()).Words.Select(w => w.Text)];
        Assert.Contains("Rear blower", words);
        Assert.DoesNotContain("How much hotter than the coolest", words);
        Assert.DoesNotContain(words, w => w.Contains("doubt"));
    }

    [Fact]
    public void Without_options_the_picture_says_what_to_do() =>
        Assert.Contains(VerdictPicture.Of(Samples.None()).Words, w => w.Text.StartsWith("No option has a reading that counts yet", StringComparison.Ordinal));

    [Fact]
    public void Fair_conditions_stand_beneath_the_finding() =>
        Assert.Contains(VerdictPicture.Of(Samples.Six()).Words, w => w.Text == "All brought to the same terms: air 27 °C, 6 minutes of hard driving, start at air temperature.");

    [Fact]
    public void Doubt_is_sorted_largest_first_whatever_the_order_given()
    {
        double[] percents = [.. DoubtPicture.Of(Samples.Six()).Words.Where(w => w.Bold && w.Text.EndsWith(" %", StringComparison.Ordinal) && char.IsDigit(w.Text[0]))
            .Select(w => double.Parse(w.Text.Replace(" %", ""), System.Globalization.CultureInfo.InvariantCulture))];
        Assert.Equal([41, 21, 12, 12, 6, 4, 3], percents);
    }

    [Fact]
    public void Warnings_stand_on_the_picture_and_more_than_four_are_counted()
    {
        Verdict verdict = Samples.Six() with { Warnings = [.. Enumerable.Range(1, 7).Select(i => $"Remark {i}.")] };
        string[] words = [.. VerdictPicture.Of(verdict).Words.Select(w => w.Text)];
        Assert.Contains("Mind: Remark 4.", words);
        Assert.DoesNotContain("Mind: Remark 5.", words);
        Assert.Contains("Mind: 3 more remarks in the table.", words);
    }
}
