using System.Diagnostics;

namespace Coolproof.EndToEnd.Support;

/// <summary>A browser as people start it, with a profile of its own; only such a one freezes pages.</summary>
sealed class OrdinaryBrowser : IDisposable
{
    readonly string profile;

    OrdinaryBrowser(string profile, string address) => (this.profile, Address) = (profile, address);

    /// <summary>Where it is told what to do.</summary>
    public string Address { get; }

    /// <summary>Starts it.</summary>
    public static async Task<OrdinaryBrowser> StartAsync()
    {
        var profile = Directory.CreateTempSubdirectory("coolproof-profile-").FullName;
        // What it says goes nowhere: a browser that held our own output would keep whoever reads that waiting.
        using var started = Process.Start("sh", ["-c", """exec "$0" "$@" >/dev/null 2>&1""", Chromium.Path, "--headless=new", "--remote-debugging-port=0", $"--user-data-dir={profile}", .. Chromium.Arguments, "about:blank"]);
        var port = Path.Combine(profile, "DevToolsActivePort");
        for (var tries = 0; !File.Exists(port) || File.ReadAllLines(port).Length < 2; tries++)
        {
            Assert.True(tries < 300, "Chromium does not start.");
            await Task.Delay(100);
        }
        return new(profile, $"http://127.0.0.1:{File.ReadAllLines(port)[0]}");
    }

    public void Dispose() => ProfileProcesses.Kill(profile);
}
