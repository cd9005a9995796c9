using Coolproof.EndToEnd.Support;
using NodaTime;

namespace Coolproof.EndToEnd.RunClock;

/// <summary>What starts, stops or halts a run is pressed firmly, by one finger; nothing else does it.</summary>
public sealed class PressTests(Chromium chromium)
{
    [Fact]
    public async Task Taps_double_taps_drags_swipes_and_two_fingers_never_stop_a_run_and_a_firm_press_does()
    {
        await using var bench = await Bench.StartAsync();
        var evening = await Evening.NoteAsync(bench, driveS: 120);
        await using var phone = await Phone.OpenAsync(chromium, bench, evening.Day);
        await phone.RoleAsync("any");
        await phone.PressAsync("go-now", restMs: 60); // too short
        await phone.Page.Locator("#said").GetByText("hold it for half a second").WaitForAsync(new() { State = Microsoft.Playwright.WaitForSelectorState.Attached });
        Assert.Equal("Ready", await phone.StepNowAsync());
        await phone.PressAsync("go-now");
        await phone.StepAsync("Driving");

        await phone.PressAsync("stop", restMs: 80);
        var stop = await phone.Act("stop").BoundingBoxAsync() ?? throw new InvalidOperationException("no stop");
        var (x, y) = (stop.X + (stop.Width / 2), stop.Y + (stop.Height / 2));
        await phone.FingerAsync(x, y, 60); // two taps in a row
        await phone.FingerAsync(x, y, 60);
        await phone.TouchAsync("touchStart", (x, y)); // two fingers
        await phone.TouchAsync("touchStart", (x, y), (x - 100, y));
        await Task.Delay(800, TestContext.Current.CancellationToken);
        await phone.TouchAsync("touchEnd");
        await phone.TouchAsync("touchStart", (x, y)); // a drag that ends on the button
        for (var step = 1; step <= 8; step++) await phone.TouchAsync("touchMove", (x - (step * 12), y));
        await Task.Delay(700, TestContext.Current.CancellationToken);
        await phone.TouchAsync("touchEnd");
        await phone.TouchAsync("touchStart", (1, y)); // a swipe in from the edge
        for (var step = 1; step <= 10; step++) await phone.TouchAsync("touchMove", (step * 30, y));
        await phone.TouchAsync("touchEnd");
        await phone.FingerAsync(x, y, 4_300); // a puddle that stays
        Assert.Equal("Driving", await phone.StepNowAsync());

        await phone.PressAsync("stop");
        await phone.StepAsync("Rolling");
        await phone.FingerAsync(x, y, 650, phone.Pressed["stop"] + Duration.FromMilliseconds(800)); // a second firm press at once meets a button that is too new
        Assert.Equal("Rolling", await phone.StepNowAsync());
    }

    [Theory]
    [InlineData(1, 150)]
    public async Task Rain_never_ends_a_run(int seed, int drops)
    {
        await using var bench = await Bench.StartAsync();
        var evening = await Evening.NoteAsync(bench, driveS: 600);
        await using var phone = await Phone.OpenAsync(chromium, bench, evening.Day);
        await phone.RoleAsync("any");
        await phone.PressAsync("go-now");
        await phone.StepAsync("Driving");
        var rain = new Random(seed);
        for (var drop = 0; drop < drops; drop++)
        {
            // Drops are short, or several at once; half fall on the lower half, where the large button is.
            var points = Enumerable.Range(0, rain.Next(4) == 0 ? 2 : 1).Select(_ => (rain.NextDouble() * 390, rain.Next(2) == 0 ? rain.NextDouble() * 844 : 500 + (rain.NextDouble() * 344))).ToArray();
            await phone.RestAsync(SystemClock.Instance.GetCurrentInstant(), points.Length > 1 ? rain.Next(20, 700) : (int)Math.Min(400, -60 * Math.Log(1 - rain.NextDouble())), points);
            if (phone.Page.Url.Contains("/clock/", StringComparison.Ordinal)) continue;
            await phone.ToClockAsync(evening.Day); // a drop on the link to the day
        }
        await phone.SentAsync();
        var run = Assert.Single((await bench.NotebookAsync()).RunsOf(evening.Day));
        Assert.Null(run.Stop);
        Assert.Null(run.Halt);
        Assert.False(run.Abandoned);
        Assert.False(run.Removed);
    }
}
