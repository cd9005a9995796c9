using System.Globalization;
using Coolproof.EndToEnd.Pages;
using Coolproof.EndToEnd.Support;
using Coolproof.Notebook.Journal;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using NodaTime;

namespace Coolproof.EndToEnd.Sensors;

/// <summary>A live rehearsal with three made-up sensors, one of which is unplugged midway: nothing that was sent is lost, the gap is shown, and the picture moves.</summary>
public sealed class LiveRehearsalTests(Chromium chromium)
{
    [Fact]
    public async Task Three_sensors_one_unplugged_midway_nothing_lost_the_gap_shown_and_the_picture_moves()
    {
        var brokerPort = Bench.FreePort();
        await using var bench = await Bench.StartAsync(one => ["--serial", one.File("ours") + "@115200", "--mqtt", $"127.0.0.1:{brokerPort}/stand/#"]);
        var phone = await PitTable.OpenAsync(chromium, bench);
        var key = (await phone.Context.CookiesAsync()).Single(cookie => cookie.Name == "coolproof-key");
        await using var stand = await Stand.SetUpAsync(bench, brokerPort, $"coolproof-key={key.Value}");
        await stand.PlugInAsync();
        var (day, now) = (Guid.CreateVersion7(), Instant.FromDateTimeOffset(DateTimeOffset.UtcNow));
        await bench.KeepAsync(Guid.CreateVersion7(), new Entry(Guid.CreateVersion7(), EntryKind.DaySet, now, day, null, EntryBody.Of(("name", "made-up stand"), ("date", now.InUtc().Date.ToString("uuuu-MM-dd", CultureInfo.InvariantCulture)))));
        do await phone.GotoAsync($"/day/{day}"); // the server follows a moment later what another program noted
        while (await phone.Locator("#sensors").CountAsync() == 0);
        var laptop = await PitTable.OpenAsync(chromium, bench, theme: "dark", wide: true);
        await laptop.GotoAsync("/sensors");
        await Assertions.Expect(Cut(laptop)).ToHaveCountAsync(0);
        stand.BeginLine();

        // All three are heard; the picture moves without a reload.
        await phone.EvaluateAsync("() => { window.kept = true; }");
        await DriveAsync(stand, 0, 25);
        var can = Card(phone, "can");
        await can.WaitForAsync();
        await Card(phone, "air").WaitForAsync();
        await Card(phone, "pack").WaitForAsync();
        var before = await can.Locator(".trace").GetAttributeAsync("d");
        await DriveAsync(stand, 25, 25);
        await Assertions.Expect(can.Locator("[data-value]")).ToHaveTextAsync(Text(CanAt(49)));
        Assert.NotEqual(before, await can.Locator(".trace").GetAttributeAsync("d"));
        await Assertions.Expect(can.Locator("[data-breaks]")).ToHaveTextAsync("");

        // Its cable is pulled: the others go on, the gap is shown, the source says what to do.
        await WaitKeptAsync(bench, phone, stand);
        stand.Unplug();
        for (var i = 50; await can.GetAttributeAsync("data-state") != "silent" && i < 400; i++) await DriveAsync(stand, i, 1);
        await Assertions.Expect(can).ToHaveAttributeAsync("data-state", "silent");
        await Assertions.Expect(can.Locator("[data-breaks]")).ToHaveTextAsync("1 gap");
        await Assertions.Expect(Card(phone, "pack")).ToHaveAttributeAsync("data-state", "live");
        await Assertions.Expect(laptop.GetByText("Plug it in")).ToBeVisibleAsync();
        Assert.Empty((await phone.RunAxe()).Violations);
        Assert.Empty((await laptop.RunAxe()).Violations);
        await ShotsAsync(phone, laptop, "silent");

        // It is plugged in again: heard again, and the gap stays in the picture.
        await stand.PlugInAsync();
        await Assertions.Expect(Cut(laptop)).ToHaveCountAsync(0);
        stand.BeginLine();
        var again = DriveAsync(stand, 400, 50);
        await Assertions.Expect(can).ToHaveAttributeAsync("data-state", "live");
        await Assertions.Expect(can.Locator("[data-breaks]")).ToHaveTextAsync("1 gap");
        Assert.NotEqual("", await can.Locator(".gap").GetAttributeAsync("d"));
        await again;

        // The bench dies and starts again: what was posted meanwhile is sent again, and kept once.
        await WaitKeptAsync(bench, phone, stand);
        stand.Unplug();
        bench.Kill();
        await stand.SendAsync(0, 25, 7.4);
        await bench.GoOnAsync();
        while (!await stand.PostAsync()) await Task.Delay(200, TestContext.Current.CancellationToken);
        var driving = DriveAsync(stand, 460, 75);
        await Assertions.Expect(Card(phone, "pack")).ToHaveAttributeAsync("data-state", "live");
        await driving;
        await WaitKeptAsync(bench, phone, stand, but: "air"); // what is published while nobody listens is nobody's: the broker holds it for a connection that was cut, not for a machine that died
        Assert.True(await phone.EvaluateAsync<bool>("() => window.kept"));
        await ShotsAsync(phone, laptop, "again");
        await phone.Context.CloseAsync();
        await laptop.Context.CloseAsync();
    }

    static ILocator Card(IPage page, string name) => page.Locator($"[data-channel^='{name}-']");

    static ILocator Cut(IPage page) => page.Locator(".sources li").Filter(new() { HasText = "serial ours" }).GetByText("not connected");

    static double CanAt(int step) => Math.Round(80 - (50 * Math.Exp(-step / 60.0)), 1);

    static string Text(double value) => value.ToString("0.0", CultureInfo.InvariantCulture);

    // Five a second.
    static async Task DriveAsync(Stand stand, int from, int count)
    {
        for (var i = from; i < from + count; i++)
        {
            await stand.SendAsync(CanAt(i), Math.Round(24 + (0.02 * i), 2), Math.Round(8.2 - (0.002 * i), 3));
            await Task.Delay(200, TestContext.Current.CancellationToken);
        }
    }

    // Nothing lost, nothing twice, in the order in which it was sent.
    static async Task WaitKeptAsync(Bench bench, IPage page, Stand stand, string? but = null)
    {
        Dictionary<string, List<double>> kept = [];
        for (var end = DateTime.UtcNow.AddSeconds(30); DateTime.UtcNow < end; await Task.Delay(200, TestContext.Current.CancellationToken))
        {
            kept = await KeptAsync(bench, page);
            if (stand.Sent.All(one => one.Key == but || kept.GetValueOrDefault(one.Key)?.SequenceEqual(one.Value) == true)) return;
        }
        foreach (var (name, values) in stand.Sent.Where(one => one.Key != but)) Assert.Equal(values, kept.GetValueOrDefault(name) ?? []);
    }

    static async Task<Dictionary<string, List<double>>> KeptAsync(Bench bench, IPage page)
    {
        var now = DateTimeOffset.UtcNow.ToUnixTimeMilliseconds();
        var answer = await page.APIRequest.GetAsync($"{bench.Origin}/api/traces?from={now - 3_600_000}&to={now + 10_000}");
        return (await answer.TextAsync()).Split("\r\n", StringSplitOptions.RemoveEmptyEntries).Skip(1).Select(line => line.Split(','))
            .Where(cells => cells[6].Length == 0).GroupBy(cells => cells[3]).ToDictionary(group => group.Key, group => group.Select(cells => double.Parse(cells[5], CultureInfo.InvariantCulture)).ToList());
    }

    // For who wants to see it: COOLPROOF_SHOTS names a folder.
    static async Task ShotsAsync(IPage phone, IPage laptop, string name)
    {
        if (Environment.GetEnvironmentVariable("COOLPROOF_SHOTS") is not { Length: > 0 } folder) return;
        await phone.ScreenshotAsync(new() { Path = Path.Combine(folder, $"{name}-phone.png"), FullPage = true });
        await laptop.ScreenshotAsync(new() { Path = Path.Combine(folder, $"{name}-laptop.png"), FullPage = true });
    }
}
