using Coolproof.Notebook.Journal;

namespace Coolproof.Notebook.Tests.Journal;

/// <summary>The step of a run, loose ends, and the air of a run.</summary>
public sealed class WhatIsNext
{
    private readonly Taps _taps = new();

    private RunStep Step(Guid run, double seconds) => RunNow.Of(_taps.Notebook.Find<NotedRun>(run)!, Taps.At(seconds), 2).Step;

    [Fact]
    public void A_run_goes_from_ready_to_done()
    {
        Guid run = _taps.Begin(0);
        Assert.Equal(RunStep.Ready, Step(run, 1));
        _taps.Tap(5, EntryKind.RunCountdown, run, ("seconds", 10), ("driveS", 360));
        Assert.Equal(RunStep.CountingDown, Step(run, 14));
        Assert.Equal(1, RunNow.Of(_taps.Notebook.Runs.Single(), Taps.At(14)).LeftS);
        _taps.Tap(15, EntryKind.RunGo, run);
        Assert.Equal(RunStep.Driving, Step(run, 16));
        _taps.Tap(100, EntryKind.RunDown, run);
        Assert.Equal(RunStep.Down, Step(run, 101));
        _taps.Tap(110, EntryKind.RunUp, run);
        Assert.Equal(-5, RunNow.Of(_taps.Notebook.Runs.Single(), Taps.At(380)).LeftS);
        _taps.Tap(375, EntryKind.RunStop, run);
        Assert.Equal(RunStep.Rolling, Step(run, 376));
        _taps.Tap(383, EntryKind.RunHalt, run);
        Assert.Equal(RunStep.Halted, Step(run, 384));
        Guid first = _taps.Shoot(390, run);
        Assert.Equal(RunStep.Shooting, Step(run, 391));
        _taps.Shoot(395, run, 60);
        Assert.Equal(RunStep.Shooting, Step(run, 400));
        Assert.Equal((0, 1), (RunNow.Of(_taps.Notebook.Runs.Single(), Taps.At(400), 2).ShotsLeft, RunNow.Of(_taps.Notebook.Runs.Single(), Taps.At(400), 2).NumbersOwed));
        _taps.Tap(405, EntryKind.ShotRead, first, ("shot", first), ("value", 61), ("unit", "c"));
        Assert.Equal(RunStep.Done, Step(run, 406));
    }

    [Fact]
    public void An_abandoned_run_waits_for_nothing()
    {
        Guid run = _taps.Begin(0);
        _taps.Tap(5, EntryKind.RunGo, run);
        _taps.Tap(60, EntryKind.RunAbandon, run, ("because", "rain"));
        Assert.Equal(RunStep.Abandoned, Step(run, 61));
        Assert.Equal("rain", _taps.Notebook.Runs.Single().AbandonedBecause);
    }

    [Fact]
    public void Loose_ends_are_named_until_they_are_tied()
    {
        _taps.Tap(0, EntryKind.DaySet, _taps.Day, ("name", "evening"));
        Guid run = _taps.Begin(1);
        _taps.Tap(1, EntryKind.RunSet, run, ("pack", Taps.Id(80)));
        _taps.Tap(2, EntryKind.RunCountdown, run, ("seconds", 8), ("driveS", 300));
        _taps.Tap(10, EntryKind.RunGo, run);
        Assert.Equal([LooseEndKind.MissingAir], Ends(400));
        Assert.Equal([LooseEndKind.UnfinishedRun, LooseEndKind.MissingAir], Ends(500));
        _taps.Tap(501, EntryKind.RunStop, run, ("by", "later"), ("secondsAgo", 190));
        _taps.Tap(502, EntryKind.RunHalt, run, ("secondsAgo", 180));
        Guid shot = _taps.Shoot(510, run);
        Assert.Equal([LooseEndKind.ShotWithoutNumber, LooseEndKind.ChargeOwed, LooseEndKind.MissingAir], Ends(520));
        _taps.Tap(521, EntryKind.ShotRead, shot, ("shot", shot), ("value", 60), ("unit", "c"));
        _taps.Tap(522, EntryKind.Charge, run, ("run", run), ("mah", 2100));
        _taps.Tap(523, EntryKind.Weather, _taps.Day, ("day", _taps.Day), ("airC", 27));
        Assert.Empty(Ends(600));
        Assert.Equal([LooseEndKind.AirOld], Ends(523 + 1801));
        Assert.Equal(2100, _taps.Notebook.Runs.Single().ChargeBackMah);
    }

    private IEnumerable<LooseEndKind> Ends(double seconds) => LooseEnds.Of(_taps.Notebook, _taps.Notebook.Days.Single(), Taps.At(seconds)).Select(end => end.Kind);

    [Fact]
    public void The_air_of_a_run_lies_between_the_notes_around_it_and_is_unknown_far_from_any()
    {
        Guid run = _taps.Begin(0);
        _taps.Tap(0, EntryKind.DaySet, _taps.Day, ("name", "evening"));
        _taps.Tap(1000, EntryKind.RunGo, run);
        _taps.Tap(1400, EntryKind.RunStop, run);
        Assert.Null(Air(run));
        _taps.Tap(700, EntryKind.Weather, _taps.Day, ("day", _taps.Day), ("airC", 26));
        Assert.Equal((26.0, 500.0), (Air(run)!.AirC, Air(run)!.AgeS));
        _taps.Tap(2200, EntryKind.Weather, _taps.Day, ("day", _taps.Day), ("airC", 29));
        Assert.Equal(27, Air(run)!.AirC, 1e-12);
        _taps.Tap(3000, EntryKind.RunSet, run, ("airC", 25.5), ("airBy", "forecast"));
        Assert.Equal((25.5, AirSource.Forecast), (Air(run)!.AirC, Air(run)!.By));
        Guid late = _taps.Begin(9000, 2);
        _taps.Tap(9000, EntryKind.RunGo, late);
        Assert.Null(Air(late));
    }

    private RunAir? Air(Guid run) => RunAir.Of(_taps.Notebook.Find<NotedRun>(run)!, _taps.Notebook.Days.Single());
}
