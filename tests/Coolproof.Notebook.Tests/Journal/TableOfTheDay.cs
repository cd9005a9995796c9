using Coolproof.Notebook.Journal;
using NodaTime;

namespace Coolproof.Notebook.Tests.Journal;

/// <summary>The readings table of taps.</summary>
public sealed class TableOfTheDay
{
    private readonly Taps _taps = new();

    public TableOfTheDay()
    {
        _taps.Tap(0, EntryKind.DaySet, _taps.Day, ("name", "evening"), ("utcOffsetMin", 120), ("driver", "Kim"), ("pinion", 21), ("vehicle", Taps.Id(90)));
        _taps.Tap(0, EntryKind.OptionSet, _taps.Option, ("name", "clamp"));
        _taps.Tap(0, EntryKind.InstrumentSet, _taps.Gun, ("name", "club gun"), ("emissivity", 0.95));
        _taps.Tap(0, EntryKind.VehicleSet, Taps.Id(90), ("name", "buggy"));
        _taps.Tap(5, EntryKind.Weather, _taps.Day, ("day", _taps.Day), ("airC", 27), ("airBy", "forecast"), ("sky", "dusk"), ("track", "damp"));
    }

    private NotebookTable Table => NotebookTable.Of(_taps.Notebook);

    private Guid Drive(double from, int number, double? readC)
    {
        Guid run = _taps.Begin(from, number);
        _taps.Tap(from + 10, EntryKind.RunGo, run);
        _taps.Tap(from + 370, EntryKind.RunStop, run);
        _taps.Tap(from + 378, EntryKind.RunHalt, run);
        if (readC is { } read) _taps.Shoot(from + 390, run, read);
        return run;
    }

    [Fact]
    public void A_run_of_taps_is_a_run_of_the_table_with_what_its_day_says()
    {
        Guid id = Drive(10, 1, 61.5);
        _taps.Tap(15, EntryKind.RunFan, id, ("when", "before"), ("turning", true));
        _taps.Tap(500, EntryKind.RunFan, id, ("when", "after"), ("turning", false));
        _taps.Tap(600, EntryKind.Charge, id, ("run", id), ("mah", 2150));
        Run run = Table.Table.Runs.Single();
        Assert.Equal(("evening", "1", "clamp", RunKind.Test), (run.Day, run.Name, run.Option, run.Kind));
        Assert.Equal((360.0, false, 8.0), (run.DriveS, run.DriveAssumed, run.RollInS));
        Assert.Equal((new LocalDateTime(2026, 6, 13, 17, 0, 20), Offset.FromHours(2)), (run.StartedAt!.Value, run.StartedOffset!.Value));
        Assert.Equal((27.0, AirSource.Forecast, Sky.Dusk, TrackState.Damp), (run.AirC, run.AirBy, run.Sky, run.Track));
        Assert.Equal((FanInRun.Ok, FanAfterStop.Off, 2150.0), (run.Fan, run.FanAfterStop, run.Pack.ChargeBackMah));
        Assert.Equal(("Kim", "buggy", 21), (run.Load.Driver, run.Load.Vehicle, run.Load.PinionTeeth));
        Reading reading = run.Readings.Single();
        Assert.Equal((61.5, 12.0, "club gun", 0.95, SpotSurface.Tape), (reading.ReadC, reading.StopToReadS, reading.Instrument, reading.EmissivitySet, reading.Surface));
        Assert.Equal([id], Table.Runs);
    }

    [Fact]
    public void Warmth_of_abandoned_void_and_unread_runs_is_kept_and_out_of_the_ranking()
    {
        Guid abandoned = Drive(0, 1, 60);
        _taps.Tap(450, EntryKind.RunAbandon, abandoned, ("because", "rain"));
        Drive(1000, 2, null);
        Guid isVoid = Drive(2000, 3, 62);
        _taps.Tap(2500, EntryKind.RunSet, isVoid, ("kind", "void"));
        Guid warmUp = Drive(3000, 4, null);
        _taps.Tap(3500, EntryKind.RunSet, warmUp, ("kind", "warm-up"));
        _taps.Begin(4000, 5);
        Assert.Equal([RunKind.Void, RunKind.Void, RunKind.Void, RunKind.WarmUp], Table.Table.Runs.Select(run => run.Kind));
        Assert.Equal(CutShort.Other, Table.Table.Runs[0].CutShort);
    }

    [Fact]
    public void A_run_without_an_option_is_left_out_and_said()
    {
        Guid run = Drive(0, 1, 60);
        _taps.Tap(500, EntryKind.RunSet, run, ("option", null));
        Assert.Empty(Table.Table.Runs);
        Assert.Contains("without a cooling option", Table.Table.Questions.Single().Found, StringComparison.Ordinal);
    }

    [Fact]
    public void A_drive_that_nobody_stamped_is_the_one_that_was_planned()
    {
        Guid run = _taps.Begin(0);
        _taps.Tap(1, EntryKind.RunCountdown, run, ("seconds", 5), ("driveS", 300));
        _taps.Shoot(400, run, 60);
        Assert.Equal((300.0, true), (Table.Table.Runs.Single().DriveS, Table.Table.Runs.Single().DriveAssumed));
    }

    [Fact]
    public void A_question_takes_its_own_days_and_those_without_one_that_drove_its_options()
    {
        Guid question = Taps.Id(95), other = Taps.Id(96);
        _taps.Tap(0, EntryKind.QuestionSet, question, ("text", "clamp or bare?"), ("options", new[] { _taps.Option }));
        _taps.Tap(0, EntryKind.QuestionSet, other, ("text", "gear?"));
        Drive(0, 1, 60);
        Assert.Single(NotebookTable.Of(_taps.Notebook, question).Table.Runs);
        _taps.Tap(900, EntryKind.DaySet, _taps.Day, ("question", other));
        Assert.Empty(NotebookTable.Of(_taps.Notebook, question).Table.Runs);
        Assert.Single(NotebookTable.Of(_taps.Notebook, other).Table.Runs);
        Assert.Single(NotebookTable.Of(_taps.Notebook, day: _taps.Day).Table.Runs);
        _taps.Tap(901, EntryKind.QuestionSet, other, ("vehicle", Taps.Id(91)));
        Assert.Empty(NotebookTable.Of(_taps.Notebook, other).Table.Runs);
    }

    [Fact]
    public void The_table_of_taps_can_be_written_and_read_back()
    {
        Drive(0, 1, 61.5);
        Drive(1000, 2, null);
        ReadingsTable table = Table.Table;
        Assert.Null(SameTable.Difference(table, TableText.Understood(TableText.Written(table))));
    }

    [Fact]
    public void Days_and_runs_of_one_name_are_kept_apart()
    {
        Drive(0, 1, 61.5);
        Drive(1000, 1, 60);
        Assert.Equal(["1", "1 (2)"], Table.Table.Runs.Select(run => run.Name));
    }
}
