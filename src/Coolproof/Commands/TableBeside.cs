using System.CommandLine;
using Coolproof.Evidence;
using Coolproof.Evidence.Forecasts;
using Coolproof.Notebook;
using Coolproof.Screen;

namespace Coolproof.Commands;

/// <summary>The readings table that mounts or parts are set beside, as it is typed: --with, and what is asked of it.</summary>
/// <param name="description">What the table is for.</param>
internal sealed class BesideOptions(string description)
{
    /// <summary>The table.</summary>
    public Option<string?> With { get; } = new("--with") { HelpName = "TABLE.csv", Description = description };

    /// <summary>Checks of its guns.</summary>
    public Option<string?> GunChecks { get; } = GunChecksFile.Option();

    /// <summary>Fair air.</summary>
    public QuantityOption Ambient { get; } = new("--at-ambient", "30C|86F", "Fair air with --with. Otherwise the middle of what was noted.", Typed.Air);

    /// <summary>Fair length of driving.</summary>
    public QuantityOption Drive { get; } = new("--drive", "360s|6min|6:00", "Fair length of hard driving with --with. Otherwise the middle of the runs.", Typed.Drive);

    /// <summary>What was asked.</summary>
    public TableBeside In(ParseResult parsed) => new(parsed.GetValue(With), parsed.GetValue(GunChecks), Ambient.In(parsed), Drive.In(parsed));
}

/// <summary>The readings table that mounts or parts are set beside.</summary>
/// <param name="File">Its path; null: there is none.</param>
/// <param name="GunChecks">Path of checks of its guns; null: none.</param>
/// <param name="AmbientC">Fair air, °C; null: the table's.</param>
/// <param name="DriveS">Fair seconds of driving; null: the table's.</param>
internal sealed record TableBeside(string? File, string? GunChecks, double? AmbientC, double? DriveS)
{
    /// <summary>Whether something is asked of a table that isn't given, which is then said.</summary>
    /// <param name="command">The command.</param>
    /// <param name="otherwise">What else would do for other conditions, beginning with a comma; may be empty.</param>
    /// <param name="terminal">Where it is said.</param>
    public bool IsMissing(string command, string otherwise, Terminal terminal)
    {
        if (File is not null) return false;
        if ((AmbientC ?? DriveS) is not null) terminal.Error.WriteLine($"coolproof {command}: --at-ambient and --drive ask for other conditions of a readings table: give it by --with{otherwise}.");
        if (GunChecks is not null) terminal.Error.WriteLine($"coolproof {command}: --gun-checks tells of the guns that took the readings of a table: give it by --with.");
        return (AmbientC ?? DriveS) is not null || GunChecks is not null;
    }

    /// <summary>Reads it.</summary>
    /// <returns>Whether the command can go on, and the table; where it can't, that has been said. Without a file it goes on without a table.</returns>
    public (bool Good, ReadingsTable? Table) Read(string command, Terminal terminal)
    {
        if (File is not { } path) return (true, null);
        var table = new TableAsked(path, GunChecks).Read(command, DriveS, terminal)?.Table;
        return (table is not null, table);
    }

    /// <summary>Judges it.</summary>
    /// <returns>Its draws, null without a table; or the exit code where there is no verdict, which has then been said.</returns>
    public (RaceEvidence? Evidence, int? ExitCode) Draws(ReadingsTable? table, long seed, TemperatureUnitChoice units, Terminal terminal, CancellationToken cancel)
    {
        if (table is null) return (null, null);
        var judgement = TableJudging.Of(table, new JudgeSettings(AmbientC, DriveS, Seed: seed), terminal, cancel);
        return judgement is Judged { Races: { } races } ? (races.Value, null) : (null, TableJudging.Unjudged(judgement, units, terminal));
    }
}
