using System.Text.Json;
using Coolproof.Notebook;

namespace Coolproof.Tests;

/// <summary>`coolproof rehearse` as a process.</summary>
public sealed class RehearseTests : IDisposable
{
    readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("coolproof-test-");

    string Place(string name) => Path.Combine(folder.FullName, name);

    public void Dispose() => folder.Delete(recursive: true);

    [Fact]
    public void A_made_up_evening_reads_back_as_a_readings_table_without_problems()
    {
        var run = ProgramRun.Of("rehearse", "--out", Place("evening.csv"));
        Assert.Equal(0, run.ExitCode);
        Assert.Empty(run.Error);
        Assert.Contains("All made up: 6 cooling options, 12 runs", run.Out);
        var read = ReadingsTableReader.Read(Place("evening.csv"));
        Assert.True(read.Understood);
        Assert.Equal(6, read.Table.Options.Count);
        using var truth = JsonDocument.Parse(File.ReadAllText(Place("evening.truth.json")));
        Assert.Equal(JsonValueKind.Object, truth.RootElement.ValueKind);
        Assert.Equal(["evening.csv", "evening.truth.json"], folder.GetFiles().Select(file => file.Name).Order());
    }

    [Fact]
    public void The_same_seed_gives_the_same_bytes_and_another_seed_another_day()
    {
        var first = ProgramRun.Of("rehearse", "--random-seed", "7");
        Assert.Equal(0, first.ExitCode);
        Assert.Equal(first.Out, ProgramRun.Of("rehearse", "--random-seed", "7").Out);
        Assert.NotEqual(first.Out, ProgramRun.Of("rehearse", "--random-seed", "8").Out);
    }

    [Fact]
    public void Names_runs_and_units_are_as_asked()
    {
        var run = ProgramRun.Of("rehearse", "--options", "red duct, blue duct", "--runs", "3", "--readings", "1", "--order", "fixed", "--units", "f", "--air", "86F");
        Assert.Equal(0, run.ExitCode);
        Assert.Contains("read_f", run.Out.Split('\n')[0]);
        var read = ReadingsTableReader.Read(new MemoryStream(System.Text.Encoding.UTF8.GetBytes(run.Out)));
        Assert.True(read.Understood);
        Assert.Equal(["red duct", "blue duct", "red duct", "blue duct", "red duct", "blue duct"], read.Table.Runs.Select(r => r.Option));
        Assert.InRange(read.Table.Runs[0].AirC!.Value, 26, 34); // 30 °C as a thermometer noted it
    }

    [Fact]
    public void A_file_that_is_there_already_is_left_as_it_is()
    {
        File.WriteAllText(Place("real.csv"), "a real day");
        var run = ProgramRun.Of("rehearse", "--out", Place("real.csv"));
        Assert.Equal(2, run.ExitCode);
        Assert.Contains("there already", run.Error);
        Assert.Equal("a real day", File.ReadAllText(Place("real.csv")));
        Assert.Single(folder.GetFiles());
    }

    [Theory]
    [InlineData("--options 0", "1 to 40")]
    [InlineData("--options a,,b", "names with commas")]
    [InlineData("--options a,A", "each once")]
    [InlineData("--runs 0", "from 1 to 20")]
    [InlineData("--order backwards", "shuffled or fixed")]
    [InlineData("--weather hail", "cooling or steady or warming")]
    [InlineData("--hands three", "good or bad")]
    [InlineData("--out evening.txt", ".csv")]
    [InlineData("--out /no/such/folder/evening.csv", "no folder")]
    public void What_can_not_be_made_up_is_said_with_exit_code_2(string typed, string said)
    {
        var run = ProgramRun.Of(["rehearse", .. typed.Split(' ')]);
        Assert.Equal(2, run.ExitCode);
        Assert.Empty(run.Out);
        Assert.Contains(said, run.Error);
    }
}
