using System.Text.Json.Nodes;

namespace Coolproof.Tests;

/// <summary>`coolproof mount` as a person runs it.</summary>
public class MountTests
{
    static readonly string Sheet = TestFiles.Of("demo", "mounts.json"), Day = TestFiles.Of("demo", "demo-day.csv");

    [Fact]
    public void The_demo_s_mounts_keep_to_the_published_form_and_so_does_what_is_printed()
    {
        Contract.Fits("mount-sheet", File.ReadAllText(Sheet));
        Assert.False(Contract.Allows("mount-sheet", File.ReadAllText(Sheet).Replace("\"gapMm\"", "\"gapMM\"")));
        var text = ProgramRun.Good("mount", Sheet, "--json");
        Contract.Fits("mount", text);
        Assert.False(Contract.Allows("mount", text.Replace("\"rule\"", "\"law\"")));
        Assert.Equal(text, ProgramRun.Good("mount", Sheet, "--json"));
    }

    [Fact]
    public void Beside_readings_what_was_driven_is_found_again_and_the_rest_is_predicted()
    {
        var text = ProgramRun.Good("mount", Sheet, "--with", Day, "--json");
        Contract.Fits("mount", text);
        var answer = JsonNode.Parse(text)!;
        var compared = JsonNode.Parse(ProgramRun.Good("compare", Day, "--json"))!["options"]!.AsArray().ToDictionary(o => o!["name"]!.GetValue<string>(), o => o!);
        var mounts = answer["mounts"]!.AsArray();
        // Within what the ruler's word on how two of them differ moves their cans: brackets are some 15 K wide.
        foreach (var driven in mounts.Where(m => m!["found"] is not null).Concat(answer["driven"]!.AsArray()))
            Assert.Equal(compared[driven!["name"]!.GetValue<string>()]["peakCanC"]!["q50"]!.GetValue<double>(), driven["canC"]!["q50"]!.GetValue<double>(), 1.2);
        Assert.Equal(["bare can", "clamp with a 25 mm fan"], mounts.Where(m => m!["found"] is not null).Select(m => m!["name"]!.GetValue<string>()));
        Assert.Equal(1, mounts.Concat(answer["driven"]!.AsArray()).Sum(m => m!["oddsCoolest"]!.GetValue<double>()), 3);
    }

    [Theory]
    [InlineData("c")]
    [InlineData("f")]
    public void People_read_it_within_a_hundred_columns_in_their_degrees_with_the_cautions(string unit)
    {
        var said = ProgramRun.Good("mount", Sheet, "--with", Day, "--units", unit);
        Assert.All(said.Split('\n'), line => Assert.True(line.Length <= 100, line));
        Assert.Contains("Predicted against found, bare can", said);
        Assert.Contains("outside correlation", said);
        Assert.Contains("fingers off fan and gears", said.ReplaceLineEndings(" ").Replace("               ", ""));
        Assert.DoesNotContain(unit == "c" ? "°F" : "°C", said);
    }

    [Fact]
    public void A_picture_to_scale_is_drawn_of_what_was_entered()
    {
        var path = Path.Combine(Directory.CreateTempSubdirectory("coolproof-").FullName, "mounts.svg");
        ProgramRun.Good("mount", Sheet, "--picture", path);
        var svg = File.ReadAllText(path).Replace('\u00a0', ' ');
        Assert.Contains("inlet gap 6 mm", svg);
        Assert.Contains("watts per °C", svg);
    }

    [Fact]
    public void Everything_wrong_is_listed_at_once_with_field_and_remedy()
    {
        var bad = File.ReadAllText(Sheet).Replace("\"freeFlowM3H\": 4.5, ", "").Replace("\"shellFromCanMm\": 36", "\"shellFromCanMm\": 20").Replace("\"diameterMm\": 36", "\"diameterMm\": -36");
        var run = ProgramRun.With(bad, "mount", "-", "--json");
        Assert.Equal(2, run.ExitCode);
        Assert.Empty(run.Out);
        Assert.Contains("(3 problems)", run.Error);
        Assert.Contains("can.diameterMm: found -36; expected a number from 15 to 80 mm", run.Error);
        Assert.Contains("mounts[1].fans[0].freeFlowM3H: found nothing", run.Error);
        Assert.Contains("mounts[3].shellFromCanMm: found 20; expected more than 21 mm", run.Error);
    }

    [Theory]
    [InlineData("nosuch.json", "there is no such file")]
    [InlineData("SHEET --at-ambient 30C", "give it by --with")]
    [InlineData("SHEET --theme pink", "expected light or dark or sun")]
    [InlineData("SHEET --with nosuch.csv", "nosuch.csv can't be read")]
    public void A_wrong_question_is_one_clear_error(string asked, string said)
    {
        var run = ProgramRun.Of(["mount", .. asked.Replace("SHEET", Sheet).Split(' ')]);
        Assert.Equal(2, run.ExitCode);
        Assert.Contains(said, run.Error);
        Assert.Empty(run.Out);
    }
}
