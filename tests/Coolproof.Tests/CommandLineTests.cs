namespace Coolproof.Tests;

/// <summary>The built program as a process: what it says where, and with which exit code.</summary>
public class CommandLineTests
{
    [Theory]
    [InlineData("--help")]
    [InlineData("compare", "--help")]
    [InlineData("compare", "-h")]
    [InlineData("compare", "nosuch.csv", "--help")]
    public void Help_goes_to_standard_output_and_is_no_failure(params string[] arguments)
    {
        var run = ProgramRun.Of(arguments);
        Assert.Equal(0, run.ExitCode);
        Assert.Empty(run.Error);
        Assert.Contains("coolproof", run.Out);
        Assert.Contains("--help", run.Out);
    }

    [Fact]
    public void Help_on_compare_names_every_option_of_the_contract()
    {
        var help = ProgramRun.Of("compare", "--help").Out;
        foreach (var option in new[] { "--at-ambient", "--drive", "--same-within", "--random-seed", "--picture", "--units", "--json", "--details" })
            Assert.Contains(option, help);
        Assert.Contains("Always in °C and K", help);
    }

    [Theory]
    [InlineData("comprae", "compare")]
    [InlineData("compare", "FILE")]
    [InlineData("compare a.csv b.csv", "b.csv")]
    [InlineData("compare a.csv --bogus", "--bogus")]
    [InlineData("compare a.csv --at-ambient 30", "30C or 86F")]
    [InlineData("compare a.csv --at-ambient 900C", "-40C")]
    [InlineData("compare a.csv --drive 6:77", "6:00")]
    [InlineData("compare a.csv --same-within 0K", "more than 0K")]
    [InlineData("compare a.csv --random-seed x", "whole number")]
    [InlineData("compare a.csv --random-seed 1 --random-seed 2", "--random-seed")]
    [InlineData("compare a.csv --units k", "c or f")]
    [InlineData("compare a.csv --picture out.gif", ".svg or .png")]
    [InlineData("compare a.csv --picture /no/such/folder/out.svg", "/no/such/folder")]
    [InlineData("compare a.csv --at-ambient", "--at-ambient")]
    public void What_can_not_be_understood_is_said_on_standard_error_with_exit_code_2(string typed, string said)
    {
        var run = ProgramRun.Of(typed.Split(' '));
        Assert.Equal(2, run.ExitCode);
        Assert.Empty(run.Out);
        Assert.Contains(said, run.Error);
        Assert.Contains("--help", run.Error);
        Assert.DoesNotContain("   at ", run.Error); // no stack trace
    }

    [Fact]
    public void All_that_is_wrong_with_a_command_line_is_said_at_once()
    {
        var run = ProgramRun.Of("compare", "a.csv", "--at-ambient", "30", "--drive", "never", "--units", "k", "--bogus");
        Assert.Equal(2, run.ExitCode);
        foreach (var wrong in new[] { "--at-ambient 30:", "--drive never:", "--units k:", "--bogus" }) Assert.Contains(wrong, run.Error);
    }

    [Fact]
    public void A_file_that_is_not_there_is_said_to_be_not_there()
    {
        var run = ProgramRun.Of("compare", "no-such-table.csv");
        Assert.Equal(2, run.ExitCode);
        Assert.Empty(run.Out);
        Assert.Equal("coolproof: no-such-table.csv can't be read: there is no such file. Nothing was written.\n", run.Error);
    }

    [Fact]
    public void A_folder_is_no_table()
    {
        var run = ProgramRun.Of("compare", AppContext.BaseDirectory);
        Assert.Equal(2, run.ExitCode);
        Assert.Contains("it is a folder", run.Error);
    }

    [Fact]
    public void Everything_wrong_with_a_table_is_listed_with_line_and_column_and_nothing_is_drawn()
    {
        var folder = Directory.CreateTempSubdirectory("coolproof-test-");
        try
        {
            var picture = Path.Combine(folder.FullName, "verdict.svg");
            var table = "option,read_c,stop_to_read_s,drive_s\nbare can,900,5,360\nclamp,71,-8,360\n,70,5,360\n";
            var run = ProgramRun.With(table, "compare", "-", "--picture", picture, "--json");
            Assert.Equal(2, run.ExitCode);
            Assert.Empty(run.Out);
            Assert.Contains("(3 problems)", run.Error);
            Assert.Contains("line 2, read_c: found 900", run.Error);
            Assert.Contains("line 3, stop_to_read_s: found -8", run.Error);
            Assert.Contains("line 4, option:", run.Error);
            Assert.False(File.Exists(picture));
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    [Theory]
    [InlineData("")]
    [InlineData("\0\0\0\0")]
    [InlineData("a;b;c")]
    [InlineData("option,read_c\n")]
    public void What_is_no_table_is_refused_with_a_reason(string input)
    {
        var run = ProgramRun.With(input, "compare", "-");
        Assert.Equal(2, run.ExitCode);
        Assert.Empty(run.Out);
        Assert.Contains("can't be judged as it stands", run.Error);
        Assert.DoesNotContain("   at ", run.Error);
    }

    [Fact]
    public void The_version_is_a_number() => Assert.Matches(@"^\d+\.\d+\.\d+", ProgramRun.Of("--version").Out);
}
