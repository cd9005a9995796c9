using Coolproof.Notebook.Journal;

namespace Coolproof.Notebook.Tests.Journal;

/// <summary>Go, stop, halt: whose count, how they are put right, and what is kept beside.</summary>
public sealed class RunStamps
{
    private readonly Taps _taps = new();

    private NotedRun Run(Guid run) => _taps.Notebook.Find<NotedRun>(run)!;

    [Fact]
    public void A_run_adds_up_to_drive_roll_in_standstill_and_delays()
    {
        Guid run = _taps.Begin(0);
        _taps.Tap(10, EntryKind.RunGo, run);
        _taps.Tap(100, EntryKind.RunDown, run);
        _taps.Tap(108.5, EntryKind.RunUp, run);
        _taps.Tap(370, EntryKind.RunStop, run, ("by", "tap"));
        _taps.Tap(378, EntryKind.RunHalt, run);
        _taps.Tap(380, EntryKind.RunPowerOff, run);
        Guid shot = _taps.Shoot(390.25, run, 61.5);
        NotedRun noted = Run(run);
        Assert.Equal((360.0, 8.0, 8.5, 2.0), (noted.DriveS, noted.RollInS, noted.StoodS, noted.PowerOffS));
        Assert.Equal(12.25, noted.StopToReadS(noted.Shots[0]));
        Assert.Equal((shot, 61.5), (noted.Shots[0].Id, noted.Shots[0].ReadC));
        Assert.Equal((_taps.Day, _taps.Option, 1), (noted.Day!.Value, noted.Option!.Value, noted.Number!.Value));
    }

    [Fact]
    public void A_stop_pressed_twice_counts_once_and_the_second_is_kept_and_shown()
    {
        Guid run = _taps.Begin(0);
        _taps.Tap(10, EntryKind.RunGo, run);
        Guid first = _taps.Tap(370, EntryKind.RunStop, run);
        Guid second = _taps.Tap(371, EntryKind.RunStop, run);
        NotedRun noted = Run(run);
        Assert.Equal(first, noted.Stop!.Counted.Entry);
        Assert.Equal((second, EventStanding.PressedAgain), (noted.Stop.Others.Single().Entry, noted.Stop.Others.Single().Standing));
        Assert.Equal(0, noted.Stop.SpreadS);
    }

    [Fact]
    public void A_forgotten_stop_is_noted_later_with_how_long_ago_it_was()
    {
        Guid run = _taps.Begin(0);
        _taps.Tap(10, EntryKind.RunGo, run);
        _taps.Tap(400, EntryKind.RunStop, run, ("by", "later"), ("secondsAgo", 30));
        Assert.Equal(360, Run(run).DriveS);
    }

    [Fact]
    public void A_nudge_moves_a_stamp_and_the_original_stays_to_be_seen()
    {
        Guid run = _taps.Begin(0);
        _taps.Tap(10, EntryKind.RunGo, run);
        Guid stop = _taps.Tap(370, EntryKind.RunStop, run);
        _taps.Nudge(380, stop, -2);
        Guid second = _taps.Nudge(381, stop, 0.5);
        Assert.Equal(358.5, Run(run).DriveS);
        Assert.Equal((Taps.At(370), -1.5), (Run(run).Stop!.Counted.Tapped, Run(run).Stop!.Counted.NudgedS));
        _taps.Undo(382, second);
        Assert.Equal(358, Run(run).DriveS);
    }

    [Fact]
    public void Undo_takes_a_stamp_back_and_undo_of_the_undo_brings_it_again()
    {
        Guid run = _taps.Begin(0);
        _taps.Tap(10, EntryKind.RunGo, run);
        Guid stop = _taps.Tap(60, EntryKind.RunStop, run);
        Guid undo = _taps.Undo(61, stop);
        Assert.Null(Run(run).Stop);
        Assert.Equal(EventStanding.TakenBack, Run(run).Events.Single(stamp => stamp.Entry == stop).Standing);
        _taps.Tap(370, EntryKind.RunStop, run);
        Assert.Equal(360, Run(run).DriveS);
        _taps.Undo(400, undo);
        Assert.Equal(50, Run(run).DriveS);
    }

    [Fact]
    public void A_thousand_undos_of_undos_are_no_trouble()
    {
        Guid run = _taps.Begin(0);
        Guid last = _taps.Tap(10, EntryKind.RunGo, run);
        for (int i = 0; i < 1000; i++) last = _taps.Undo(11 + i, last);
        Assert.NotNull(Run(run).Go);
        _taps.Undo(2000, last);
        Assert.Null(Run(run).Go);
    }

    [Fact]
    public void Two_phones_stamps_are_both_kept_the_clock_counts_and_a_person_may_choose()
    {
        _taps.Tap(0, EntryKind.DeviceSet, _taps.Driver, ("role", "driver"));
        _taps.TapOn(_taps.Clock, 0, EntryKind.DeviceSet, _taps.Clock, ("role", "clock"));
        Guid run = _taps.Begin(1);
        Guid byDriver = _taps.Tap(10, EntryKind.RunGo, run);
        Guid byClock = _taps.TapOn(_taps.Clock, 10.75, EntryKind.RunGo, run);
        Assert.Equal((byClock, 0.75, false), (Run(run).Go!.Counted.Entry, Run(run).Go!.SpreadS, Run(run).Go!.Chosen));
        Assert.Equal((byDriver, EventStanding.OtherDevice), (Run(run).Go!.Others.Single().Entry, Run(run).Go!.Others.Single().Standing));
        Guid choice = _taps.Tap(20, EntryKind.ClockChoice, run, ("run", run), ("event", "go"), ("entry", byDriver));
        Assert.Equal((byDriver, true), (Run(run).Go!.Counted.Entry, Run(run).Go!.Chosen));
        _taps.Undo(21, choice);
        Assert.Equal(byClock, Run(run).Go!.Counted.Entry);
        _taps.TapOn(_taps.Clock, 30, EntryKind.DeviceSet, _taps.Clock, ("role", "any"));
        Assert.Equal(byDriver, Run(run).Go!.Counted.Entry);
    }

    [Fact]
    public void A_phone_whose_clock_is_ahead_stamps_true_times()
    {
        _taps.SetAhead(_taps.Clock, 3600);
        _taps.TapOn(_taps.Clock, 0, EntryKind.ClockOffset, _taps.Clock, ("ms", 3_600_000));
        Guid run = _taps.Begin(1);
        _taps.Tap(10, EntryKind.RunGo, run);
        _taps.TapOn(_taps.Clock, 370, EntryKind.RunStop, run);
        Assert.Equal(360, Run(run).DriveS);
    }

    [Fact]
    public void The_offset_that_held_is_the_latest_before_the_tap_or_the_first_after_it()
    {
        Guid run = _taps.Begin(0);
        _taps.SetAhead(_taps.Clock, 5);
        _taps.TapOn(_taps.Clock, 10, EntryKind.RunGo, run);
        _taps.TapOn(_taps.Clock, 20, EntryKind.ClockOffset, _taps.Clock, ("ms", 5000));
        _taps.TapOn(_taps.Clock, 30, EntryKind.RunDown, run);
        _taps.SetAhead(_taps.Clock, 9);
        _taps.TapOn(_taps.Clock, 40, EntryKind.ClockOffset, _taps.Clock, ("ms", 9000));
        _taps.TapOn(_taps.Clock, 50, EntryKind.RunUp, run);
        NotedRun noted = Run(run);
        Assert.Equal((Taps.At(10), Taps.At(30), Taps.At(50)), (noted.Go!.At, noted.StandStills[0].Down, noted.StandStills[0].Up!.Value));
        Assert.Equal(9000, _taps.Notebook.Find<NotedDevice>(_taps.Clock)!.OffsetMs);
    }

    [Fact]
    public void Where_nobody_pressed_go_it_comes_at_the_end_of_the_countdown()
    {
        Guid run = _taps.Begin(0);
        Guid countdown = _taps.Tap(5, EntryKind.RunCountdown, run, ("seconds", 10), ("driveS", 360));
        _taps.Tap(375, EntryKind.RunStop, run, ("by", "horn"));
        Assert.Equal((Taps.At(15), 360.0), (Run(run).Go!.At, Run(run).DriveS));
        _taps.Undo(400, countdown);
        Assert.Null(Run(run).Go);
    }

    [Fact]
    public void Down_noted_by_two_phones_is_one_standstill_and_one_that_never_rose_lasts_to_the_stop()
    {
        Guid run = _taps.Begin(0);
        _taps.Tap(0, EntryKind.RunGo, run);
        _taps.Tap(100, EntryKind.RunDown, run);
        _taps.TapOn(_taps.Clock, 100.5, EntryKind.RunDown, run);
        _taps.Tap(110, EntryKind.RunUp, run);
        _taps.TapOn(_taps.Clock, 110.5, EntryKind.RunUp, run);
        _taps.Tap(200, EntryKind.RunDown, run);
        _taps.Tap(215, EntryKind.RunStop, run);
        Assert.Equal(25, Run(run).StoodS);
    }

    [Fact]
    public void Stamps_that_contradict_each_other_give_no_figure_and_are_a_loose_end()
    {
        Guid run = _taps.Begin(0);
        _taps.Tap(0, EntryKind.DaySet, _taps.Day, ("name", "evening"));
        _taps.Tap(100, EntryKind.RunGo, run);
        Guid stop = _taps.Tap(110, EntryKind.RunStop, run);
        _taps.Nudge(120, stop, -60);
        Assert.Null(Run(run).DriveS);
        Assert.Contains(LooseEnds.Of(_taps.Notebook, _taps.Notebook.Days.Single(), Taps.At(130)), end => end.Kind == LooseEndKind.ContradictingStamps);
    }

    [Fact]
    public void A_correction_stands_in_for_the_entry_that_it_names_until_it_is_taken_back()
    {
        Guid run = _taps.Begin(0);
        Guid shot = _taps.Shoot(10, run);
        Guid typo = _taps.Tap(13, EntryKind.ShotRead, shot, ("shot", shot), ("value", 615), ("unit", "c"));
        Guid right = _taps.Correct(20, typo, EntryKind.ShotRead, shot, ("shot", shot), ("value", 61.5), ("unit", "c"));
        Assert.Equal(61.5, Run(run).Shots.Single().ReadC);
        _taps.Undo(30, right);
        Assert.Equal(615, Run(run).Shots.Single().ReadC);
    }

    [Fact]
    public void A_number_in_Fahrenheit_is_kept_in_Celsius()
    {
        Guid run = _taps.Begin(0);
        _taps.Shoot(10, run, 142.7, "f");
        Assert.Equal(61.5, Run(run).Shots.Single().ReadC!.Value, 1e-9);
    }
}
