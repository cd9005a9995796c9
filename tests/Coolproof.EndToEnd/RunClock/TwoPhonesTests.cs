using Coolproof.EndToEnd.Support;
using static Coolproof.EndToEnd.RunClock.AloneTests;

namespace Coolproof.EndToEnd.RunClock;

/// <summary>Two people, each with a phone.</summary>
public sealed class TwoPhonesTests(Chromium chromium)
{
    [Fact]
    public async Task Both_stops_are_kept_the_clocks_counts_and_one_tap_lets_the_other_count()
    {
        await using var bench = await Bench.StartAsync();
        var evening = await Evening.NoteAsync(bench, driveS: 60);
        await using var driver = await Phone.OpenAsync(chromium, bench, evening.Day);
        await using var clock = await Phone.OpenAsync(chromium, bench, evening.Day);
        await driver.RoleAsync("driver");
        await clock.RoleAsync("clock");
        await driver.PressAsync("go-now");
        await clock.StepAsync("Driving"); // the other phone follows by itself
        await clock.OfflineAsync(true); // so that neither sees the other's stop
        await driver.PressAsync("stop");
        await driver.StepAsync("Rolling");
        await Task.Delay(1_000, TestContext.Current.CancellationToken);
        await clock.PressAsync("stop");
        await clock.StepAsync("Rolling");
        await clock.OfflineAsync(false);
        await clock.PressAsync("halt");
        await clock.StepAsync("Halted");
        await clock.PressAsync("shot");
        await Task.WhenAll(clock.SentAsync(), driver.SentAsync());

        var run = Assert.Single((await bench.NotebookAsync()).RunsOf(evening.Day));
        Near(clock.Pressed["stop"], run.Stop!.At);
        Near(driver.Pressed["stop"], Assert.Single(run.Stop.Others).At);
        Assert.Equal((clock.Pressed["stop"] - driver.Pressed["stop"]).TotalSeconds, run.Stop.SpreadS, 0.5);

        var other = run.Stop.Others[0].Entry;
        await clock.Page.GetByText("two phones differ by").WaitForAsync();
        await clock.PressAsync($"take-{other}");
        await clock.Act($"take-{other}").WaitForAsync(new() { State = Microsoft.Playwright.WaitForSelectorState.Detached });
        await clock.SentAsync();
        run = Assert.Single((await bench.NotebookAsync()).RunsOf(evening.Day));
        Near(driver.Pressed["stop"], run.Stop!.At);
        Assert.True(run.Stop.Chosen);
    }

    [Fact]
    public async Task Two_phones_that_both_began_a_run_offline_are_asked_whether_it_is_one()
    {
        await using var bench = await Bench.StartAsync();
        var evening = await Evening.NoteAsync(bench, driveS: 3);
        await using var one = await Phone.OpenAsync(chromium, bench, evening.Day);
        await using var two = await Phone.OpenAsync(chromium, bench, evening.Day);
        await one.RoleAsync("clock");
        await two.RoleAsync("gun");
        await Task.WhenAll(one.SentAsync(), two.SentAsync());
        await Task.WhenAll(one.OfflineAsync(true), two.OfflineAsync(true));
        await Task.WhenAll(one.PressAsync("go-now"), two.PressAsync("go-now"));
        await Task.WhenAll(one.StepAsync("Rolling"), two.StepAsync("Rolling"));
        await one.PressAsync("halt");
        await two.PressAsync("shot");
        await Task.WhenAll(one.OfflineAsync(false), two.OfflineAsync(false));
        await Task.WhenAll(one.SentAsync(), two.SentAsync());

        var notebook = await bench.NotebookAsync();
        Assert.Equal(2, notebook.RunsOf(evening.Day).Count);
        var offer = Assert.Single(notebook.Offers(evening.Day));
        await two.Page.GetByText("Two phones began run 1").WaitForAsync();
        await two.PressAsync($"same-{offer.A}-{offer.B}");
        await two.Page.GetByText("Two phones began run 1").WaitForAsync(new() { State = Microsoft.Playwright.WaitForSelectorState.Detached });
        await two.SentAsync();

        var run = Assert.Single((await bench.NotebookAsync()).RunsOf(evening.Day));
        Assert.Single(run.OtherIds);
        Near(one.Pressed["go-now"], run.Go!.At); // the clock's counts
        Near(one.Pressed["halt"], run.Halt!.At);
        Near(two.Pressed["shot"], Assert.Single(run.Shots).At!.Value);
    }
}
