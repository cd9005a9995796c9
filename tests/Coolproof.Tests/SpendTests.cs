using System.Text.Json.Nodes;

namespace Coolproof.Tests;

/// <summary>`coolproof spend` as a person runs it.</summary>
public class SpendTests
{
    static readonly string Sheet = TestFiles.Of("demo", "spend.json"), Day = TestFiles.Of("demo", "demo-day.csv"), Mounts = TestFiles.Of("demo", "mounts.json");

    [Fact]
    public void The_demo_s_parts_keep_to_the_published_form_and_so_does_what_is_printed()
    {
        Contract.Fits("spend-sheet", File.ReadAllText(Sheet));
        Assert.False(Contract.Allows("spend-sheet", File.ReadAllText(Sheet).Replace("\"places\"", "\"place\"")));
        var text = ProgramRun.Good("spend", Sheet, "--with", Day, "--mounts", Mounts, "--json");
        Contract.Fits("spend", text);
        Assert.False(Contract.Allows("spend", text.Replace("\"basis\"", "\"base\"")));
        var answer = JsonNode.Parse(text)!;
        var best = answer["best"]!;
        Assert.True(best["money"]!.GetValue<double>() <= 60 && best["countedG"]!.GetValue<double>() <= 30);
        Assert.Equal(best.ToJsonString(), answer["steps"]!.AsArray()[^1]!["choice"]!.ToJsonString());
        Assert.Equal(["shell window"], answer["notAllowed"]!.AsArray().Select(p => p!.GetValue<string>()));
        var front = answer["front"]!.AsArray().Select(p => (Money: p!["money"]!.GetValue<double>(), Grams: p["countedG"]!.GetValue<double>(), K: p["canCoolerK"]!.GetValue<double>())).ToArray();
        Assert.All(front, a => Assert.DoesNotContain(front, b => b != a && b.Money <= a.Money && b.Grams <= a.Grams && b.K > a.K));
    }

    [Theory]
    [InlineData("c", "g")]
    [InlineData("f", "oz")]
    public void People_read_it_within_a_hundred_columns_in_their_units_with_the_cautions(string unit, string mass)
    {
        var said = ProgramRun.Good("spend", Sheet, "--with", Day, "--mounts", Mounts, "--units", unit, "--mass", mass);
        Assert.All(said.Split('\n'), line => Assert.True(line.Length <= 100, line));
        Assert.StartsWith("Within 60 €", said);
        Assert.Contains("taken as measured", said);
        Assert.Contains("Class rules, makers' limits", said);
        Assert.DoesNotContain(unit == "c" ? "°F" : "°C", said);
        Assert.Matches(mass == "oz" ? @"\d oz" : @"\d g\b", said);
    }

    [Fact]
    public void The_picture_has_every_step_and_the_budget()
    {
        var drawn = Path.Combine(Directory.CreateTempSubdirectory("coolproof-").FullName, "spend.svg");
        var said = ProgramRun.Good("spend", Sheet, "--with", Day, "--mounts", Mounts, "--picture", drawn, "--theme", "sun");
        var svg = File.ReadAllText(drawn).Replace('\u00a0', ' ');
        Assert.Contains("budget 60 €", svg);
        Assert.All(said.Split('\n').Where(line => line.StartsWith("      ", StringComparison.Ordinal) && line.Length > 6 && line[6] != ' ' && !line.Contains("nothing")), parts => Assert.Contains(parts.Trim(), svg));
    }

    [Theory]
    [InlineData("SHEET", "driven: found options that were driven; expected a readings table")]
    [InlineData("SHEET", "predicted: found mounts that were predicted; expected a file of mounts")]
    [InlineData("SHEET --drive 360s", "give it by --with")]
    [InlineData("SHEET --mounts nosuch.json", "nosuch.json can't be read")]
    [InlineData("nosuch.json", "there is no such file")]
    [InlineData("SHEET --mass lb", "expected g or oz")]
    public void A_wrong_question_is_one_clear_error(string asked, string said)
    {
        var run = ProgramRun.Of(["spend", .. asked.Replace("SHEET", Sheet).Split(' ')]);
        Assert.Equal(2, run.ExitCode);
        Assert.Contains(said, run.Error);
        Assert.Empty(run.Out);
    }

    [Fact]
    public void Everything_wrong_is_listed_at_once_with_field_and_remedy()
    {
        var bad = File.ReadAllText(Sheet).Replace("\"price\": 18, ", "").Replace("\"needs\": [\"printed duct\"]", "\"needs\": [\"duct\"]").Replace("\"option\": \"rear blower\"", "\"option\": \"rear blowr\"");
        var run = ProgramRun.With(bad, "spend", "-", "--with", Day, "--mounts", Mounts);
        Assert.Equal(2, run.ExitCode);
        Assert.Contains("(2 problems)", run.Error);
        Assert.Contains("parts[0].price: found nothing", run.Error);
        Assert.Contains("parts[4].needs: found \"duct\"; expected names of parts in this file", run.Error);
        run = ProgramRun.With(File.ReadAllText(Sheet).Replace("\"option\": \"rear blower\"", "\"option\": \"rear blowr\""), "spend", "-", "--with", Day, "--mounts", Mounts);
        Assert.Equal(2, run.ExitCode);
        Assert.Contains("driven[4].option: found \"rear blowr\"; expected an option of the readings table", run.Error);
    }
}
