using Coolproof.EndToEnd.Pages;
using Coolproof.EndToEnd.Support;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace Coolproof.EndToEnd.Gears;

/// <summary>The page of gearing: answer and drawing follow the sliders, its address is the whole question, and everybody can use it.</summary>
public sealed class GearingTests(Chromium chromium, PitTable table)
{
    [Theory]
    [Trait(SliderTimes.Trait, SliderTimes.Sliders)]
    [InlineData(false, "light")]
    [InlineData(false, "dark")]
    [InlineData(true, "light")]
    [InlineData(true, "dark")]
    public async Task The_answer_follows_a_slider_and_a_link_gives_the_same(bool wide, string theme)
    {
        var page = await table.OpenAsync(chromium, withDemo: true, theme, wide);
        await page.GotoAsync(table.Places["gear"]);
        await page.Locator("#gear-head h1.answer").WaitForAsync();
        await Looked.AtAsync(page, "gear", wide, theme);
        await page.EvaluateAsync("() => document.querySelectorAll('main details').forEach(details => { details.open = true; })");
        Assert.Empty((await page.RunAxe()).Violations);
        Assert.True(await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth - innerWidth") <= 0);
        await SliderTimes.TellAsync(page, "gear", "air", [.. Enumerable.Range(0, 12), 12, 14, 16, 18, 20, 22, 24, 26, 28, 30, 32, 34, 36, 37, 38], warmUp: 12);
        await page.WaitForFunctionAsync("() => document.getElementById('gear-form').dataset.answered?.startsWith('whole') && !document.querySelector('[data-stale]')");
        Assert.Contains("air=38", page.Url);
        var (head, rest, drawing) = (await page.Locator("#gear-head").InnerTextAsync(), await page.Locator("#gear-table").TextContentAsync(), await page.Locator("#gear-drawing svg").First.InnerHTMLAsync());
        Assert.Contains("38 °C", head.Replace('\u00a0', ' '));
        Assert.True((await page.Locator("#gear-air").BoundingBoxAsync())!.Height >= 44);
        var other = await table.OpenAsync(chromium, withDemo: true, theme, wide, script: false);
        await other.GotoAsync(page.Url);
        Assert.Equal((head, rest), (await other.Locator("#gear-head").InnerTextAsync(), await other.Locator("#gear-table").TextContentAsync()));
        Assert.Equal(drawing, await other.Locator("#gear-drawing svg").First.InnerHTMLAsync());
        await other.Context.CloseAsync();
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task What_the_notebook_tells_is_not_asked_and_what_cant_be_is_told_why_and_back_out_again()
    {
        var page = await table.OpenAsync(chromium, withDemo: true);
        await page.GotoAsync(table.Places["gear"].Split('?')[0]);
        // The demo's runs note pinion and spur, no lap time.
        Assert.Equal(["lap"], await page.EvaluateAsync<string[]>("() => [...document.querySelectorAll('#gear-form > .field:not(.slider) input')].map(input => input.name)"));
        Assert.Contains("no lap time, so all of it is known roughly", await page.Locator("#gear-grounds").InnerTextAsync());
        Assert.Contains("Made-up coastal league, 13.5 turns", await page.Locator("#gear-grounds").InnerTextAsync());
        Assert.Equal("24, in the runs", await page.Locator("#gear-pinion-at").GetAttributeAsync("placeholder"));
        await page.Locator("#gear-lap-at").FillAsync("26");
        await page.WaitForFunctionAsync("() => document.getElementById('gear-form').dataset.answered?.startsWith('whole')");
        Assert.DoesNotContain("no lap time", await page.Locator("#gear-grounds").InnerTextAsync());
        await page.EvaluateAsync("() => document.querySelectorAll('main details').forEach(details => { details.open = true; })");
        await page.Locator("#gear-near-at").FillAsync("10");
        await page.Locator("#gear-far-at").FillAsync("12");
        await page.Locator("#gear-head .wrong:has-text('meshes')").WaitForAsync();
        Assert.Contains("Give other pinions, another spur", await page.Locator("#gear-head").InnerTextAsync());
        Assert.Equal(0, await page.Locator("#gear-drawing svg").CountAsync());
        await page.Locator("#gear-near-at").FillAsync("");
        await page.Locator("#gear-far-at").FillAsync("");
        await page.Locator("#gear-head h1.answer").WaitForAsync();
        await page.Locator("#gear-from-at").FillAsync("24");
        await page.Locator("#gear-to-at").FillAsync("24");
        await page.Locator("#gear-head .old:has-text('One pinion only')").WaitForAsync();
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task Without_script_a_hotter_day_never_allows_more_teeth()
    {
        var page = await table.OpenAsync(chromium, withDemo: true, script: false);
        await page.GotoAsync($"{table.Places["gear"]}&air=12");
        var cool = await TeethAsync(page);
        await page.Locator("#gear-air").FocusAsync();
        await page.Keyboard.PressAsync("End");
        await page.GetByRole(AriaRole.Button, new() { Name = "Reckon it" }).ClickAsync();
        await page.ArriveAsync("**air=45**");
        var hot = await TeethAsync(page);
        Assert.Equal(cool.Keys.Order(), hot.Keys.Order());
        Assert.All(cool, one => Assert.True(hot[one.Key] <= one.Value, one.Key));
        Assert.Contains(cool, one => hot[one.Key] < one.Value);
        await page.Context.CloseAsync();
    }

    static async Task<Dictionary<string, int>> TeethAsync(IPage page)
    {
        Dictionary<string, int> teeth = [];
        foreach (var row in await page.Locator("#gear-head .chances li").AllAsync())
            teeth[await row.Locator("span").First.InnerTextAsync()] = await row.Locator("b").InnerTextAsync() is var words && words == "none" ? 0 : int.Parse(words.Split(' ')[0], System.Globalization.CultureInfo.InvariantCulture);
        return teeth;
    }
}
