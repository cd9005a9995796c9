using Coolproof.EndToEnd.Support;
using Microsoft.Playwright;
using NodaTime;
using static Coolproof.EndToEnd.RunClock.AloneTests;

namespace Coolproof.EndToEnd.RunClock;

/// <summary>Whatever dies, every tap is there once, at the instant of the press.</summary>
public sealed class NothingIsLostTests(Chromium chromium)
{
    static BrowserTypeLaunchPersistentContextOptions OfAPhone => new() { ViewportSize = new() { Width = 390, Height = 844 }, HasTouch = true, IsMobile = true };

    [Fact]
    public async Task A_bench_that_dies_in_a_run_and_a_page_that_is_loaded_anew_meanwhile_lose_nothing()
    {
        await using var bench = await Bench.StartAsync();
        var evening = await Evening.NoteAsync(bench, driveS: 60);
        await using var phone = await Phone.OpenAsync(chromium, bench, evening.Day);
        await phone.RoleAsync("any");
        await phone.KeptForOfflineAsync();
        await phone.PressAsync("go-now");
        await phone.StepAsync("Driving");
        await phone.SentAsync();

        bench.Kill();
        await phone.PressAsync("lap");
        await phone.Page.Locator("#here").GetByText("1 on this phone only").WaitForAsync();
        await phone.ReloadAsync(); // out of the service worker's store, with nobody to ask
        await phone.StepAsync("Driving");
        var elapsed = (SystemClock.Instance.GetCurrentInstant() - phone.Pressed["go-now"]).TotalSeconds;
        Assert.Equal(60 - elapsed, await phone.DigitsAsync(), 2.0);
        await phone.PressAsync("stop");
        await phone.StepAsync("Rolling");
        await phone.PressAsync("halt");
        await phone.StepAsync("Halted");
        await phone.PressAsync("shot");
        await phone.StepAsync("Shooting");
        await phone.LosePageAsync(evening.Day);
        await phone.StepAsync("Shooting");

        await bench.GoOnAsync();
        await phone.SentAsync();
        var notebook = await bench.NotebookAsync();
        var run = Assert.Single(notebook.RunsOf(evening.Day));
        Near(phone.Pressed["go-now"], run.Go!.At);
        Near(phone.Pressed["lap"], Assert.Single(run.LapTimes));
        Near(phone.Pressed["stop"], run.Stop!.At);
        Near(phone.Pressed["halt"], run.Halt!.At);
        Near(phone.Pressed["shot"], Assert.Single(run.Shots).At!.Value);
    }

    [Fact]
    public async Task A_phone_whose_clock_is_wrong_and_puts_itself_right_within_a_run_stamps_right()
    {
        await using var bench = await Bench.StartAsync();
        var evening = await Evening.NoteAsync(bench, driveS: 60);
        await using var phone = await Phone.OpenAsync(chromium, bench, evening.Day, clockAheadMs: 200_000);
        await phone.RoleAsync("any");
        await phone.PressAsync("go-now");
        await phone.StepAsync("Driving");
        await phone.SentAsync();
        await phone.OfflineAsync(true);
        await phone.SetClockAheadAsync(0);
        await phone.PressAsync("stop");
        await phone.StepAsync("Rolling");
        await phone.SetClockAheadAsync(-30_000);
        await phone.PressAsync("halt");
        await phone.StepAsync("Halted");
        await phone.PressAsync("shot");
        await phone.StepAsync("Shooting");
        await phone.OfflineAsync(false);
        await phone.SentAsync();

        var run = Assert.Single((await bench.NotebookAsync()).RunsOf(evening.Day));
        Near(phone.Pressed["go-now"], run.Go!.At);
        Near(phone.Pressed["stop"], run.Stop!.At);
        Near(phone.Pressed["halt"], run.Halt!.At);
        Near(phone.Pressed["shot"], Assert.Single(run.Shots).At!.Value);
    }

    [Fact]
    public async Task A_photo_taken_offline_is_a_shot_at_once_and_comes_to_the_bench_after_the_readings()
    {
        await using var bench = await Bench.StartAsync();
        var evening = await Evening.NoteAsync(bench, driveS: 60);
        await using var phone = await Phone.OpenAsync(chromium, bench, evening.Day);
        await phone.RoleAsync("any");
        await phone.PressAsync("go-now");
        await phone.StepAsync("Driving");
        await phone.OfflineAsync(true);
        await phone.PressAsync("stop");
        await phone.StepAsync("Rolling");
        await phone.PressAsync("halt");
        await phone.StepAsync("Halted");
        var display = await phone.Page.ScreenshotAsync(new() { Type = ScreenshotType.Jpeg });
        var camera = await phone.Page.RunAndWaitForFileChooserAsync(() => phone.PressAsync("shot-photo"));
        await camera.SetFilesAsync(new FilePayload { Name = "display.jpg", MimeType = "image/jpeg", Buffer = display });
        await phone.Page.GetByText("photo: type the number").WaitForAsync();
        // A camera that takes the page's memory: the shot was kept before it opened.
        _ = await phone.Page.RunAndWaitForFileChooserAsync(() => phone.PressAsync("shot-photo"));
        await phone.Shots.Nth(1).WaitForAsync();
        await phone.OfflineAsync(false);
        await phone.SentAsync();
        await phone.LosePageAsync(evening.Day);
        await phone.Page.Locator("[data-ask=camera]").GetByText("the camera closed this page").WaitForAsync();

        var run = Assert.Single((await bench.NotebookAsync()).RunsOf(evening.Day));
        Assert.Equal(2, run.Shots.Count);
        Near(phone.Pressed["shot-photo"], run.Shots[1].At!.Value);
        Assert.Null(run.Shots[1].Photo);
        var photo = await bench.PhotoAsync(run.Shots[0].Photo!.Value);
        Assert.NotNull(photo);
        Assert.Equal("image/jpeg", photo.MediaType);
        Assert.InRange(photo.Bytes.Length, 1, 500_000);
    }

    [Fact]
    public async Task What_the_bench_refuses_is_set_aside_with_the_reason_and_holds_nothing_up()
    {
        await using var bench = await Bench.StartAsync();
        var evening = await Evening.NoteAsync(bench, driveS: 60);
        await using var phone = await Phone.OpenAsync(chromium, bench, evening.Day);
        await phone.RoleAsync("any");
        await phone.HoldAsync(evening.Day, "run.dance"); // as a page newer than the bench would
        await phone.ReloadAsync();
        await phone.PressAsync("go-now");
        await phone.StepAsync("Driving");
        await phone.Page.Locator("#refused").GetByText("1 entry refused").WaitForAsync();
        await phone.SentAsync();
        Assert.NotNull(Assert.Single((await bench.NotebookAsync()).RunsOf(evening.Day)).Go);

        await phone.PressAsync("counts");
        await phone.Page.Locator("#sheet").GetByText("unknown: run.dance").WaitForAsync();
        var copy = await phone.Page.RunAndWaitForDownloadAsync(() => phone.PressAsync("save-copy"));
        Assert.Contains("run.dance", await File.ReadAllTextAsync(await copy.PathAsync(), TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task A_browser_that_is_killed_in_a_run_goes_on_with_it()
    {
        await using var bench = await Bench.StartAsync();
        var evening = await Evening.NoteAsync(bench, driveS: 60);
        var profile = Directory.CreateTempSubdirectory("coolproof-profile-").FullName;
        Instant pressed;
        var first = await chromium.WithProfileAsync(profile, OfAPhone);
        var phone = await Phone.OpenAsync(first, bench, evening.Day, leadS: 3, clockAheadMs: 0, touch: true);
        await phone.RoleAsync("any");
        bench.Kill();
        await phone.PressAsync("go-now");
        await phone.StepAsync("Driving");
        pressed = phone.Pressed["go-now"];
        ProfileProcesses.Kill(profile);

        await bench.GoOnAsync();
        var second = await chromium.WithProfileAsync(profile, OfAPhone);
        await using (var again = await Phone.OpenAsync(second, bench, evening.Day, leadS: 3, clockAheadMs: 0, touch: true))
        {
            await again.StepAsync("Driving");
            Assert.Equal(60 - (SystemClock.Instance.GetCurrentInstant() - pressed).TotalSeconds, await again.DigitsAsync(), 2.0);
            await again.SentAsync();
        }
        Near(pressed, Assert.Single((await bench.NotebookAsync()).RunsOf(evening.Day)).Go!.At);
        Directory.Delete(profile, recursive: true);
    }
}
