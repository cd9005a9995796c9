using Microsoft.Playwright;

namespace Coolproof.EndToEnd.Support;

/// <summary>Screenshots for human eyes, where COOLPROOF_PICTURES_TO names a folder.</summary>
static class Looked
{
    /// <summary>The first screen and the whole page.</summary>
    public static async Task AtAsync(IPage page, string name, bool wide, string theme)
    {
        if (Environment.GetEnvironmentVariable("COOLPROOF_PICTURES_TO") is not { } folder) return;
        await page.ScreenshotAsync(new() { Path = Path.Combine(folder, $"{name}-{(wide ? "wide" : "phone")}-{theme}.png") });
        await page.ScreenshotAsync(new() { Path = Path.Combine(folder, $"{name}-{(wide ? "wide" : "phone")}-{theme}-all.png"), FullPage = true });
    }
}
