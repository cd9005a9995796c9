using Coolproof.Notebook;
using Coolproof.Screen;

namespace Coolproof.Commands;

/// <summary>A readings table that a command judges, as it was asked for.</summary>
/// <param name="File">Path of the table; "-" for standard input.</param>
/// <param name="GunChecks">Path of checks of the guns that took the readings; null: none.</param>
internal sealed record TableAsked(string File, string? GunChecks)
{
    /// <summary>Paths of readings tables of earlier days, to be judged together with it.</summary>
    public IReadOnlyList<string> Earlier { get; init; } = [];

    /// <summary>Reads all of it; null where something can't be used, which has then been said.</summary>
    /// <param name="command">The command, for what is said.</param>
    /// <param name="driveS">Length of the drives where the tables note none, s; null: they must.</param>
    /// <param name="terminal">Where it is said.</param>
    public TablesRead? Read(string command, double? driveS, Terminal terminal)
    {
        if (TableFile.ReadWhole(File, driveS, terminal) is not var (table, csv) || GunChecksFile.Read(command, GunChecks, terminal) is not { } checks) return null;
        List<(byte[] Csv, ReadingsTable Table)> earlier = [];
        List<EarlierDay> days = [];
        foreach (var file in Earlier)
        {
            if (TableFile.ReadWhole(file, driveS, terminal) is not var (before, bytes)) return null;
            if (Twice(before, [table, .. earlier.Select(one => one.Table)], file, terminal)) return null;
            if (before.Runs.Count > 0) earlier.Add((bytes, before with { GunChecks = checks }));
            days.AddRange(before.Runs.GroupBy(run => run.Day).Select(day => new EarlierDay(Path.GetFileName(file), day.Key, day.Count())));
        }
        return new(csv, table with { GunChecks = checks }, earlier, days);
    }

    // Whether a run of a table stands in another one too, which is then said.
    static bool Twice(ReadingsTable table, IReadOnlyList<ReadingsTable> others, string file, Terminal terminal)
    {
        if (table.Runs.FirstOrDefault(run => others.Any(other => other.Runs.Any(own => IsSame(own, run)))) is not { } twice) return false;
        terminal.Error.WriteLine($"coolproof: run {Cells.Clean(twice.Name)} with the {Cells.Clean(twice.Option)} in {Cells.Clean(file)} stands in another table too, and would count twice. Take it out of one of them.");
        return true;
    }

    // Days and runs may well have the same names again; the same readings of the same option at the same time are the same run.
    static bool IsSame(Run a, Run b) => a.Name == b.Name && a.StartedAt == b.StartedAt && string.Equals(a.Option, b.Option, StringComparison.OrdinalIgnoreCase)
        && a.Readings.Count > 0 && a.Readings.Select(r => (r.ReadC, r.StopToReadS)).SequenceEqual(b.Readings.Select(r => (r.ReadC, r.StopToReadS)));
}

/// <summary>A readings table to be judged, with the checks of its guns, and the tables of earlier days that are judged together with it.</summary>
/// <param name="Csv">The table as it was read, byte by byte.</param>
/// <param name="Table">The table.</param>
/// <param name="Earlier">Those of earlier days likewise; none: it is judged by itself.</param>
/// <param name="EarlierDays">The days that these hold.</param>
internal sealed record TablesRead(byte[] Csv, ReadingsTable Table, IReadOnlyList<(byte[] Csv, ReadingsTable Table)> Earlier, IReadOnlyList<EarlierDay> EarlierDays)
{
    /// <summary>Tables of the earlier days.</summary>
    public IReadOnlyList<ReadingsTable> Before => [.. Earlier.Select(one => one.Table)];
}
