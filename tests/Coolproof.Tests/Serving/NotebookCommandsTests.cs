using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;

namespace Coolproof.Tests.Serving;

/// <summary>Readings tables into the notebook and out of it, backups and back, as processes.</summary>
public sealed class NotebookCommandsTests : IDisposable
{
    readonly string folder = Directory.CreateTempSubdirectory("coolproof-").FullName;

    string Store => Path.Combine(folder, "n.coolproof");

    static string Demo => TestFiles.Of("demo", "demo-day.csv");

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public void A_table_goes_in_once_and_comes_out_with_the_same_verdict()
    {
        var first = Json("import", ProgramRun.Of("import", Demo, "--store", Store, "--json"));
        Assert.True((int)first["new"]! > 0);
        Assert.Equal((int)first["entries"]!, (int)first["new"]!);
        Assert.Equal(0, (int)Json("import", ProgramRun.Of("import", Demo, "--store", Store, "--json"))["new"]!);
        var table = Path.Combine(folder, "out.csv");
        var written = Json("export", ProgramRun.Of("export", "--store", Store, "--out", table, "--json"));
        foreach (var count in new[] { "days", "options", "runs", "readings" }) Assert.Equal((int)first[count]!, (int)written[count]!);
        Assert.Equal(ProgramRun.Of("compare", Demo, "--json").Out, ProgramRun.Of("compare", table, "--json").Out);
    }

    [Fact]
    public void A_sheet_that_was_gone_on_with_brings_its_new_runs_only_unless_told()
    {
        string[] evening =
        [
            "day,run,option,drive_s,ambient_c,stop_to_read_s,read_c", "made up,1,bare can,360,27,10,71.8", "made up,2,clamp with a 25 mm fan,360,27,10,63.5", "made up,3,bare can,360,27,10,72.6",
        ];
        var sheet = Path.Combine(folder, "sheet.csv");
        File.WriteAllLines(sheet, evening[..3]);
        Assert.Equal(0, (int)Json("import", ProgramRun.Of("import", sheet, "--store", Store, "--json"))["there"]!);
        File.WriteAllLines(sheet, evening);
        var run = ProgramRun.Of("import", sheet, "--store", Store);
        Assert.Equal(0, run.ExitCode);
        Assert.Contains("2 of these runs were there already and stayed", run.Out);
        Assert.Equal(3, Runs());
        Assert.Equal(3, (int)Json("import", ProgramRun.Of("import", sheet, "--store", Store, "--json"))["there"]!);
        Assert.Equal(3, Runs());
        File.WriteAllLines(sheet, [.. evening[..3], "made up,3,bare can,360,27,12,72.6"]);
        Assert.Equal(0, ProgramRun.Of("import", sheet, "--store", Store, "--there", "replace").ExitCode);
        Assert.Equal(3, Runs());
        Assert.Equal(2, ProgramRun.Of("import", sheet, "--store", Store, "--there", "perhaps").ExitCode);

        int Runs() => ProgramRun.Of("export", "--store", Store).OutLines.Count(line => line.StartsWith("made up", StringComparison.Ordinal));
    }

    [Fact]
    public void A_dry_run_says_what_would_be_kept_and_makes_no_notebook()
    {
        var dry = Json("import", ProgramRun.Of("import", Demo, "--store", Store, "--json", "--dry-run"));
        Assert.True((bool)dry["dryRun"]!);
        Assert.True((int)dry["new"]! > 0);
        Assert.False(File.Exists(Store));
        var run = ProgramRun.Of("import", Demo, "--store", Store, "--dry-run");
        Assert.Contains("Would be kept", run.Out);
    }

    [Fact]
    public void A_table_with_faults_is_refused_whole_with_every_line_named()
    {
        var table = Path.Combine(folder, "bad.csv");
        File.WriteAllText(table, "option,read_c,drive_s\nbare,900,360\nbare,xx,360\n");
        var run = ProgramRun.Of("import", table, "--store", Store);
        Assert.Equal(2, run.ExitCode);
        Assert.Contains("line 2", run.Error);
        Assert.Contains("line 3", run.Error);
        Assert.False(File.Exists(Store));
    }

    [Fact]
    public void A_day_is_written_by_its_name_and_an_unknown_one_is_refused_with_those_there_are()
    {
        Assert.Equal(0, ProgramRun.Of("import", Demo, "--store", Store).ExitCode);
        var unknown = ProgramRun.Of("export", "--store", Store, "--day", "Boxing Day");
        Assert.Equal(2, unknown.ExitCode);
        var name = unknown.Error.Split("Days: ")[1].Split('.')[0].Split(", ")[0];
        var known = ProgramRun.Of("export", "--store", Store, "--day", name);
        Assert.Equal(0, known.ExitCode);
        Assert.Contains("option", known.OutLines[0]);
        Assert.Equal(2, ProgramRun.Of("export", "--store", Store, "--json").ExitCode); // where would the table go?
    }

    [Fact]
    public void A_backup_is_never_overwritten_and_comes_back_only_where_nothing_is_unless_told()
    {
        Assert.Equal(0, ProgramRun.Of("import", Demo, "--store", Store).ExitCode);
        var (backup, other) = (Path.Combine(folder, "b.coolproof"), Path.Combine(folder, "other.coolproof"));
        var kept = Json("backup", ProgramRun.Of("backup", backup, "--store", Store, "--json"));
        Assert.True((int)kept["entries"]! > 0);
        Assert.Equal(new FileInfo(backup).Length, (long)kept["bytes"]!);
        Assert.Equal(2, ProgramRun.Of("backup", backup, "--store", Store).ExitCode);
        Assert.Equal((int)kept["entries"]!, (int)Json("backup", ProgramRun.Of("restore", backup, "--store", other, "--json"))["entries"]!);
        Assert.Equal(2, ProgramRun.Of("restore", backup, "--store", other).ExitCode);
        Assert.Equal(0, ProgramRun.Of("restore", backup, "--store", other, "--replace").ExitCode);
        Assert.Equal(ProgramRun.Of("export", "--store", Store).Out, ProgramRun.Of("export", "--store", other).Out);
    }

    [Theory]
    [InlineData(2, "import", "no such file.csv")]
    [InlineData(2, "restore", "no such file")]
    [InlineData(2, "export", "--store", "no such notebook")]
    [InlineData(2, "backup", "b", "--store", "no such notebook")]
    [InlineData(2, "backup", "b", "--store", "mysql://x")]
    [InlineData(1, "export", "--store", "postgres://127.0.0.1:1/none")]
    public void What_cannot_be_done_says_why_and_what_to_do(int code, params string[] arguments)
    {
        var run = ProgramRun.Of(arguments);
        Assert.Equal(code, run.ExitCode);
        Assert.StartsWith("coolproof: ", run.Error);
        Assert.DoesNotContain("   at ", run.Error); // a trace
    }

    static JsonNode Json(string schema, ProgramRun run)
    {
        Assert.True(run.ExitCode == 0, run.Error);
        var said = JsonDocument.Parse(run.Out).RootElement;
        var contract = JsonSchema.FromText(File.ReadAllText(TestFiles.Of("docs", "formats", $"{schema}.schema.json")), new BuildOptions { SchemaRegistry = new SchemaRegistry() });
        Assert.True(contract.Evaluate(said).IsValid, run.Out);
        return JsonNode.Parse(run.Out)!;
    }
}
