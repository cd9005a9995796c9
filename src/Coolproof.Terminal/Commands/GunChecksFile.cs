using System.CommandLine;
using Coolproof.Notebook;
using Coolproof.Screen;

namespace Coolproof.Commands;

/// <summary>The option --gun-checks of every command that judges a readings table: a file with checks of its guns.</summary>
internal static class GunChecksFile
{
    /// <summary>The option.</summary>
    public static Option<string?> Option() => new("--gun-checks") { HelpName = "FILE.json", Description = "Checks of the guns that took the readings: by `coolproof gun check --keep`, or about.json of a report's data." };

    /// <summary>The checks; none where no file was named; null where it can't be used, which has then been said.</summary>
    public static IReadOnlyList<GunCheck>? Read(string command, string? path, Terminal terminal) =>
        path is null ? [] : AskedFile.Read(command, path, GunChecksReader.Read, terminal)?.Checks;
}
