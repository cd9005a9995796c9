using Coolproof.Evidence.Causes;
using Coolproof.Notebook.Journal;
using Coolproof.Pages.Shown;
using Coolproof.Words;

namespace Coolproof.Pages.Reasons;

/// <summary>A run or a day that can be set against another.</summary>
/// <param name="Id">Its UUID.</param>
/// <param name="Words">For a list: what it is, its option, its first reading.</param>
/// <param name="Named">By name, with its places in the judged table.</param>
public sealed record ReasonSide(Guid Id, string Words, RunsNamed Named);

/// <summary>What can be set against what in a judged table.</summary>
/// <param name="Days">Days, where there is more than one.</param>
/// <param name="Runs">Runs with a reading that can be explained.</param>
internal sealed record ReasonSides(IReadOnlyList<ReasonSide> Days, IReadOnlyList<ReasonSide> Runs)
{
    /// <summary>Those of a judged table.</summary>
    /// <param name="notebook">The notebook.</param>
    /// <param name="table">Its readings as they were judged.</param>
    /// <param name="degrees">For the readings.</param>
    public static ReasonSides Of(PitNotebook notebook, NotebookTable table, DegreeWords degrees)
    {
        var explained = Enumerable.Range(0, table.Runs.Count).Where(place => CauseEvidence.Explains(table.Table.Runs[place])).ToArray();
        var dayOf = explained.ToDictionary(place => place, place => notebook.Find<NotedRun>(table.Runs[place])?.Day ?? Guid.Empty);
        var days = explained.GroupBy(place => dayOf[place]).ToArray();
        var several = days.Length > 1;
        return new(several ? [.. days.Select(Day)] : [], [.. explained.Select(Run)]);

        ReasonSide Day(IGrouping<Guid, int> day)
        {
            var name = notebook.Find<NotedDay>(day.Key) is { } noted ? TimeWords.Day(noted) : table.Table.Runs[day.First()].Day;
            return new(day.Key, $"{name}: {TimeWords.Count(day.Count(), "run")}", new(name, [.. day]));
        }

        ReasonSide Run(int place)
        {
            var run = table.Table.Runs[place];
            var name = notebook.Find<NotedRun>(table.Runs[place]) is { } noted ? TimeWords.Run(noted) : $"run {run.Name}";
            if (several && notebook.Find<NotedDay>(dayOf[place]) is { } of) name = $"{name} of {TimeWords.Day(of)}";
            var read = run.Readings.First(reading => reading.ExcludedBecause is null && reading.ReadC is not null).ReadC!.Value;
            return new(table.Runs[place], $"{name}: {run.Option}, {degrees.Say(read, 1)}", new(name, [place]));
        }
    }

    /// <summary>A side by its UUID, in text as an address holds it; null where there is none.</summary>
    public ReasonSide? Find(string? text) => Guid.TryParse(text, out var id) ? Days.Concat(Runs).FirstOrDefault(side => side.Id == id) : null;

    /// <summary>What a side is set against where nothing is said: the run before it with the same option, else the one before it, else the next.</summary>
    public ReasonSide? Before(ReasonSide? side, NotebookTable table)
    {
        if (side is null) return null;
        var row = Days.Contains(side) ? Days : Runs;
        var place = row.ToList().IndexOf(side);
        string Option(ReasonSide one) => table.Table.Runs[one.Named.Runs[0]].Option;
        return (row == Days ? null : row.Take(place).LastOrDefault(one => string.Equals(Option(one), Option(side), StringComparison.OrdinalIgnoreCase)))
            ?? row.ElementAtOrDefault(place > 0 ? place - 1 : 1);
    }
}
