using Coolproof.Evidence.Earlier;
using Coolproof.Notebook;
using Coolproof.Notebook.Journal;
using Coolproof.Pages;
using Coolproof.Pages.Rehearsals;
using Coolproof.Pages.Shown;

namespace Coolproof.Board;

/// <summary>
/// Which earlier days of a notebook belong with a day: those of the same motor with an option in common, the latest first, as far as it is measured that they help
/// (docs/decisions/earlier-days.md). Pure.
/// </summary>
internal static class EarlierDays
{
    /// <summary>Most earlier days: with ten, intervals hold the truth too seldom.</summary>
    public const int MostDays = 3;

    /// <summary>The days with their readings in the order of time; none where none belongs.</summary>
    /// <param name="notebook">The notebook.</param>
    /// <param name="day">The day.</param>
    /// <param name="runs">Runs of its own table.</param>
    public static IReadOnlyList<(NotedDay Day, ReadingsTable Table)> Of(PitNotebook notebook, NotedDay day, int runs)
    {
        List<(NotedDay, ReadingsTable)> belong = [];
        var options = Read(notebook, day);
        // A rehearsal has a motor of its own each time, whatever its name.
        if (options.Count == 0 || Rehearsed(notebook, day) || MotorOf(notebook, day) is not { } motor) return [];
        var made = Demo.Made(notebook, day.Id);
        foreach (var other in Before(notebook, day))
        {
            if (MotorOf(notebook, other) != motor || !Read(notebook, other).Overlaps(options) || Demo.Made(notebook, other.Id) != made || Rehearsed(notebook, other)) continue;
            var table = NotebookTable.Of(notebook, day: other.Id).Table;
            runs += table.Runs.Count;
            if (runs > EarlierTables.MostRuns) break; // one that is older still would be a worse witness
            belong.Add((other, table));
            if (belong.Count == MostDays) break;
        }
        belong.Reverse();
        return belong;
    }

    // The latest first. Tables without any date have no order in time: then the one that was brought first is the earlier.
    static IEnumerable<NotedDay> Before(PitNotebook notebook, NotedDay day)
    {
        if (!Timeless(day)) return notebook.Days.TakeWhile(one => one.Id != day.Id).Reverse();
        var brought = Brought(notebook, day);
        return notebook.Days.Where(one => Timeless(one) && Brought(notebook, one) < brought).OrderByDescending(one => Brought(notebook, one)).ThenByDescending(one => one.Order);
    }

    static bool Timeless(NotedDay day) => day.Date is null && TimeWords.Imported(day.Since);

    static long Brought(PitNotebook notebook, NotedDay day) => notebook.History(day.Id) is [var first, ..] ? first.Stored.Seq : 0;

    // Names of the options that were read.
    static HashSet<string> Read(PitNotebook notebook, NotedDay day) => notebook.RunsOf(day.Id)
        .Where(run => !run.Abandoned && run.Kind is RunKind.Test or RunKind.Race && run.Shots.Any(shot => shot is { ExcludedBecause: null } and ({ ReadC: not null } or { Winding: not null })))
        .Select(run => run.Option is { } option ? notebook.Find<NotedOption>(option)?.Name : null).OfType<string>().ToHashSet(StringComparer.OrdinalIgnoreCase);

    static bool Rehearsed(PitNotebook notebook, NotedDay day) => Demo.SeedOf(notebook, day) is not null || GuidedRehearsal.SeedOf(notebook, day) is not null;

    // The motor, else the vehicle that it is in, else the one that nobody noted; null where there was more than one on the day.
    static Guid? MotorOf(PitNotebook notebook, NotedDay day)
    {
        Guid[] motors = [.. notebook.RunsOf(day.Id).Select(Of).Distinct().Take(2)];
        return motors is [var only] ? only : null;

        Guid Of(NotedRun run)
        {
            var vehicle = run.Fields.Id("vehicle") ?? day.Vehicle;
            return run.Fields.Id("motor") ?? day.Motor ?? (vehicle is { } known ? notebook.Find<NotedVehicle>(known)?.Motor ?? known : Guid.Empty);
        }
    }
}
