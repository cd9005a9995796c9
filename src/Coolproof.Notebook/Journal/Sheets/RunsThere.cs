using NodaTime;

namespace Coolproof.Notebook.Journal;

/// <summary>
/// Runs of a readings table that a notebook holds already, be it from an earlier state of the same sheet or from the run clock. A day of the table and a day of the notebook are
/// the same when of the runs that they share by name half at least have the same option and the same go or a reading in common; their runs are then matched by name.
/// </summary>
/// <param name="Days">Days of the notebook by the names that the table gives them.</param>
/// <param name="Runs">Runs of the table with those of the notebook that they are.</param>
public sealed record RunsThere(IReadOnlyDictionary<string, Guid> Days, IReadOnlyList<(Run Run, NotedRun There)> Runs)
{
    // Sheets and clocks are rounded to the minute.
    private static readonly Period SameGo = Period.FromMinutes(1);
    private const double SameReadC = 0.051;

    /// <summary>Looks for them.</summary>
    public static RunsThere Of(ReadingsTable table, PitNotebook notebook)
    {
        ArgumentNullException.ThrowIfNull(table);
        ArgumentNullException.ThrowIfNull(notebook);
        Dictionary<string, Guid> days = [];
        List<(Run, NotedRun)> runs = [];
        foreach (IGrouping<string, Run> typed in table.Runs.GroupBy(run => run.Day))
        {
            if (notebook.Days.Reverse().Select(day => (Day: day, Shared: Shared(typed, day, notebook))).FirstOrDefault(one => Alike(one.Shared, one.Day, notebook)) is not { Day: { } day, Shared: var shared }) continue;
            days[typed.Key] = day.Id;
            runs.AddRange(shared);
        }
        return new RunsThere(days, runs);
    }

    /// <summary>The table without the runs that are there.</summary>
    public ReadingsTable Rest(ReadingsTable table)
    {
        ArgumentNullException.ThrowIfNull(table);
        HashSet<Run> there = new(Runs.Select(pair => pair.Run), ReferenceEqualityComparer.Instance);
        return table with { Runs = [.. table.Runs.Where(run => !there.Contains(run))] };
    }

    private static (Run Run, NotedRun There)[] Shared(IEnumerable<Run> typed, NotedDay day, PitNotebook notebook)
    {
        IReadOnlyList<NotedRun> there = notebook.RunsOf(day.Id);
        return [.. typed.Select(run => (run, there.FirstOrDefault(noted => Same(NameOf(noted), run.Name)))).Where(pair => pair.Item2 is not null).Select(pair => (pair.run, pair.Item2!))];
    }

    private static string NameOf(NotedRun run) => run.Name.Length > 0 ? run.Name : run.Number?.ToString(System.Globalization.CultureInfo.InvariantCulture) ?? "";

    private static bool Alike((Run Run, NotedRun There)[] shared, NotedDay day, PitNotebook notebook) =>
        shared.Length > 0 && 2 * shared.Count(pair => Alike(pair.Run, pair.There, day, notebook)) >= shared.Length;

    private static bool Alike(Run run, NotedRun there, NotedDay day, PitNotebook notebook)
    {
        if (!Same(run.Option, there.Option is { } option ? notebook.Find<NotedOption>(option)?.Name ?? "" : "")) return false;
        // Two gos at different times are two runs, whatever was read.
        if (run.StartedAt is { } at && RunStart.Of(there, day) is { } start)
            return at >= start.Local - SameGo && at <= start.Local + SameGo;
        return run.Readings.Any(reading => reading.ReadC is { } read && there.Shots.Any(shot => shot.ReadC is { } noted && Math.Abs(noted - read) < SameReadC));
    }

    private static bool Same(string a, string b) => string.Equals(a.Trim(), b.Trim(), StringComparison.OrdinalIgnoreCase);
}
