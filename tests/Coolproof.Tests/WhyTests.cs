using System.Globalization;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;

namespace Coolproof.Tests;

/// <summary>`coolproof why` as a person runs it.</summary>
public partial class WhyTests
{
    static readonly string Demo = TestFiles.Of("demo", "demo-day.csv");

    [Theory]
    [InlineData("c")]
    [InlineData("f")]
    public void The_parts_that_are_printed_sum_to_what_was_read(string unit)
    {
        var said = ProgramRun.Good("why", Demo, "5", "2", "--units", unit);
        var rows = said.Split('\n').Select(line => Row().Match(line)).Where(m => m.Success).Select(m => (Name: m.Groups[1].Value.Trim(), Value: Number(m.Groups[2].Value))).ToArray();
        Assert.Equal("read", rows[^1].Name);
        Assert.True(rows.Length > 4);
        Assert.Equal(rows[^1].Value, rows[..^1].Sum(r => r.Value), 0.05 * rows.Length);
        Assert.Contains($"°{unit.ToUpperInvariant()}", said);
    }

    [Theory]
    [InlineData("5", "nowhere", "nowhere")]
    [InlineData("99", "2", "99")]
    public void A_name_that_is_not_there_is_one_clear_error(string a, string b, string named)
    {
        var run = ProgramRun.Of("why", Demo, a, b);
        Assert.Equal(2, run.ExitCode);
        Assert.Contains("coolproof why:", run.Error);
        Assert.Contains(named, run.Error);
        Assert.Empty(run.Out);
    }

    [Fact]
    public void As_json_it_keeps_to_its_schema_gives_the_same_bytes_again_and_its_parts_sum_to_the_whole()
    {
        var text = ProgramRun.Good("why", Demo, "5", "2", "--json");
        Contract.Fits("why", text);
        Assert.False(Contract.Allows("why", text.Replace("\"readK\"", "\"read\"")));
        Assert.Equal(text, ProgramRun.Good("why", Demo, "5", "2", "--json"));
        var why = JsonNode.Parse(text)!;
        var parts = why["parts"]!.AsArray();
        Assert.Equal(why["readK"]!.GetValue<double>(), parts.Sum(p => p!["meanK"]!.GetValue<double>()), 1e-9);
        Assert.All(parts, p => Assert.True(p!["q05K"]!.GetValue<double>() <= p["q95K"]!.GetValue<double>()));
        Assert.Equal("rest", parts[^1]!["cause"]!.GetValue<string>());
    }

    [Fact]
    public void The_picture_leads_from_the_one_reading_to_the_other()
    {
        var path = Path.Combine(Directory.CreateTempSubdirectory("coolproof-").FullName, "why.svg");
        ProgramRun.Good("why", Demo, "5", "2", "--units", "f", "--picture", path);
        var svg = File.ReadAllText(path);
        Assert.Contains("run 5", svg);
        Assert.Contains("°F", svg);
        Assert.Contains("not explained", svg);
    }

    static double Number(string text) => double.Parse(text.Replace("−", "-").Replace("+", ""), CultureInfo.InvariantCulture);

    [GeneratedRegex(@"^([a-z][a-z ]+?)\s+([+−]?\d+\.\d)(\s|$)")]
    private static partial Regex Row();
}
