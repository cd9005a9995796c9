using System.Text.Json.Nodes;

namespace Coolproof.Tests;

/// <summary>`coolproof plan` and `coolproof cooldown` as a person runs them.</summary>
public class PlanTests
{
    static readonly string Demo = TestFiles.Of("demo", "demo-day.csv");

    [Fact]
    public void A_plan_prints_as_its_schema_says() => Contract.Fits("plan", ProgramRun.Good("plan", "--options", "a,b,c", "--days", "4", "--json"));

    [Fact]
    public void Advice_for_a_day_that_has_begun_prints_as_its_schema_says() => Contract.Fits("plan-so-far", ProgramRun.Good("plan", "--so-far", Demo, "--rain-in", "2h", "--json"));

    [Fact]
    public void A_cool_down_prints_as_its_schema_says() => Contract.Fits("cooldown", ProgramRun.Good("cooldown", Demo, "--can", "62C", "--look", "5min=50C", "--json"));

    [Fact]
    public void The_schema_refuses_what_the_contract_does_not_allow() =>
        Assert.False(Contract.Allows("plan-so-far", ProgramRun.Good("plan", "--so-far", Demo, "--json").Replace("\"day-over\"", "\"over\"").Replace("\"drive-on\"", "\"on\"")));

    [Fact]
    public void What_cannot_be_undone_is_driven_last_and_the_reference_first()
    {
        var runs = JsonNode.Parse(ProgramRun.Good("plan", "--options", "a,b,cut", "--last", "cut", "--reference", "b", "--days", "0", "--json"))!["runs"]!.AsArray().Select(r => r!["option"]!.GetValue<string>()).ToArray();
        Assert.Equal("b", runs[0]);
        Assert.Equal("cut", runs[^1]);
        Assert.DoesNotContain("cut", runs[..Array.IndexOf(runs, "cut")]);
        Assert.All(runs[Array.IndexOf(runs, "cut")..], option => Assert.Equal("cut", option));
    }

    [Fact]
    public void Where_not_all_fit_it_says_how_to_split_them_and_what_to_leave_out()
    {
        var plan = JsonNode.Parse(ProgramRun.Good("plan", "--options", "8", "--length", "2h", "--days", "0", "--json"))!;
        var evenings = plan["evenings"]!.AsArray().Select(e => e!.AsArray().Select(o => o!.GetValue<string>()).ToArray()).ToArray();
        Assert.True(evenings.Length > 1);
        Assert.All(evenings, e => Assert.Contains(evenings[0][0], e));
        Assert.Equal(8, evenings.SelectMany(e => e).Distinct().Count());
        Assert.NotEmpty(plan["leaveOut"]!.AsArray());
    }

    [Fact]
    public void The_check_list_names_one_spot_and_the_hot_can()
    {
        var said = ProgramRun.Good("plan", "--options", "a,b", "--days", "0", "--spot", "left of the endbell seam");
        Assert.Contains("left of the endbell seam", said);
        Assert.Contains("hot can", said);
        Assert.Contains("power off first", said);
    }

    [Fact]
    public void The_timeline_is_drawn_with_its_words()
    {
        var path = Path.Combine(Directory.CreateTempSubdirectory("plan").FullName, "plan.svg");
        ProgramRun.Good("plan", "--options", "a,b", "--days", "0", "--picture", path);
        var svg = File.ReadAllText(path);
        Assert.Contains("<title", svg);
        Assert.Contains("10:00 a.", svg.Replace("10:00 b.", "10:00 a."));
    }

    [Theory]
    [InlineData("--length 5min --drive 10min", "no run fits")]
    [InlineData("--options a,b --last c", "--last c: expected one of the options: a, b")]
    [InlineData("--options a,a", "each once")]
    [InlineData("--from 25:00", "like 16:30")]
    [InlineData("--options a,b --last a,b", "at least one option must be left")]
    [InlineData("--so-far nowhere.csv", "there is no such file")]
    public void A_wrong_question_is_one_clear_error(string asked, string said)
    {
        var run = ProgramRun.Of(["plan", .. asked.Split(' ')]);
        Assert.Equal(2, run.ExitCode);
        Assert.Contains(said, run.Error);
        Assert.Empty(run.Out);
    }

    [Theory]
    [InlineData("--can 20C --air 27C", "nothing to cool")]
    [InlineData("--look 5=50", "like 5min=48C")]
    public void A_wrong_cool_down_is_one_clear_error(string asked, string said)
    {
        var run = ProgramRun.Of(["cooldown", .. asked.Split(' ')]);
        Assert.Equal(2, run.ExitCode);
        Assert.Contains(said, run.Error);
    }

    [Fact]
    public void The_core_is_said_to_be_hotter_than_the_can() => Assert.Matches("the can reads .* but the core is still at", ProgramRun.Good("cooldown", "--can", "62C", "--air", "27C"));
}
