using Coolproof.Board;
using Coolproof.Evidence.Earlier;
using Coolproof.Notebook.Journal;
using Coolproof.Pages;
using NodaTime;

namespace Coolproof.Tests.Serving;

/// <summary>Which earlier days belong with a day, in notebooks that are invented here.</summary>
public class EarlierDaysBoardTests
{
    readonly Guid bare = Guid.CreateVersion7(), fan = Guid.CreateVersion7(), other = Guid.CreateVersion7(), motor = Guid.CreateVersion7(), car = Guid.CreateVersion7();
    readonly List<StoredEntry> entries = [];
    int said;

    public EarlierDaysBoardTests()
    {
        foreach (var (id, name) in new[] { (bare, "bare can"), (fan, "fan"), (other, "rear blower") }) Say(EntryKind.OptionSet, id, ("name", name));
        Say(EntryKind.MotorSet, motor, ("name", "13.5 turns"));
        Say(EntryKind.VehicleSet, car, ("name", "buggy"), ("motor", motor));
    }

    [Fact]
    public void The_latest_three_of_the_same_motor_with_an_option_in_common_belong_in_the_order_of_time()
    {
        Guid[] days = [.. Enumerable.Range(1, 5).Select(number => Day($"2026-06-0{number}", [bare, fan], ("motor", motor)))];
        Assert.Equal(days[1..4], Belonging(days[4]));
        Assert.Empty(Belonging(days[0]));
    }

    [Fact]
    public void Another_motor_other_options_runs_without_a_reading_and_days_after_do_not_belong()
    {
        var same = Day("2026-06-01", [bare], ("motor", motor));
        Day("2026-06-02", [bare, fan], ("motor", Guid.CreateVersion7()));
        Day("2026-06-03", [bare, fan]);
        Day("2026-06-04", [other], ("motor", motor));
        var byCar = Day("2026-06-05", [fan], ("vehicle", car)); // its motor is the car's
        var today = Day("2026-06-07", [bare, fan], ("motor", motor));
        Day("2026-06-08", [bare, fan], ("motor", motor));
        Say(EntryKind.DaySet, Guid.CreateVersion7(), ("date", "2026-06-06"), ("motor", motor));
        Assert.Equal([same, byCar], Belonging(today));
    }

    [Fact]
    public void Where_no_motor_is_noted_days_belong_together_that_note_none_either()
    {
        var before = Day("2026-06-01", [bare, fan]);
        Day("2026-06-02", [bare, fan], ("motor", motor));
        Assert.Equal([before], Belonging(Day("2026-06-03", [bare, fan])));
    }

    [Fact]
    public void No_more_than_72_runs_are_judged_together()
    {
        Guid[] thirty = [.. Enumerable.Repeat(bare, 30)];
        Day("2026-06-01", [bare], ("motor", motor));
        Day("2026-06-02", thirty, ("motor", motor));
        var last = Day("2026-06-03", thirty, ("motor", motor));
        Assert.Equal([last], Belonging(Day("2026-06-04", [.. thirty[..13]], ("motor", motor))));
        Assert.Equal(72, EarlierTables.MostRuns);
    }

    [Fact]
    public void What_is_made_up_and_what_was_driven_are_never_mixed_and_a_rehearsal_stands_alone()
    {
        Say(EntryKind.Import, Guid.CreateVersion7(), ("name", "made up: the demo"));
        var made = Day("2026-06-01", [bare, fan], Demo.DemoAuthor, ("motor", motor));
        var own = Day("2026-06-02", [bare, fan], ("motor", motor));
        Day("2026-06-03", [bare, fan], Demo.RehearsalAuthor, ("motor", motor), ("name", "Rehearsal of 3 Jun, 2 options, no. 77"));
        Assert.Equal([own], Belonging(Day("2026-06-04", [bare, fan], ("motor", motor))));
        Assert.Equal([made], Belonging(Day("2026-06-05", [bare, fan], Demo.DemoAuthor, ("motor", motor))));
        Assert.Empty(Belonging(Day("2026-06-06", [bare, fan], Demo.RehearsalAuthor, ("motor", motor), ("name", "Rehearsal of 6 Jun, 2 options, no. 78"))));
    }

    [Fact]
    public void Of_tables_without_a_date_the_one_brought_first_is_the_earlier()
    {
        var tables = new[] { 70, 71, 72 }.Select(read => TableImport.Of(Notebook.ReadingsTableReader.Read(new MemoryStream(System.Text.Encoding.UTF8.GetBytes($"option,run,drive_min,read_c\nbare can,1,6,{read}\n")), null).Table!)).ToArray();
        foreach (var entry in tables.SelectMany(table => table)) entries.Add(new StoredEntry(entry, PitServer.Device, ++said, Instant.FromUtc(2026, 6, 13, 16, 0)));
        Guid[] days = [.. tables.Select(table => table.First(entry => entry.Kind == EntryKind.DaySet).About)];
        Assert.Equal(days[..2], Belonging(days[2]));
        Assert.Empty(Belonging(days[0]));
    }

    [Fact]
    public void The_demos_evenings_belong_together()
    {
        var notebook = PitNotebook.Of(DemoNotebook.Entries().Select((entry, place) => new StoredEntry(entry, Demo.DemoAuthor, place + 1, Instant.FromUtc(2026, 6, 13, 16, 0))));
        Assert.Equal(notebook.Days.Take(3).Select(day => day.Id), EarlierTask.Of(notebook, notebook.Days[^1].Id, 1)!.Days);
        Assert.Null(EarlierTask.Of(notebook, DemoNotebook.Question, 1)); // a question has its days together already
    }

    IEnumerable<Guid> Belonging(Guid day)
    {
        var notebook = PitNotebook.Of(entries);
        return EarlierDays.Of(notebook, notebook.Find<NotedDay>(day)!, NotebookTable.Of(notebook, day: day).Table.Runs.Count).Select(one => one.Day.Id);
    }

    Guid Day(string date, Guid[] driven, params (string, object?)[] fields) => Day(date, driven, PitServer.Device, fields);

    Guid Day(string date, Guid[] driven, Guid author, params (string, object?)[] fields)
    {
        var day = Guid.CreateVersion7();
        Say(author, EntryKind.DaySet, day, [("date", date), .. fields]);
        foreach (var (option, place) in driven.Select((option, place) => (option, place)))
        {
            Guid run = Guid.CreateVersion7(), shot = Guid.CreateVersion7();
            Say(author, EntryKind.RunSet, run, ("day", day), ("option", option), ("number", place + 1), ("typed", true), ("driveS", 360));
            Say(author, EntryKind.ShotSet, shot, ("run", run), ("untimed", true));
            Say(author, EntryKind.ShotRead, shot, ("shot", shot), ("value", 70), ("unit", "c"));
        }
        return day;
    }

    void Say(string kind, Guid about, params (string, object?)[] fields) => Say(PitServer.Device, kind, about, fields);

    void Say(Guid author, string kind, Guid about, params (string, object?)[] fields)
    {
        var at = Instant.FromUtc(2026, 6, 13, 16, 0) + Duration.FromSeconds(++said);
        entries.Add(new StoredEntry(new Entry(Guid.CreateVersion7(), kind, at, about, null, EntryBody.Of(fields)), author, said, at));
    }
}
