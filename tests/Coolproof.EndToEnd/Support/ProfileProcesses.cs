using System.Diagnostics;
using System.Text;

namespace Coolproof.EndToEnd.Support;

/// <summary>The processes of a browser that was started here with a profile of its own.</summary>
static class ProfileProcesses
{
    /// <summary>Ends the browser at once (SIGKILL), as an empty battery does.</summary>
    /// <param name="profile">The profile's folder, which only that browser was started with.</param>
    public static void Kill(string profile)
    {
        foreach (var id in Browsers(profile)) Signal("KILL", id);
        for (var tries = 0; Browsers(profile).Count > 0 && tries < 100; tries++) Thread.Sleep(50);
    }

    /// <summary>Stops the pages with all that they do, sound too, as a phone does with pages that nobody looks at; or lets them go on.</summary>
    /// <param name="profile">The profile's folder.</param>
    /// <param name="frozen">Whether they are to stand still.</param>
    public static void Freeze(string profile, bool frozen)
    {
        var browsers = Browsers(profile);
        var pages = Ids().Where(id => CommandLine(id).Contains("--type=renderer", StringComparison.Ordinal) && Ancestors(id).Any(browsers.Contains)).ToList();
        Assert.NotEmpty(pages);
        foreach (var id in pages) Signal(frozen ? "STOP" : "CONT", id);
    }

    static List<int> Browsers(string profile) => [.. Ids().Where(id => CommandLine(id) is var line && line.Contains($"--user-data-dir={profile}", StringComparison.Ordinal) && !line.Contains("--type=", StringComparison.Ordinal))];

    static IEnumerable<int> Ids() => Directory.EnumerateDirectories("/proc").Select(folder => int.TryParse(Path.GetFileName(folder), out var id) ? id : 0).Where(id => id > 0);

    static IEnumerable<int> Ancestors(int id)
    {
        while (id > 1)
        {
            // "pid (name) state parent": the name may hold anything, but no bracket comes after its last one.
            var stat = Read($"/proc/{id}/stat");
            if (stat.LastIndexOf(')') is not (> 0 and var end)) yield break;
            id = int.Parse(stat[(end + 2)..].Split(' ')[1], System.Globalization.CultureInfo.InvariantCulture);
            yield return id;
        }
    }

    static string CommandLine(int id) => Read($"/proc/{id}/cmdline").Replace('\0', ' ');

    static string Read(string file)
    {
        try
        {
            return Encoding.UTF8.GetString(File.ReadAllBytes(file));
        }
        catch (Exception gone) when (gone is IOException or UnauthorizedAccessException)
        {
            return ""; // it has ended meanwhile
        }
    }

    static void Signal(string signal, int id)
    {
        using var kill = Process.Start("sh", ["-c", $"kill -{signal} {id}"]);
        kill.WaitForExit();
    }
}
