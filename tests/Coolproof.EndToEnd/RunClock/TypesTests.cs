using System.Diagnostics;
using Coolproof.EndToEnd.Support;

namespace Coolproof.EndToEnd.RunClock;

/// <summary>The run clock's modules say their types in JSDoc, and TypeScript's compiler agrees with all of them.</summary>
public class TypesTests
{
    static readonly string Scripts = Path.Combine(RepositoryRoot.Path, "tests", "Coolproof.EndToEnd", "Scripts");

    [Fact]
    public async Task The_modules_of_the_run_clock_have_no_fault_of_types()
    {
        if (!Directory.Exists(Path.Combine(Scripts, "node_modules", "typescript"))) await RunAsync("npm", "ci", "--no-audit", "--no-fund");
        await RunAsync("npx", "--no-install", "tsc", "--noEmit", "-p", ".");
    }

    static async Task RunAsync(string program, params string[] arguments)
    {
        using var process = Process.Start(new ProcessStartInfo(program, arguments) { WorkingDirectory = Scripts, RedirectStandardOutput = true, RedirectStandardError = true })!;
        var (output, error) = (process.StandardOutput.ReadToEndAsync(), process.StandardError.ReadToEndAsync());
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        Assert.True(process.ExitCode == 0, $"{program} {string.Join(' ', arguments)}:\n{await output}\n{await error}");
    }
}
