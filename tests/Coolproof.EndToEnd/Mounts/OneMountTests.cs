using Coolproof.EndToEnd.Pages;
using Coolproof.EndToEnd.Support;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace Coolproof.EndToEnd.Mounts;

/// <summary>The page of a mount: its answer and its drawing follow the sliders, its address is the whole mount, and everybody can use it.</summary>
public sealed class OneMountTests(Chromium chromium, PitTable table)
{
    [Theory]
    [Trait(SliderTimes.Trait, SliderTimes.Sliders)]
    [InlineData("mount", false, "light")]
    [InlineData("mount", true, "dark")]
    [InlineData("mount beside readings", false, "dark")]
    [InlineData("mount beside readings", true, "light")]
    public async Task The_answer_follows_a_slider_and_a_link_gives_the_same(string place, bool wide, string theme)
    {
        var page = await table.OpenAsync(chromium, withDemo: true, theme, wide);
        await page.GotoAsync(table.Places[place]);
        await page.EvaluateAsync("() => document.querySelectorAll('main details').forEach(details => { details.open = true; })");
        Assert.Empty((await page.RunAxe()).Violations);
        Assert.True(await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth - innerWidth") <= 0);
        if (Environment.GetEnvironmentVariable("COOLPROOF_PICTURES_TO") is { } folder)
        {
            await page.GotoAsync(table.Places[place]);
            await page.ScreenshotAsync(new() { Path = Path.Combine(folder, $"{place}-{(wide ? "wide" : "phone")}-{theme}.png") });
            await page.ScreenshotAsync(new() { Path = Path.Combine(folder, $"{place}-{(wide ? "wide" : "phone")}-{theme}-all.png"), FullPage = true });
        }
        await SliderTimes.TellAsync(page, "mount", "flow", [.. Enumerable.Range(2, 27)], warmUp: 12);
        await page.WaitForFunctionAsync("() => document.getElementById('mount-form').dataset.answered?.startsWith('whole') && !document.querySelector('[data-stale]')");
        Assert.Contains("flow=28", page.Url);
        var (head, drawing) = (await page.Locator("#mount-head").InnerTextAsync(), await page.Locator("#mount-drawing svg").First.InnerHTMLAsync());
        Assert.Contains("of 28.0 free", head.Replace('\u00a0', ' '));
        Assert.True((await page.Locator("#mount-flow-at").BoundingBoxAsync())!.Height >= 44);
        var other = await table.OpenAsync(chromium, withDemo: true, theme, wide, script: false);
        await other.GotoAsync(page.Url);
        Assert.Equal(head, await other.Locator("#mount-head").InnerTextAsync());
        Assert.Equal(drawing, await other.Locator("#mount-drawing svg").First.InnerHTMLAsync());
        await other.Context.CloseAsync();
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task A_slider_into_what_cant_be_is_told_why_and_back_out_again_and_works_without_script()
    {
        var page = await table.OpenAsync(chromium, withDemo: true);
        await page.GotoAsync("/mount");
        await page.Locator("#mount-gap-at").FillAsync("30");
        await page.Locator("#mount-head .wrong").WaitForAsync();
        Assert.Contains("From can to shell: found 24 mm; expected more than 40 mm", (await page.Locator("#mount-head").InnerTextAsync()).Replace('\u00a0', ' '));
        Assert.Equal(0, await page.Locator("#mount-drawing svg").CountAsync());
        await page.Locator("#mount-gap-at").FillAsync("8");
        await page.Locator("#mount-head h1.answer").WaitForAsync();
        await page.Context.CloseAsync();
        var plain = await table.OpenAsync(chromium, withDemo: true, script: false);
        await plain.GotoAsync("/mount");
        var before = await plain.Locator("h1").InnerTextAsync();
        await plain.Locator("#mount-flow-at").FocusAsync();
        await plain.Keyboard.PressAsync("End");
        await plain.GetByRole(AriaRole.Button, new() { Name = "Reckon it" }).ClickAsync();
        await plain.ArriveAsync("**flow=40**");
        Assert.NotEqual(before, await plain.Locator("h1").InnerTextAsync());
        await plain.Context.CloseAsync();
    }
}
