using System.Diagnostics;
using System.Runtime.InteropServices;

namespace Coolproof.Tests.Serving;

/// <summary>`coolproof` serving as a process of its own, with a data folder of its own.</summary>
sealed partial class ServedProgram : IDisposable
{
    readonly Process process;

    ServedProgram(Process process, string said)
    {
        this.process = process;
        Said = said;
        Address = new Uri(said.Split('\n').First(line => line.Contains("http", StringComparison.Ordinal)).Split(' ').First(word => word.StartsWith("http", StringComparison.Ordinal)));
    }

    /// <summary>What it printed before it was ready.</summary>
    public string Said { get; }

    /// <summary>The printed address.</summary>
    public Uri Address { get; }

    /// <summary>Starts it and waits until it has said where it answers.</summary>
    /// <param name="dataHome">The person's folder for data (XDG_DATA_HOME).</param>
    /// <param name="arguments">What is typed after `coolproof`.</param>
    public static async Task<ServedProgram> StartAsync(string dataHome, params string[] arguments)
    {
        // A suite that a script has put into the background ignores Ctrl+C, and so would all it starts.
        var start = new ProcessStartInfo("env", ["--default-signal=INT", "dotnet", Path.Combine(AppContext.BaseDirectory, "coolproof.dll"), .. arguments])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            Environment = { ["XDG_DATA_HOME"] = dataHome, ["DISPLAY"] = "", ["WAYLAND_DISPLAY"] = "" },
        };
        var process = Process.Start(start)!;
        var error = process.StandardError.ReadToEndAsync();
        using var limit = new CancellationTokenSource(TimeSpan.FromMinutes(1));
        var said = "";
        while (await process.StandardOutput.ReadLineAsync(limit.Token) is { } line)
        {
            said += line + "\n";
            if (line.Contains("Ctrl+C", StringComparison.Ordinal)) return new ServedProgram(process, said);
        }
        throw new InvalidOperationException($"It did not serve: {said}{await error}");
    }

    /// <summary>Asks it to end, as Ctrl+C does.</summary>
    /// <returns>The exit code.</returns>
    public async Task<int> InterruptAsync()
    {
        Signal(process.Id, 2);
        using var limit = new CancellationTokenSource(TimeSpan.FromMinutes(1));
        await process.WaitForExitAsync(limit.Token);
        return process.ExitCode;
    }

    /// <summary>Ends it at once, as a dead battery does (SIGKILL).</summary>
    public void Kill()
    {
        process.Kill();
        process.WaitForExit();
    }

    public void Dispose()
    {
        if (!process.HasExited) Kill();
        process.Dispose();
    }

    [LibraryImport("libc", EntryPoint = "kill")]
    private static partial int Signal(int process, int signal);
}
