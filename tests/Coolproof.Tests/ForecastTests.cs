using System.Text.Json.Nodes;

namespace Coolproof.Tests;

/// <summary>`coolproof forecast` as a person runs it.</summary>
public class ForecastTests
{
    static readonly string Demo = TestFiles.Of("demo", "demo-day.csv");

    [Fact]
    public void A_forecast_prints_as_its_schema_says()
    {
        var text = Good(Demo, "--air", "36C", "--race", "8min", "--races", "2", "--json");
        Contract.Fits("forecast", text);
        Assert.False(Contract.Allows("forecast", text.Replace("\"oddsOfAny\"", "\"odds\"")));
    }

    [Fact]
    public void Warmer_air_a_longer_race_and_a_thinner_air_raise_can_and_odds()
    {
        var mild = Named(Good(Demo, "--air", "25C", "--race", "5min", "--json"));
        foreach (var harder in new[] { Good(Demo, "--air", "35C", "--race", "5min", "--json"), Good(Demo, "--air", "25C", "--race", "8min", "--json"), Good(Demo, "--air", "25C", "--race", "5min", "--altitude", "2500", "--tested-at", "0", "--json") })
        {
            var hot = Named(harder);
            Assert.All(mild.Keys, name =>
            {
                Assert.True(hot[name].Can > mild[name].Can, name);
                Assert.True(hot[name].Odds >= mild[name].Odds, name);
            });
        }
    }

    [Fact]
    public void What_would_make_it_safe_does()
    {
        var hot = JsonNode.Parse(Good(Demo, "--air", "38C", "--race", "8min", "--can-limit", "80C", "--json"))!["options"]!.AsArray()[0]!;
        var air = hot["toBeSafe"]!["airC"]!.GetValue<double>();
        var cooler = JsonNode.Parse(Good(Demo, "--air", FormattableString.Invariant($"{air:F2}C"), "--race", "8min", "--can-limit", "80C", "--json"))!["options"]!.AsArray()[0]!;
        Assert.InRange(cooler["oddsOfAny"]!.GetValue<double>(), 0.05, 0.105);
    }

    [Fact]
    public void People_read_a_sentence_the_assumptions_and_the_cautions()
    {
        var said = Good(Demo, "--air", "100F", "--race", "8min", "--units", "f", "--insulation", "H");
        Assert.Contains("In a race of 8 min at 100 °F", said);
        Assert.Contains("class H", said);
        Assert.Contains("grade unknown: M assumed", said);
        Assert.Contains("fingers off", said);
        Assert.Contains("check the rule book", said.ReplaceLineEndings(" "));
        Assert.DoesNotContain(" °C", said);
    }

    [Fact]
    public void A_picture_of_the_option_that_is_named_is_written_in_the_degrees_asked_for()
    {
        var path = Path.Combine(Directory.CreateTempSubdirectory("coolproof-").FullName, "race.svg");
        Good(Demo, "--air", "36C", "--races", "2", "--option", "BARE CAN", "--units", "f", "--picture", path);
        var svg = File.ReadAllText(path);
        Assert.Contains("bare can: can up to", svg, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("can limit 167", svg.Replace('\u00a0', ' '));
        Assert.DoesNotContain("°C", svg);
    }

    [Theory]
    [InlineData("--option kazoo", "--option kazoo: expected one of")]
    [InlineData("--picture race.gif", "expected a name that ends in .svg or .png")]
    [InlineData("--insulation Q", "--insulation Q: expected one of Y, A, E, B, F, H, N, R")]
    [InlineData("--magnet 52", "expected one of M, H, SH, UH, EH, AH")]
    [InlineData("--races 40", "--races 40")]
    [InlineData("--break 5h", "expected a minute to four hours")]
    [InlineData("--race 90min", "expected half a minute to an hour")]
    public void A_wrong_question_is_one_clear_error(string asked, string said)
    {
        var run = ProgramRun.Of(["forecast", Demo, .. asked.Split(' ')]);
        Assert.Equal(2, run.ExitCode);
        Assert.Contains(said, run.Error);
        Assert.Empty(run.Out);
    }

    static Dictionary<string, (double Can, double Odds)> Named(string json) => JsonNode.Parse(json)!["options"]!.AsArray().ToDictionary(
        o => o!["name"]!.GetValue<string>(), o => (o!["races"]![0]!["highestCanC"]!["q50"]!.GetValue<double>(), o!["oddsOfAny"]!.GetValue<double>()));

    static string Good(params string[] arguments) => ProgramRun.Good(["forecast", .. arguments]);
}
