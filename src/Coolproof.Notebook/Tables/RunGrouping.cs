using NodaTime;
using NodaTime.Text;

namespace Coolproof.Notebook.Tables;

/// <summary>Tells days and runs apart.</summary>
/// <remarks>
/// A row's day is what its day cell says, else the day of the date in started_at, else the day of the run it repeats, else the day of the row above,
/// else "day". A blank run cell means the run of the row above; where there is no run column each row is a run.
/// </remarks>
internal sealed class RunGrouping(Header header, ProblemLog log)
{
    private const string OneDay = "day";
    private readonly Dictionary<string, string> _days = new(StringComparer.OrdinalIgnoreCase);
    private readonly Dictionary<LocalDate, string> _dayOfDate = [];
    private readonly Dictionary<string, HashSet<string>> _daysOfRun = new(StringComparer.OrdinalIgnoreCase);
    private readonly Dictionary<(string Day, string Name), RunDraft> _runs = [];
    private readonly Dictionary<string, int> _countOfDay = [];
    private readonly List<RunDraft> _drafts = [];

    /// <summary>Runs in the order of their first rows.</summary>
    public IReadOnlyList<RunDraft> Group(IReadOnlyList<TableRow> rows)
    {
        foreach (TableRow row in rows) NoteDay(row);
        foreach (TableRow row in rows)
        {
            if (row.Text(Field.Run) is { } run && OwnDay(row) is { } day) (_daysOfRun.TryGetValue(run, out HashSet<string>? days) ? days : _daysOfRun[run] = []).Add(day);
        }

        bool named = header.Has(Field.Run);
        RunDraft? above = null;
        foreach (TableRow row in rows) above = named ? PlaceNamed(row, above) : PlaceAlone(row, above);
        foreach (RunDraft draft in _drafts) CheckApart(draft);
        return _drafts;
    }

    private void NoteDay(TableRow row)
    {
        if (row.Text(Field.Day) is not { } day) return;
        _days.TryAdd(day, day);
        if (row.Start is { } start) _dayOfDate.TryAdd(start.Local.Date, _days[day]);
    }

    private string? OwnDay(TableRow row)
    {
        if (row.Text(Field.Day) is { } day) return _days[day];
        if (row.Start is not { } start) return null;
        return _dayOfDate.TryGetValue(start.Local.Date, out string? named) ? named : LocalDatePattern.Iso.Format(start.Local.Date);
    }

    private RunDraft PlaceAlone(TableRow row, RunDraft? above)
    {
        string day = OwnDay(row) ?? above?.Day ?? OneDay;
        int number = _countOfDay[day] = 1 + _countOfDay.GetValueOrDefault(day);
        return Start(row, day, number.ToString(System.Globalization.CultureInfo.InvariantCulture));
    }

    private RunDraft PlaceNamed(TableRow row, RunDraft? above)
    {
        string? run = row.Text(Field.Run);
        if (run is null)
        {
            if (above is null)
            {
                if (!row.IsFaulty(Field.Run)) log.Problem(row.Line, -1, header.NameOf(Field.Run), "blank", "the run's name: there is no row above whose run this could be");
                return Start(row, OwnDay(row) ?? OneDay, "1");
            }

            CheckDayOfBlankRun(row, above);
            above.Rows.Add(row);
            return above;
        }

        string day = OwnDay(row) ?? DayOfRepeat(row, run, above);
        if (!_runs.TryGetValue(Key(day, run), out RunDraft? draft)) return Start(row, day, run);
        if (draft != above) draft.Apart ??= row;
        draft.Rows.Add(row);
        return draft;
    }

    private string DayOfRepeat(TableRow row, string run, RunDraft? above)
    {
        if (above is not null && string.Equals(above.Name, run, StringComparison.OrdinalIgnoreCase)) return above.Day;
        if (_daysOfRun.TryGetValue(run, out HashSet<string>? days) && days.Count == 1) return days.First();
        if (days is { Count: > 1 } && !days.Contains(above?.Day ?? ""))
        {
            log.Problem(row.Line, -1, header.NameOf(Field.Day), "blank", $"the day, since run {run} stands in {days.Count} days");
        }

        return above?.Day ?? OneDay;
    }

    private RunDraft Start(TableRow row, string day, string name)
    {
        RunDraft draft = new(day, name);
        draft.Rows.Add(row);
        _drafts.Add(draft);
        _runs[Key(day, name)] = draft;
        return draft;
    }

    private void CheckDayOfBlankRun(TableRow row, RunDraft above)
    {
        if (OwnDay(row) is not { } day || day == above.Day) return;
        log.Problem(row.Line, -1, header.NameOf(Field.Run), $"blank, on {day}", $"the run's name: a blank run is the run of the row above, and that one (line {above.Line}) is on {above.Day}");
    }

    // Without a clock the order of rows is the order of time, so a run cannot go on after another one.
    private void CheckApart(RunDraft draft)
    {
        if (draft.Apart is not { } row || draft.Start is not null) return;
        log.Problem(
            row.Line, -1, header.NameOf(Field.Run), $"{draft.Name}, which stands at line {draft.Line} already",
            "a name that no other run of the day has; rows of one run stand together unless started_at tells the time");
    }

    private static (string, string) Key(string day, string run) => (day.ToUpperInvariant(), run.ToUpperInvariant());
}
