using Coolproof.EndToEnd.Support;
using Coolproof.Notebook.Journal;
using NodaTime;

namespace Coolproof.EndToEnd.RunClock;

/// <summary>Alone at the track: both hands on the transmitter, one phone on the pit table.</summary>
public sealed class AloneTests(Chromium chromium)
{
    [Fact]
    public async Task One_tap_counts_down_and_the_horn_ends_hard_driving()
    {
        await using var bench = await Bench.StartAsync();
        var evening = await Evening.NoteAsync(bench, driveS: 4);
        await using var phone = await Phone.OpenAsync(chromium, bench, evening.Day);
        await phone.RoleAsync("any");
        await phone.PressAsync("countdown");
        await phone.StepAsync("CountingDown");
        await phone.StepAsync("Driving");
        await phone.StepAsync("Rolling");
        // The driver puts the transmitter down some seconds after the car stood.
        await phone.Act("halt-10").WaitForAsync();
        await phone.PressAsync("halt-10");
        await phone.StepAsync("Halted");
        await phone.ShootAsync(0);
        await phone.ShootAsync(1);

        // Typing that takes its time never moves a stamp.
        await phone.PressShotAsync(0);
        await phone.TypeAsync("66.5", betweenMs: 2_500);
        await phone.PressShotAsync(1);
        await phone.TypeAsync("65");
        await phone.StepAsync("Done");
        await phone.SentAsync();

        var notebook = await bench.NotebookAsync();
        var run = Assert.Single(notebook.RunsOf(evening.Day));
        Assert.Equal(evening.Bare, run.Option);
        Near(phone.Pressed["countdown"] + Duration.FromSeconds(3), run.Go!.At);
        Assert.Equal(4, run.DriveS!.Value, 0.25);
        Assert.Equal("horn", run.Stop!.Counted.Body.Text("by"));
        Near(phone.Pressed["halt-10"] - Duration.FromSeconds(10), run.Halt!.At);
        Assert.Equal([66.5, 65.0], run.Shots.Select(shot => shot.ReadC!.Value));
        Near(phone.Pressed["shot"], run.Shots[1].At!.Value);
        Assert.All(run.Shots, shot => Assert.Equal(evening.Gun, shot.Instrument));
        Assert.Equal(RunStep.Done, RunNow.Of(run, SystemClock.Instance.GetCurrentInstant(), 2).Step);
    }

    [Fact]
    public async Task A_key_or_foot_switch_does_the_next_step_and_its_bounce_does_nothing()
    {
        await using var bench = await Bench.StartAsync();
        var evening = await Evening.NoteAsync(bench, driveS: 60);
        await using var phone = await Phone.OpenAsync(chromium, bench, evening.Day);
        await phone.RoleAsync("any");
        // The finger that answered has left the focus on the large button: the key must not press it a second time.
        await phone.Page.Keyboard.PressAsync(" ");
        await phone.StepAsync("CountingDown");
        await phone.Page.Keyboard.PressAsync(" "); // go comes by itself: a key does nothing now
        await phone.StepAsync("Driving");
        await Task.Delay(1_200);
        await phone.Page.Keyboard.PressAsync(" ");
        await phone.Page.Keyboard.PressAsync(" "); // the switch bounces
        await phone.StepAsync("Rolling");
        await Task.Delay(1_200);
        await phone.Page.Keyboard.PressAsync("Enter");
        await phone.StepAsync("Halted");
        await Task.Delay(1_200);
        await phone.Page.Keyboard.PressAsync("PageDown");
        await phone.StepAsync("Shooting");
        await phone.SentAsync();

        var run = Assert.Single((await bench.NotebookAsync()).RunsOf(evening.Day));
        Assert.Equal(["run.countdown", "run.stop", "run.halt"], run.Events.Where(stamp => stamp.Kind != EntryKind.RunBegin).Select(stamp => stamp.Kind));
        Assert.Single(run.Shots);
    }

    [Fact]
    public async Task A_fan_that_stands_a_crash_laps_and_a_short_run_are_one_tap_each()
    {
        await using var bench = await Bench.StartAsync();
        var evening = await Evening.NoteAsync(bench, driveS: 60);
        await using var phone = await Phone.OpenAsync(chromium, bench, evening.Day);
        await phone.RoleAsync("any");
        await phone.PressAsync("option");
        await phone.PressAsync($"pick-{evening.Fan}");
        await phone.PressAsync("fan-before-yes");
        await phone.PressAsync("go-now");
        await phone.StepAsync("Driving");
        await phone.PressAsync("lap");
        await phone.PressAsync("down");
        await phone.StepAsync("Down");
        await phone.PressAsync("up");
        await phone.StepAsync("Driving");
        await phone.PressAsync("fan-dead");
        await phone.PressAsync("stop");
        await phone.StepAsync("Rolling");
        await phone.PressAsync("halt");
        await phone.StepAsync("Halted");
        await phone.PressAsync("power-off");
        await phone.PressAsync("fan-after-no");
        await phone.PressAsync("say-why");
        await phone.PressAsync("pick-controller");
        await phone.SentAsync();

        var run = Assert.Single((await bench.NotebookAsync()).RunsOf(evening.Day));
        Assert.Equal(evening.Fan, run.Option);
        Near(phone.Pressed["go-now"], run.Go!.At);
        Near(phone.Pressed["stop"], run.Stop!.At);
        Near(phone.Pressed["halt"], run.Halt!.At);
        Near(phone.Pressed["power-off"], run.PowerOff!.At);
        Assert.Equal((phone.Pressed["stop"] - phone.Pressed["go-now"]).TotalSeconds, run.DriveS!.Value, 1.0); // at its true length
        Near(phone.Pressed["fan-dead"], run.FanDeadAt!.Value);
        var still = Assert.Single(run.StandStills);
        Near(phone.Pressed["down"], still.Down);
        Near(phone.Pressed["up"], still.Up!.Value);
        Near(phone.Pressed["lap"], Assert.Single(run.LapTimes));
        Assert.True(run.FanTurnedBefore);
        Assert.False(run.FanTurnedAfter);
        Assert.Equal("controller", run.Fields.Text("cutShort"));
    }

    internal static void Near(Instant pressed, Instant noted) => Assert.True(Math.Abs((noted - pressed).TotalSeconds) <= 1, $"pressed {pressed}, noted {noted}");
}
