using Coolproof.Notebook;

namespace Coolproof.Evidence.Earlier;

/// <summary>Readings tables of several days put into one.</summary>
public static class EarlierTables
{
    /// <summary>Most runs together of which it is told whether options are still what they were: measured up to 60; near 130 the quick path's intervals are too narrow (docs/decisions/earlier-days.md).</summary>
    public const int MostRuns = 72;

    /// <summary>Puts the tables of earlier days before the table of a new one. A day whose name comes again is told apart by a number.</summary>
    /// <param name="table">The new table; its options stand first.</param>
    /// <param name="before">The earlier ones.</param>
    public static ReadingsTable Joined(ReadingsTable table, IReadOnlyList<ReadingsTable> before)
    {
        HashSet<string> taken = [.. table.Runs.Select(r => r.Day)];
        List<Run> runs = [];
        foreach (ReadingsTable earlier in before)
        {
            Dictionary<string, string> names = earlier.Runs.Select(r => r.Day).Distinct().ToDictionary(day => day, day => Free(day, taken));
            // Lines are those of the new table.
            runs.AddRange(earlier.Runs.Select(r => r with { Day = names[r.Day], Readings = [.. r.Readings.Select(x => x with { Line = 0 })] }));
        }
        return table with
        {
            Runs = [.. runs, .. table.Runs],
            EarlierRuns = runs.Count,
            GunChecks = GunCheck.Of([table, .. before]),
            Options = [.. table.Options.Concat(before.SelectMany(b => b.Options)).DistinctBy(o => o.ToUpperInvariant())],
        };
    }

    private static string Free(string day, HashSet<string> taken)
    {
        string name = day;
        for (int i = 2; !taken.Add(name); i++)
            name = $"{day} ({i})";
        return name;
    }
}
