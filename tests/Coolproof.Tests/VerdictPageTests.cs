using Coolproof.Evidence;
using Coolproof.Evidence.Words;
using Coolproof.Notebook;
using Coolproof.Screen;
using Coolproof.Words;

namespace Coolproof.Tests;

public class VerdictPageTests
{
    static PageSettings Page(TemperatureUnitChoice units = TemperatureUnitChoice.Celsius, int width = 100) => new(new DegreeWords(units), width, new Ink(false));

    static IReadOnlyList<string> Lines(Verdict verdict, TemperatureUnitChoice units = TemperatureUnitChoice.Celsius, int width = 100) => VerdictPage.Lines(verdict, Page(units, width));

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(6)]
    [InlineData(12)]
    [InlineData(40)]
    public void A_verdict_fits_one_screen(int options)
    {
        foreach (var units in Enum.GetValues<TemperatureUnitChoice>())
            foreach (var width in new[] { 60, 80, 100 })
            {
                var lines = Lines(Crowded(options), units, width);
                Assert.All(lines, line => Assert.InRange(Cells.Width(line), 0, width));
                if (width == 100) Assert.InRange(lines.Count, 1, PageSettings.Height);
            }
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(6)]
    [InlineData(40)]
    public void Details_keep_to_the_width_and_leave_nothing_out(int options)
    {
        var verdict = Crowded(options);
        var lines = DetailsPage.Lines(verdict, Page());
        Assert.All(lines, line => Assert.InRange(Cells.Width(line), 0, 100));
        var told = lines.Count(line => line.Contains("cooler than")); // one line a pair, on the can and on the winding
        Assert.Equal(verdict.Pairs.Count, told);
        Assert.DoesNotContain(lines, line => line.Contains("--details"));
    }

    [Fact]
    public void Details_say_readings_of_the_winding_apart()
    {
        var verdict = Samples.Of(2);
        var runs = verdict.Runs.ToList();
        runs[1] = runs[1] with { Readings = [], WindingReadings = [new(9, true, 21, true, 82.24, 97.31), new(10, false, 30.4, false, 80, 97)] };
        var lines = DetailsPage.Lines(verdict with { Runs = runs }, Page()).ToList();
        var at = lines.IndexOf("Each reading of the winding, and what it makes of the winding at the stop");
        Assert.Equal("9  first evening, 2  clip-on finned clamp   21 s  82.2  97.3  by resistance", lines[at + 2].Trim());
        Assert.EndsWith("~30 s  80.0  97.0  by gun", lines[at + 3], StringComparison.Ordinal);
        Assert.DoesNotContain(DetailsPage.Lines(verdict, Page()), line => line.Contains("reading of the winding"));
    }

    [Fact]
    public void The_sentence_comes_first() => Assert.StartsWith("twin 30 mm fans in duct keeps the can 8 °C cooler (2 to 13)", Lines(Samples.Of(6))[0]);

    [Fact]
    public void Options_stand_coolest_first()
    {
        var lines = Lines(Samples.Of(6)).ToList();
        var places = new[] { 4, 2, 5, 3, 1, 0 }.Select(i => lines.FindIndex(line => line.Length > 3 && char.IsDigit(line[0]) && line[3..].StartsWith(Samples.Names[i]))).ToList();
        Assert.DoesNotContain(-1, places);
        Assert.Equal(places.Order(), places);
    }

    [Fact]
    public void An_option_carries_its_runs_its_range_and_its_odds()
    {
        var line = Assert.Single(Lines(Samples.Of(6)), line => line.StartsWith("1  twin 30 mm fans in duct"));
        Assert.Contains("3  64 (60 to 68)  85 (79 to 92)     93 in 100", line);
    }

    [Fact]
    public void The_strip_puts_the_cooler_option_further_left()
    {
        var lines = Lines(Samples.Of(6));
        var dots = lines.Where(line => line.Contains('●')).Select(line => line.IndexOf('●')).ToList();
        Assert.Equal(6, dots.Count);
        Assert.Equal(dots.Order(), dots);
    }

    [Fact]
    public void With_many_options_the_first_are_listed_and_the_rest_counted()
    {
        var lines = Lines(Samples.Of(40));
        var shown = lines.Count(line => line.Contains('●'));
        Assert.InRange(shown, 5, 39);
        Assert.Contains($"   and {40 - shown} more options: --details", lines);
    }

    [Fact]
    public void Open_pairs_are_said_with_what_would_settle_them()
    {
        var lines = Lines(Samples.Of(6, sd: 1.2));
        Assert.Contains(lines, line => line.StartsWith("Not told yet   clamp with 25 mm fan 2 °C cooler (−1 to 5) than rear blower? Runs alone won't tell", StringComparison.Ordinal));
    }

    [Fact]
    public void What_makes_the_largest_doubt_smaller_is_said_once()
    {
        var delay = SourceOfDoubt.Of("delay");
        var lines = Lines(Samples.Of(6) with { Advice = [$"N{delay.Remedy[1..]}: the largest doubt is {delay.Plain}.", "Shuffle the order."] });
        Assert.Contains(lines, line => line.StartsWith($"Largest doubt  {delay.Plain} (41 % of it). To make it smaller", StringComparison.Ordinal));
        Assert.Contains("Next           Shuffle the order.", lines);
    }

    [Fact]
    public void Units_in_fahrenheit_leave_no_celsius_on_the_page()
    {
        foreach (var lines in new[] { Lines(Samples.Of(6), TemperatureUnitChoice.Fahrenheit), DetailsPage.Lines(Samples.Of(6), Page(TemperatureUnitChoice.Fahrenheit)) })
        {
            Assert.DoesNotContain(lines, line => line.Contains("°C"));
            Assert.Contains("14 °F cooler than with the next best", string.Join(" ", lines.Take(3)));
        }
    }

    [Fact]
    public void Pages_speak_without_the_jargon_of_statistics()
    {
        foreach (var lines in new[] { Lines(Samples.Of(6)), DetailsPage.Lines(Samples.Of(6), Page()) })
            foreach (var word in new[] { "posterior", "diverg", "R-hat", "rhat", "conductance", "prior", "quantile", "regret" })
                Assert.DoesNotContain(lines, line => line.Contains(word, StringComparison.OrdinalIgnoreCase));
    }

    [Fact]
    public void A_hot_can_is_warned_of_as_one_that_burns()
    {
        Assert.Contains(Lines(Samples.Of(6)), line => line.StartsWith("At the stop") && line.Contains("power off first") && line.Contains("burn"));
        var cold = Samples.Of(1);
        var mild = cold with { Options = [cold.Options[0] with { PeakCanC = Samples.Around(45, 2) }] };
        Assert.Contains(Lines(mild), line => line.Contains("mind the hot can"));
        Assert.DoesNotContain(Lines(mild), line => line.Contains("burn"));
    }

    [Fact]
    public void Escape_sequences_are_written_only_where_ink_is_on()
    {
        Assert.DoesNotContain(Lines(Samples.Of(6)), line => line.Contains('\e'));
        Assert.Contains(VerdictPage.Lines(Samples.Of(6), Page() with { Ink = new Ink(true) }), line => line.Contains("\e[1m"));
    }

    [Fact]
    public void Names_that_would_steer_the_terminal_are_made_harmless()
    {
        var verdict = Samples.Of(1);
        var odd = verdict with { Options = [verdict.Options[0] with { Name = "duct\u001b[2J\u202e\nA" }], Sentence = "duct\u001b[2J" };
        Assert.DoesNotContain(string.Join('\n', Lines(odd)), c => c is '\u001b' or '\u202e');
        Assert.DoesNotContain(string.Join('\n', DetailsPage.Lines(odd, Page())), c => c is '\u001b' or '\u202e');
    }

    /// <summary>Much to say and long names.</summary>
    static Verdict Crowded(int options)
    {
        var verdict = Samples.Of(options);
        var sentence = "Two of the longest names that anybody has yet given to a duct keep the can 8 °C cooler (2 to 13) than the one after it, 19 in 20 sure.";
        return verdict with
        {
            Sentence = sentence,
            Warnings = [.. Enumerable.Range(1, 12).Select(i => $"Warning {i}: {sentence} {sentence}")],
            Advice = [.. Enumerable.Range(1, 9).Select(i => $"Advice {i}: {sentence}")],
            Options = [.. verdict.Options.Select((option, i) => i == 0 ? option with { Readings = 1000 } : option)],
        };
    }
}
