using System.Globalization;
using System.Text;
using Coolproof.EndToEnd.Pages;
using Coolproof.EndToEnd.Support;
using Coolproof.Notebook.Journal;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using NodaTime;

namespace Coolproof.EndToEnd.Sensors;

/// <summary>What sensors told while a run was driven stands on its page: in figures, as a picture with its gap, and as a table to take along.</summary>
public sealed class RunTracesTests(Chromium chromium)
{
    const int DriveS = 60, AfterS = 60;

    [Theory]
    [InlineData(false, "light")]
    [InlineData(false, "dark")]
    [InlineData(true, "light")]
    [InlineData(true, "dark")]
    public async Task A_runs_page_shows_what_the_sensors_told_while_it_was_driven(bool wide, string theme)
    {
        await using var bench = await Bench.StartAsync();
        var (day, run) = (Guid.CreateVersion7(), Guid.CreateVersion7());
        var now = SystemClock.Instance.GetCurrentInstant();
        var go = now - Duration.FromSeconds(DriveS + AfterS + 30);
        var device = Guid.CreateVersion7();
        await bench.KeepAsync(device, Of(EntryKind.DaySet, day, go, ("name", "made-up stand"), ("date", "2026-06-13")), Of(EntryKind.RunBegin, run, go, ("day", day), ("number", 1)),
            Of(EntryKind.RunGo, run, go), Of(EntryKind.RunStop, run, go + Duration.FromSeconds(DriveS)), Of(EntryKind.RunHalt, run, go + Duration.FromSeconds(DriveS)));
        var page = await PitTable.OpenAsync(chromium, bench, theme, wide);
        // A can that warms while driven and cools after; the pack's wire comes off for twenty seconds.
        var lines = new StringBuilder();
        for (var s = -10; s <= DriveS + AfterS; s += 2)
        {
            var at = (go + Duration.FromSeconds(s)).ToUnixTimeMilliseconds();
            var can = s < 0 ? 30 : s <= DriveS ? 30 + (40 * (1 - Math.Exp(-s / 40.0))) : 61 - (0.2 * (s - DriveS));
            lines.Append(CultureInfo.InvariantCulture, $"can {can:0.0} °C @{at}\npack {(s is > 20 and < 40 ? "nan" : $"{8.2 - (0.004 * s):0.00}".Replace(',', '.'))} V @{at}\n");
        }
        var answer = await page.APIRequest.PostAsync($"{bench.Origin}/api/live?source=stand", new() { Data = lines.ToString(), Headers = new Dictionary<string, string> { ["Content-Type"] = "text/plain" } });
        Assert.True(answer.Ok, await answer.TextAsync());

        do await page.GotoAsync($"/run/{run}"); // the server follows a moment later what another program noted
        while (await page.Locator("#traces .sensor").CountAsync() < 2);
        var (hot, volts) = (page.Locator("#traces .sensor").Filter(new() { HasText = "can http" }), page.Locator("#traces .sensor").Filter(new() { HasText = "pack http" }));
        Assert.Matches(@"66 values, 30\.0 to 61\.\d °C", (await hot.InnerTextAsync()).Replace('\u00a0', ' '));
        Assert.Contains("9 that can’t be right", await volts.InnerTextAsync());
        var picture = await hot.Locator(".moving").BoundingBoxAsync();
        Assert.True(picture is { Width: > 200, Height: > 60 });
        Assert.NotEqual("", await hot.Locator(".trace").GetAttributeAsync("d"));
        await Looked.AtAsync(page, "run with sensors", wide, theme);
        Assert.Empty((await page.RunAxe()).Violations);
        Assert.True(await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth - innerWidth") <= 0);
        var taken = await page.RunAndWaitForDownloadAsync(() => page.GetByRole(AriaRole.Link, new() { Name = "Traces as a table (CSV)" }).ClickAsync());
        var table = await File.ReadAllLinesAsync(await taken.PathAsync(), TestContext.Current.CancellationToken);
        Assert.Equal(2 * 66, table.Length - 1);
        Assert.Equal(9, table.Count(line => line.EndsWith(",nonsense", StringComparison.Ordinal)));
        await page.Context.CloseAsync();
    }

    static Entry Of(string kind, Guid about, Instant at, params (string Name, object? Value)[] fields) => new(Guid.CreateVersion7(), kind, at, about, null, EntryBody.Of(fields));
}
