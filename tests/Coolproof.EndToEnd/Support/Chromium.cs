using Coolproof.EndToEnd.Support;
using Microsoft.Playwright;

[assembly: AssemblyFixture(typeof(Chromium))]

namespace Coolproof.EndToEnd.Support;

/// <summary>One browser for all tests; each opens windows of its own in it, which share nothing.</summary>
public sealed class Chromium : IAsyncLifetime
{
    /// <summary>What a browser without a display or a network is started with.</summary>
    internal static readonly string[] Arguments =
    [
        "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync",
        "--autoplay-policy=user-gesture-required",
    ];

    IPlaywright? playwright;

    /// <summary>The browser.</summary>
    public IBrowser Browser { get; private set; } = null!;

    /// <inheritdoc/>
    public async ValueTask InitializeAsync()
    {
        playwright = await Playwright.CreateAsync();
        Assertions.SetDefaultExpectTimeout(Patience.Ms);
        Browser = await playwright.Chromium.LaunchAsync(new() { ExecutablePath = WithoutWindows, Args = Arguments });
    }

    /// <summary>A browser of its own with a profile that outlives it: for tests that kill it.</summary>
    /// <param name="profile">Folder of the profile.</param>
    /// <param name="look">Size and touch.</param>
    public Task<IBrowserContext> WithProfileAsync(string profile, BrowserTypeLaunchPersistentContextOptions look)
    {
        look.ExecutablePath = Path;
        look.Args = Arguments;
        return playwright!.Chromium.LaunchPersistentContextAsync(profile, look);
    }

    /// <summary>The windows of a browser that was started apart, without what tests otherwise set: hidden pages know that they are hidden.</summary>
    /// <param name="browser">The browser.</param>
    internal async Task<IBrowserContext> ConnectAsync(OrdinaryBrowser browser) =>
        (await playwright!.Chromium.ConnectOverCDPAsync(browser.Address, new() { NoDefaults = true })).Contexts[0];

    /// <summary>The browser that people have.</summary>
    internal static string Path => First("/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome")
        ?? throw new InvalidOperationException("These tests need Chromium: apt-get install chromium");

    /// <summary>The same without windows, menus and extensions, where it is there: half the work for the same pages.</summary>
    internal static string WithoutWindows => First("/usr/bin/chromium-headless-shell") ?? Path;

    static string? First(params string[] paths) => paths.FirstOrDefault(File.Exists);

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        if (Browser is not null) await Browser.CloseAsync();
        playwright?.Dispose();
    }
}
