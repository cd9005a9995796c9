using Coolproof.EndToEnd.Pages;
using Coolproof.EndToEnd.Support;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace Coolproof.EndToEnd.Guns;

/// <summary>The page of a gun's number and the guided check: usable by everybody, on a phone and a wide screen, with script and without.</summary>
public sealed class GunPagesTests(Chromium chromium, PitTable table)
{
    [Theory]
    [InlineData(false, "light")]
    [InlineData(true, "dark")]
    [InlineData(false, "dark")]
    [InlineData(true, "light")]
    public async Task Pages_are_accessible_fit_their_screen_and_follow_a_slider(bool wide, string theme)
    {
        var page = await table.OpenAsync(chromium, withDemo: true, theme, wide);
        await page.GotoAsync("/guns");
        var check = await page.GetByRole(AriaRole.Link, new() { Name = "Check it, step by step" }).First.GetAttributeAsync("href");
        foreach (var (name, address) in new[] { ("gun", "/gun"), ("gun metal", "/gun?surface=aluminium-polished&distance=300"), ("guns", "/guns"), ("gun check", $"{check}?altitude=300") })
        {
            await page.GotoAsync(address);
            Assert.Empty((await page.RunAxe()).Violations);
            Assert.True(await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth - innerWidth") <= 0, $"{name} is wider than its screen");
            if (Environment.GetEnvironmentVariable("COOLPROOF_PICTURES_TO") is { } folder)
                await page.ScreenshotAsync(new() { Path = Path.Combine(folder, $"{name}-{(wide ? "wide" : "phone")}-{theme}.png"), FullPage = true });
        }
        await page.GotoAsync("/gun");
        await page.Locator("#gun-surface").SelectOptionAsync("steel-polished");
        await page.WaitForFunctionAsync("() => document.querySelector('#gun-head h1').textContent.includes('put matt tape on it')");
        await page.Locator("#gun-distance-at").FillAsync("400");
        await page.WaitForFunctionAsync("() => document.querySelector('#gun-drawing p').textContent.includes('33.3')");
        await page.ArriveAsync("**distance=400**");
        Assert.True((await page.Locator("#gun-read-at").BoundingBoxAsync())!.Height >= 44);
        var head = await page.Locator("#gun-head").InnerTextAsync();
        var plain = await table.OpenAsync(chromium, withDemo: true, theme, wide, script: false);
        await plain.GotoAsync(page.Url);
        Assert.Equal(head, await plain.Locator("#gun-head").InnerTextAsync());
        await plain.Context.CloseAsync();
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task A_check_at_boiling_water_is_guided_and_says_what_the_gun_is_off_by_without_script()
    {
        var page = await table.OpenAsync(chromium, withDemo: true, script: false);
        await page.GotoAsync("/guns");
        await page.GetByRole(AriaRole.Link, new() { Name = "Check it, step by step" }).First.ClickAsync();
        var boiling = page.Locator("#way-boiling");
        Assert.Equal(0, await boiling.GetByLabel("The gun shows").CountAsync());
        await boiling.GetByLabel("Altitude").FillAsync("300");
        await boiling.GetByRole(AriaRole.Button, new() { Name = "How hot does water boil there?" }).ClickAsync();
        Assert.Contains("99.0 °C", (await boiling.InnerTextAsync()).Replace('\u00a0', ' '));
        await boiling.GetByLabel("The gun shows").FillAsync("95.2");
        await boiling.GetByRole(AriaRole.Button, new() { Name = "Keep the shot" }).ClickAsync();
        var said = (await page.Locator("#check-so-far").InnerTextAsync()).Replace('\u00a0', ' ');
        Assert.Contains("too little", said);
        Assert.Contains("give or take", said);
        await page.GotoAsync("/guns");
        await page.Locator("tr", new() { HasText = "95.2" }).GetByRole(AriaRole.Button).ClickAsync();
        await page.Context.CloseAsync();
    }
}
