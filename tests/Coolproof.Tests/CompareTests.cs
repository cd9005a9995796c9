using System.Text.Json.Nodes;
using System.Text.RegularExpressions;

namespace Coolproof.Tests;

/// <summary>`coolproof compare` as a process, on the demo's evening and on tables that can't be judged.</summary>
public sealed class CompareTests : IDisposable
{
    static readonly string Demo = TestFiles.Of("demo", "demo-day.csv");

    readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("coolproof-test-");

    string Place(string name) => Path.Combine(folder.FullName, name);

    public void Dispose() => folder.Delete(recursive: true);

    [Fact]
    public void The_demo_is_judged_on_one_screen()
    {
        var run = ProgramRun.Of("compare", Demo);
        Assert.Equal(0, run.ExitCode);
        Assert.Empty(run.Error); // no progress where no one watches
        Assert.DoesNotContain('\e', run.Out);
        Assert.InRange(run.OutLines.Length, 12, 41);
        Assert.All(run.OutLines, line => Assert.InRange(Screen.Cells.Width(line), 0, 100));
        Assert.Equal(6, run.OutLines.Count(line => line.Contains('●')));
    }

    [Fact]
    public void Json_of_the_demo_is_as_the_schema_says_and_the_same_each_time()
    {
        var first = ProgramRun.Of("compare", Demo, "--json", "--random-seed", "3");
        Assert.Equal(0, first.ExitCode);
        Assert.Empty(first.Error);
        CompareJsonTests.AssertFits(first.Out);
        Assert.Equal(first.Out, ProgramRun.Of("compare", Demo, "--json", "--random-seed", "3").Out);
        var json = JsonNode.Parse(first.Out)!;
        Assert.Equal(6, json["options"]!.AsArray().Count);
        Assert.Equal(1, json["options"]!.AsArray().Sum(option => option!["probabilityCoolest"]!.GetValue<double>()), 3);
    }

    [Fact]
    public void Json_stays_in_celsius_whatever_people_read() =>
        Assert.Equal(ProgramRun.Of("compare", Demo, "--json").Out, ProgramRun.Of("compare", Demo, "--json", "--units", "f").Out);

    [Fact]
    public void Fair_conditions_are_those_asked_for_in_either_unit()
    {
        var celsius = ProgramRun.Of("compare", Demo, "--json", "--at-ambient", "35C", "--drive", "8:00").Out;
        Assert.Equal(35, JsonNode.Parse(celsius)!["reference"]!["ambientC"]!.GetValue<double>());
        Assert.Equal(480, JsonNode.Parse(celsius)!["reference"]!["driveS"]!.GetValue<double>());
        Assert.Equal(celsius, ProgramRun.Of("compare", Demo, "--json", "--at-ambient", "95F", "--drive", "8min").Out);
    }

    [Theory]
    [InlineData("verdict.svg", "<svg")]
    [InlineData("verdict.png", "PNG")]
    public void A_picture_is_drawn_where_asked(string name, string mark)
    {
        var run = ProgramRun.Of("compare", Demo, "--picture", Place(name));
        Assert.Equal(0, run.ExitCode);
        Assert.Empty(run.Error);
        Assert.Contains(mark, File.ReadAllText(Place(name))[..4000]);
        Assert.Single(folder.GetFiles());
    }

    [Fact]
    public void A_table_from_standard_input_gives_the_same_answer_as_from_a_file() =>
        Assert.Equal(ProgramRun.Of("compare", Demo).Out, ProgramRun.With(File.ReadAllText(Demo), "compare", "-").Out);

    [Fact]
    public void Details_say_every_reading_as_read_and_as_corrected()
    {
        var run = ProgramRun.Of("compare", Demo, "--details");
        Assert.Equal(0, run.ExitCode);
        Assert.Contains("Each reading: as read", run.Out);
        Assert.Equal(30, run.OutLines.Count(line => Regex.IsMatch(line, @"\) cooler than "))); // 15 pairs, can and winding
    }

    [Fact]
    public void A_table_without_a_reading_that_counts_is_refused_with_a_remedy_and_nothing_is_drawn()
    {
        var table = "option,kind,drive_s,ambient_c,read_c,stop_to_read_s\nbare can,void,360,27,70,9\nclamp,void,360,27,65,9\n";
        var run = ProgramRun.With(table, "compare", "-", "--picture", Place("verdict.svg"));
        Assert.Equal(2, run.ExitCode);
        Assert.Empty(run.Out);
        Assert.StartsWith("coolproof: ", run.Error);
        Assert.DoesNotContain("   at ", run.Error);
        Assert.Empty(folder.GetFiles());
    }
}
