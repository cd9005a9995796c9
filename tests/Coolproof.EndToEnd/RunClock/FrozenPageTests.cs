using Coolproof.EndToEnd.Support;
using NodaTime;
using static Coolproof.EndToEnd.RunClock.AloneTests;

namespace Coolproof.EndToEnd.RunClock;

/// <summary>A page that stood still while the horn was due: it says so, shows the right time, and the stop is set back.</summary>
public sealed class FrozenPageTests(Chromium chromium)
{
    [Fact]
    public Task A_page_that_the_browser_freezes_in_a_run_goes_on_right() => FrozenAsync(TimeSpan.FromSeconds(30));

    [Fact]
    [Trait("Suite", "long")]
    public Task A_page_that_the_browser_freezes_for_four_minutes_in_a_run_goes_on_right() => FrozenAsync(TimeSpan.FromMinutes(4));

    async Task FrozenAsync(TimeSpan during)
    {
        await using var bench = await Bench.StartAsync();
        var evening = await Evening.NoteAsync(bench, driveS: 5);
        using var browser = await OrdinaryBrowser.StartAsync();
        var phone = await Phone.OpenAsync(await chromium.ConnectAsync(browser), bench, evening.Day, leadS: 3, clockAheadMs: 0, touch: false);
        await BeginAsync(phone);
        await phone.FreezeAsync(during);

        await SetBackAsync(phone);
        await phone.PressAsync("halt");
        await phone.StepAsync("Halted");
        await phone.PressAsync("shot");
        await phone.StepAsync("Shooting");
        await phone.SentAsync();
        Assert.True(await phone.LongestPauseAsync() > during.TotalSeconds - 5, "the page did not stand still");
        var run = Assert.Single((await bench.NotebookAsync()).RunsOf(evening.Day));
        Near(phone.Pressed["go-now"], run.Go!.At);
        Assert.Equal(5, run.DriveS!.Value, 0.3);
        Near(phone.Pressed["halt"], run.Halt!.At);
        Near(phone.Pressed["shot"], Assert.Single(run.Shots).At!.Value);
        Assert.Empty(phone.Errors);
    }

    [Fact]
    public async Task A_page_whose_process_stands_still_in_a_run_goes_on_right()
    {
        await using var bench = await Bench.StartAsync();
        var evening = await Evening.NoteAsync(bench, driveS: 5);
        var profile = Directory.CreateTempSubdirectory("coolproof-profile-").FullName;
        var windows = await chromium.WithProfileAsync(profile, new() { ViewportSize = new() { Width = 390, Height = 844 }, HasTouch = true, IsMobile = true });
        await using var phone = await Phone.OpenAsync(windows, bench, evening.Day, leadS: 3, clockAheadMs: 0, touch: true);
        await BeginAsync(phone);
        ProfileProcesses.Freeze(profile, frozen: true);
        await Task.Delay(TimeSpan.FromSeconds(9), TestContext.Current.CancellationToken);
        ProfileProcesses.Freeze(profile, frozen: false);

        await SetBackAsync(phone);
        await phone.SentAsync();
        var run = Assert.Single((await bench.NotebookAsync()).RunsOf(evening.Day));
        Assert.Equal(5, run.DriveS!.Value, 0.3);
        Assert.Equal("later", run.Stop!.Counted.Body.Text("by"));
    }

    static async Task BeginAsync(Phone phone)
    {
        await phone.RoleAsync("any");
        await phone.NotePausesAsync();
        await phone.PressAsync("go-now");
        await phone.StepAsync("Driving");
        await phone.SentAsync();
    }

    static async Task SetBackAsync(Phone phone)
    {
        await phone.Page.Locator("[data-ask=missed]").GetByText("The horn was missed").WaitForAsync();
        Assert.Equal("Driving", await phone.StepNowAsync());
        Assert.Equal((SystemClock.Instance.GetCurrentInstant() - phone.Pressed["go-now"]).TotalSeconds, await phone.DigitsAsync(), 2.0);
        await phone.PressAsync("missed-planned");
        await phone.StepAsync("Rolling");
    }
}
