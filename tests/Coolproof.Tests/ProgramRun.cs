using System.Diagnostics;

namespace Coolproof.Tests;

/// <summary>One run of the built program as a process of its own.</summary>
sealed record ProgramRun(int ExitCode, string Out, string Error)
{
    /// <summary>Lines on standard output.</summary>
    public string[] OutLines => Out.Split('\n');

    /// <summary>Runs the program and waits for it.</summary>
    public static ProgramRun Of(params string[] arguments) => With(null, arguments);

    /// <summary>Runs the program, which must do well, and gives what it printed.</summary>
    public static string Good(params string[] arguments)
    {
        var run = Of(arguments);
        Assert.True(run.ExitCode == 0, run.Error);
        return run.Out;
    }

    /// <summary>Runs the program with something on standard input.</summary>
    public static ProgramRun With(string? input, params string[] arguments) => Of(input, [], arguments);

    /// <summary>Runs the program in another environment.</summary>
    public static ProgramRun In(Dictionary<string, string> environment, params string[] arguments) => Of(null, environment, arguments);

    static ProgramRun Of(string? input, Dictionary<string, string> environment, string[] arguments)
    {
        var start = new ProcessStartInfo(Environment.ProcessPath is { } path && Path.GetFileName(path) == "dotnet" ? path : "dotnet")
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false,
            StandardOutputEncoding = System.Text.Encoding.UTF8,
            StandardErrorEncoding = System.Text.Encoding.UTF8,
        };
        start.ArgumentList.Add(Path.Combine(AppContext.BaseDirectory, "coolproof.dll"));
        foreach (var argument in arguments) start.ArgumentList.Add(argument);
        // A program by its bare name is looked for on the PATH of this process, not on that of the new one.
        foreach (var (name, value) in environment) start.Environment[name] = value;
        using var process = Process.Start(start)!;
        var (output, error) = (process.StandardOutput.ReadToEndAsync(), process.StandardError.ReadToEndAsync());
        if (input is not null) process.StandardInput.Write(input);
        process.StandardInput.Close();
        if (!process.WaitForExit(TimeSpan.FromMinutes(3)))
        {
            process.Kill(entireProcessTree: true);
            throw new TimeoutException($"coolproof {string.Join(' ', arguments)} did not end within three minutes.");
        }
        return new ProgramRun(process.ExitCode, output.Result, error.Result);
    }
}
