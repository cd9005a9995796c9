using Coolproof.EndToEnd.Support;
using Coolproof.Notebook;
using Coolproof.Notebook.Journal;
using static Coolproof.EndToEnd.RunClock.AloneTests;

namespace Coolproof.EndToEnd.RunClock;

/// <summary>A whole day: one phone is the clock, one goes with the gun, the laptop lies on the pit table, and the bench is down for part of it.</summary>
public sealed class WholeDayTests(Chromium chromium)
{
    [Fact]
    public async Task Every_tap_of_a_day_is_there_once_and_at_its_instant()
    {
        await using var bench = await Bench.StartAsync();
        var evening = await Evening.NoteAsync(bench, driveS: 5);
        await using var clock = await Phone.OpenAsync(chromium, bench, evening.Day);
        await using var gun = await Phone.OpenAsync(chromium, bench, evening.Day, clockAheadMs: -95_000);
        await using var laptop = await Phone.OpenAsync(chromium, bench, evening.Day, laptop: true);
        await Task.WhenAll(clock.RoleAsync("clock"), gun.RoleAsync("gun"), laptop.RoleAsync("any"));

        // A warm-up, with the countdown.
        await clock.PressAsync("this-run");
        await clock.PressAsync("pick-kind");
        await clock.PressAsync("pick-warm-up");
        await clock.PressAsync("countdown");
        await clock.StepAsync("Rolling");
        await clock.PressAsync("halt");
        await clock.StepAsync("Halted");
        var warmUpHalt = clock.Pressed["halt"];
        await clock.PressAsync("shot");
        await clock.PressAsync("next-run");

        // A test run: the gun phone shoots, the laptop types.
        await clock.PressAsync("go-now");
        var go2 = clock.Pressed["go-now"];
        await clock.StepAsync("Rolling");
        await gun.StepAsync("Rolling");
        await clock.PressAsync("halt");
        var halt2 = clock.Pressed["halt"];
        await gun.StepAsync("Halted");
        await gun.PressAsync("shot");
        var shot2 = gun.Pressed["shot"];
        await gun.SentAsync();
        await laptop.StepAsync("Shooting");
        await laptop.PressShotAsync(0);
        await laptop.TypeAsync("71.2");
        await Task.WhenAll(laptop.SentAsync(), clock.SentAsync());
        await clock.Page.GetByText("71.2 °C").First.WaitForAsync();
        await clock.PressAsync("next-run");

        // A crash.
        await clock.PressAsync("fan-before-yes");
        await clock.PressAsync("go-now");
        await clock.StepAsync("Driving");
        await clock.PressAsync("abandon");
        await clock.PressAsync("pick-crash");
        await clock.StepAsync("Abandoned");
        await clock.PressAsync("next-run");

        // The bench is down: a fan dies, the run is cut short, later it is found void.
        await clock.SentAsync();
        bench.Kill();
        await clock.PressAsync("go-now");
        var go4 = clock.Pressed["go-now"];
        await clock.StepAsync("Driving");
        await clock.PressAsync("fan-dead");
        await clock.StepAsync("Rolling");
        await clock.PressAsync("halt");
        await clock.StepAsync("Halted");
        await clock.PressAsync("power-off");
        await clock.PressAsync("more");
        await clock.PressAsync("pick-void");
        Assert.Contains("on this phone only", await clock.Page.Locator("#here").InnerTextAsync(), StringComparison.Ordinal);
        await bench.GoOnAsync();
        await Task.WhenAll(clock.SentAsync(), gun.SentAsync(), laptop.SentAsync());

        var entries = await bench.EntriesAsync();
        Assert.Equal(entries.Count, entries.Select(entry => entry.Id).Distinct().Count());
        var notebook = PitNotebook.Of(entries);
        var runs = notebook.RunsOf(evening.Day);
        Assert.Equal([1, 2, 3, 4], runs.Select(run => run.Number!.Value));
        Assert.Equal([RunKind.WarmUp, RunKind.Test, RunKind.Test, RunKind.Void], runs.Select(run => run.Kind));
        Assert.Equal([evening.Bare, evening.Bare, evening.Fan, evening.Fan], runs.Select(run => run.Option!.Value)); // the plan goes on by test runs
        Near(warmUpHalt, runs[0].Halt!.At);
        Near(go2, runs[1].Go!.At);
        Near(halt2, runs[1].Halt!.At);
        Near(shot2, Assert.Single(runs[1].Shots).At!.Value);
        Assert.Equal(71.2, runs[1].Shots[0].ReadC!.Value);
        Assert.True(runs[2].Abandoned);
        Assert.InRange(runs[2].Events.Count(stamp => stamp.Kind == EntryKind.RunStop), 0, 1);
        Assert.Equal("crash", runs[2].AbandonedBecause);
        Near(go4, runs[3].Go!.At);
        Near(clock.Pressed["fan-dead"], runs[3].FanDeadAt!.Value);
        Near(clock.Pressed["power-off"], runs[3].PowerOff!.At);
        Assert.All(runs.Where(run => !run.Abandoned), run => Assert.Equal(5, run.DriveS!.Value, 0.4));
        Assert.All(runs.Where(run => !run.Abandoned), run => Assert.Equal("horn", run.Stop!.Counted.Body.Text("by")));
        // Presses of the clock phone, each kept once.
        foreach (var (kind, times) in ((string, int)[])[(EntryKind.RunBegin, 4), (EntryKind.RunGo, 3), (EntryKind.RunHalt, 3), (EntryKind.RunStop, 3), (EntryKind.RunAbandon, 1), (EntryKind.RunFanDead, 1), (EntryKind.RunPowerOff, 1), (EntryKind.Shot, 2), (EntryKind.ShotRead, 1)])
        {
            // A slow machine may let the horn of the run that crashed come before the thumb: then that one has a stop too.
            var said = entries.Where(entry => entry.Entry.Kind == kind && (kind != EntryKind.RunStop || entry.Entry.About != runs[2].Id)).ToList();
            Assert.True(times == said.Count, $"{kind}: {string.Join("; ", said.Select(entry => $"{entry.Entry.At} run {notebook.Find<NotedRun>(entry.Entry.About)?.Number} by {entry.Device} {entry.Entry.Body.Json()}"))}");
        }
    }
}
