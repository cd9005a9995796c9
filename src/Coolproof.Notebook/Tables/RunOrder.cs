using NodaTime;

namespace Coolproof.Notebook.Tables;

/// <summary>Brings runs into the order of time: by the clock within a day where every run of it has one, else as the rows stand.</summary>
internal sealed class RunOrder(Header header, ProblemLog log)
{
    // A start noted to the minute may be up to a minute late.
    private const double MinuteS = 60;

    /// <summary>Days one after another, runs within each in the order of time.</summary>
    /// <param name="runs">Runs in the order of their first rows.</param>
    public IReadOnlyList<DraftedRun> Ordered(IReadOnlyList<DraftedRun> runs)
    {
        List<List<DraftedRun>> days = [.. runs.GroupBy(run => run.Run.Day).Select(day => OrderedDay([.. day]))];
        if (runs.All(run => run.Run.StartedAt is not null)) days = [.. days.OrderBy(day => day.Min(run => run.Run.StartedAt))];
        bool named = header.Has(Field.Run);
        return [.. days.SelectMany(day => day.Select((run, i) => named ? run : run with { Run = run.Run with { Name = CellWords.Number(i + 1) } }))];
    }

    private List<DraftedRun> OrderedDay(List<DraftedRun> day)
    {
        int clocks = day.Count(run => run.Run.StartedAt is not null);
        if (clocks < day.Count)
        {
            if (clocks > 0) CheckHalfClocked(day);
            return day;
        }

        bool offsets = day.TrueForAll(run => run.Run.StartedOffset is not null);
        day = [.. day.OrderBy(run => Clock(run.Run, offsets)).ThenBy(run => run.Run.Load.Vehicle, StringComparer.OrdinalIgnoreCase).ThenBy(run => run.Run.Name, StringComparer.OrdinalIgnoreCase)];
        foreach (IGrouping<string, DraftedRun> vehicle in day.GroupBy(run => run.Run.Load.Vehicle?.ToUpperInvariant() ?? ""))
        {
            DraftedRun? before = null;
            foreach (DraftedRun run in vehicle)
            {
                if (before is not null) CheckOverlap(before, run, offsets);
                before = run;
            }
        }

        return day;
    }

    private void CheckHalfClocked(List<DraftedRun> day)
    {
        DraftedRun without = day.Find(run => run.Run.StartedAt is null)!;
        DraftedRun? before = null;
        foreach (DraftedRun run in day.Where(run => run.Run.StartedAt is not null))
        {
            if (before is not null && run.Run.StartedAt < before.Run.StartedAt)
            {
                Say(log.Problem, run, $"{Words(run)}, before the run above it (line {before.Draft.Line}, {Words(before)})", "rows in the order of time, or a start time for every run of the day");
                return;
            }

            before = run;
        }

        Say(log.Question, without, $"no start time, while other runs of {without.Run.Day} have one", "a start time for every run of the day; without it the rows are taken to stand in the order of time");
    }

    private void CheckOverlap(DraftedRun before, DraftedRun run, bool offsets)
    {
        double gapS = (Clock(run.Run, offsets) - Clock(before.Run, offsets)).TotalSeconds;
        double busyS = before.Run.DriveS + (before.Run.RollInS ?? 0);
        double lastReadS = before.Run.Readings.Max(reading => reading.StopToReadS ?? reading.Winding?.AtS) ?? 0;
        double slackS = run.Run.StartedAt!.Value.Second == 0 || before.Run.StartedAt!.Value.Second == 0 ? MinuteS : 0;
        if (gapS + slackS >= busyS + lastReadS) return;
        string found = $"{Words(run)}, {CellWords.Number(gapS)} s after the run of line {before.Draft.Line} began";
        if (before.Run.DriveAssumed)
        {
            Say(log.Question, run, found, $"a start after the readings of that run; its drive was not noted and is taken as {CellWords.Number(before.Run.DriveS)} s");
            return;
        }

        string hint = gapS == 0 && !header.Has(Field.Run) ? "rows of one run: add a column run" : "two vehicles: fill the column vehicle";
        Say(log.Problem, run, found, $"a start after the readings of that run: it drove and rolled for {CellWords.Number(busyS)} s and was read until {CellWords.Number(lastReadS)} s after the halt ({hint})");
    }

    private void Say(Action<int, int, string, string, string> say, DraftedRun run, string found, string expected) =>
        say(run.Draft.LineOf(Field.StartedAt), run.Draft.Cell(Field.StartedAt)?.Column ?? -1, header.NameOf(Field.StartedAt), found, expected);

    private static Instant Clock(Run run, bool offsets) =>
        run.StartedAt!.Value.WithOffset(offsets ? run.StartedOffset!.Value : Offset.Zero).ToInstant();

    private static string Words(DraftedRun run) => CellWords.Of(run.Draft.Cell(Field.StartedAt)!.Value, ColumnRules.Of(Field.StartedAt));
}
