using System.Diagnostics;
using System.Runtime.InteropServices;

namespace Coolproof.EndToEnd.Support;

/// <summary>Node.js, which comes with the browser's driver.</summary>
static class Node
{
    static string Program => Path.Combine(AppContext.BaseDirectory, ".playwright", "node", RuntimeInformation.OSArchitecture == Architecture.Arm64 ? "linux-arm64" : "linux-x64", "node");

    /// <summary>Runs a script and returns what it prints; fails with what it says where it fails.</summary>
    public static async Task<string> RunAsync(string input, params string[] arguments)
    {
        using var process = Process.Start(new ProcessStartInfo(Program, arguments) { RedirectStandardInput = true, RedirectStandardOutput = true, RedirectStandardError = true })!;
        var (output, error) = (process.StandardOutput.ReadToEndAsync(), process.StandardError.ReadToEndAsync());
        await process.StandardInput.WriteAsync(input);
        process.StandardInput.Close();
        await process.WaitForExitAsync();
        Assert.True(process.ExitCode == 0, $"{string.Join(' ', arguments)} ended with {process.ExitCode}:\n{await output}\n{await error}");
        return await output;
    }
}
