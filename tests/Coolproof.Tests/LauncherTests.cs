using System.Diagnostics;

namespace Coolproof.Tests;

/// <summary>The script at the root, as a person on a fresh clone would use it.</summary>
public class LauncherTests
{
    [Fact]
    public void The_script_builds_once_says_so_on_standard_error_and_then_starts_at_once()
    {
        var first = Run("--version");
        Assert.Equal(0, first.Code);
        Assert.Matches(@"^\d+\.\d+\.\d+\S*\n$", first.Out);
        var second = Run("--version");
        Assert.Equal(first.Out, second.Out);
        Assert.Empty(second.Error); // nothing to build, nothing to say
    }

    [Fact]
    public void The_script_hands_on_arguments_standard_input_and_exit_code()
    {
        Run("--version"); // built
        var run = Run("compare", "no such file.csv");
        Assert.Equal(2, run.Code);
        Assert.Contains("no such file.csv can't be read", run.Error);
    }

    [Fact]
    public void Compare_compiled_ahead_prints_and_draws_the_very_bytes_of_the_program()
    {
        var folder = Directory.CreateTempSubdirectory("coolproof-ahead-");
        var (ahead, program) = (Path.Combine(folder.FullName, "ahead.svg"), Path.Combine(folder.FullName, "program.svg"));
        var table = TestFiles.Of("demo", "demo-day.csv");
        foreach (string[] asked in (string[][])[["--json"], ["--details", "--units", "f"], ["--at-ambient", "35C", "--random-seed", "7"], ["--help"]])
        {
            var script = Run(["compare", table, .. asked, "--picture", ahead]);
            var run = ProgramRun.Of(["compare", table, .. asked, "--picture", program]);
            Assert.Equal(0, script.Code);
            Assert.Equal(run.Out, script.Out);
        }
        Assert.Equal(File.ReadAllBytes(program), File.ReadAllBytes(ahead));
        folder.Delete(recursive: true);
    }

    static (int Code, string Out, string Error) Run(params string[] arguments)
    {
        var start = new ProcessStartInfo(TestFiles.Of("coolproof")) { RedirectStandardOutput = true, RedirectStandardError = true, WorkingDirectory = Path.GetTempPath() };
        foreach (var argument in arguments) start.ArgumentList.Add(argument);
        using var process = Process.Start(start)!;
        var (output, error) = (process.StandardOutput.ReadToEndAsync(), process.StandardError.ReadToEndAsync());
        Assert.True(process.WaitForExit(TimeSpan.FromMinutes(8)), "the script did not end within eight minutes");
        return (process.ExitCode, output.Result, error.Result);
    }
}
