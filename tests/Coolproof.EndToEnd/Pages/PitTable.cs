using Coolproof.EndToEnd.Support;
using Microsoft.Playwright;

[assembly: AssemblyFixture(typeof(Coolproof.EndToEnd.Pages.PitTable))]

namespace Coolproof.EndToEnd.Pages;

/// <summary>Two real servers for the tests of pages: one whose notebook is empty, one with the demo and its verdicts.</summary>
public sealed class PitTable : IAsyncLifetime
{
    Bench? empty, demo;

    /// <summary>Addresses of the demo's pages by name.</summary>
    internal IReadOnlyDictionary<string, string> Places { get; private set; } = new Dictionary<string, string>();

    /// <summary>Names of the pages that there are in an empty notebook too, with their addresses.</summary>
    internal static IReadOnlyDictionary<string, string> Always { get; } = new Dictionary<string, string>
    {
        ["pit table"] = "/",
        ["class card"] = "/class",
        ["vehicle"] = "/vehicle",
        ["gun"] = "/gun",
        ["guns"] = "/guns",
        ["packs"] = "/packs",
        ["loose ends"] = "/loose-ends",
        ["history"] = "/history",
        ["settings"] = "/settings",
        ["paper"] = "/paper",
        ["race"] = "/race",
        ["mount"] = "/mount",
        ["sensors"] = "/sensors",
        ["spend"] = "/spend",
    };

    /// <summary>Opens a window that is let in.</summary>
    /// <param name="chromium">The browser.</param>
    /// <param name="withDemo">The server with the demo; else the empty one.</param>
    /// <param name="theme">light, dark or sun; empty: as the system says.</param>
    /// <param name="wide">A laptop's window; else a phone's.</param>
    /// <param name="script">Whether scripts run.</param>
    internal Task<IPage> OpenAsync(Chromium chromium, bool withDemo, string theme = "", bool wide = false, bool script = true) => OpenAsync(chromium, withDemo ? demo! : empty!, theme, wide, script);

    /// <summary>Opens a window that is let in, at any server.</summary>
    internal static async Task<IPage> OpenAsync(Chromium chromium, Bench bench, string theme = "", bool wide = false, bool script = true)
    {
        var context = await chromium.Browser.NewContextAsync(new() { BaseURL = bench.Origin, JavaScriptEnabled = script, ViewportSize = wide ? new() { Width = 1280, Height = 800 } : new() { Width = 390, Height = 844 } });
        context.SetDefaultTimeout(Patience.Ms);
        await context.AddCookiesAsync([new() { Name = "coolproof-look", Value = $"theme={theme}&units=c&mass=g&hand=right", Url = bench.Origin }]);
        var page = await context.NewPageAsync();
        await page.GotoAsync(bench.Entrance);
        return page;
    }

    /// <inheritdoc/>
    public async ValueTask InitializeAsync()
    {
        (empty, demo) = (await Bench.StartAsync(), await Bench.StartAsync());
        using var playwright = await Playwright.CreateAsync();
        await using var browser = await playwright.Chromium.LaunchAsync(new() { ExecutablePath = Chromium.WithoutWindows, Args = ["--no-sandbox", "--disable-gpu"] });
        var page = await browser.NewPageAsync(new() { BaseURL = demo.Origin });
        page.SetDefaultTimeout(Patience.Ms);
        await page.GotoAsync(demo.Entrance);
        await page.GotoAsync("/");
        await page.GetByRole(AriaRole.Button, new() { Name = "Try the demo" }).ClickAsync();
        await page.ArriveAsync("**/question/*");
        var question = new Uri(page.Url).AbsolutePath;
        var option = await page.Locator(".cards a").Nth(4).GetAttributeAsync("href");
        await page.GotoAsync("/");
        var latest = (await page.Locator("#days a.main").First.GetAttributeAsync("href") ?? "").Replace("/day/", "/verdict/", StringComparison.Ordinal);
        var day = await page.Locator("#days a.main").Last.GetAttributeAsync("href") ?? "";
        await page.GotoAsync(day);
        var run = await page.Locator(".runs a").Nth(1).GetAttributeAsync("href");
        // Its plan was made before, as it were: so the plan and its sheet have something to show.
        await page.GotoAsync(day.Replace("/day/", "/plan/", StringComparison.Ordinal));
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep this plan" }).ClickAsync();
        await page.Locator(".kept").WaitForAsync();
        await page.GotoAsync("/guns");
        var check = await page.GetByRole(AriaRole.Link, new() { Name = "Check it, step by step" }).First.GetAttributeAsync("href");
        var verdict = day.Replace("/day/", "/verdict/", StringComparison.Ordinal);
        await page.GotoAsync(verdict);
        await page.Locator(".picture svg").First.WaitForAsync(new() { State = WaitForSelectorState.Attached });
        await page.GotoAsync(latest);
        await page.Locator("#earlier-table").WaitForAsync(new() { Timeout = 180_000 });
        Places = new Dictionary<string, string>(Always) { ["question"] = question, ["option"] = option!, ["day"] = day, ["run"] = run!, ["verdict"] = verdict, ["verdict with earlier days"] = latest, ["plan"] = day.Replace("/day/", "/plan/", StringComparison.Ordinal), ["run sheet"] = day.Replace("/day/", "/sheet/", StringComparison.Ordinal), ["cool-down"] = day.Replace("/day/", "/cooldown/", StringComparison.Ordinal), ["forecast"] = day.Replace("/day/", "/forecast/", StringComparison.Ordinal), ["traces"] = day.Replace("/day/", "/traces/", StringComparison.Ordinal), ["mount beside readings"] = day.Replace("/day/", "/mount/", StringComparison.Ordinal), ["gear"] = $"{day.Replace("/day/", "/gear/", StringComparison.Ordinal)}?lap=26", ["spend beside readings"] = day.Replace("/day/", "/spend/", StringComparison.Ordinal), ["why"] = day.Replace("/day/", "/why/", StringComparison.Ordinal), ["gun check"] = $"{check}?altitude=300", ["history of an option"] = option!.Replace("/option/", "/history/", StringComparison.Ordinal) };
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        if (empty is not null) await empty.DisposeAsync();
        if (demo is not null) await demo.DisposeAsync();
    }
}
