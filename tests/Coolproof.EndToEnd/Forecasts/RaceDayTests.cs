using Coolproof.EndToEnd.Pages;
using Coolproof.EndToEnd.Support;
using Microsoft.Playwright;

namespace Coolproof.EndToEnd.Forecasts;

/// <summary>The page of forecasts: its answer follows the sliders, its address is the whole race day, and it works without script.</summary>
public sealed class RaceDayTests(Chromium chromium, PitTable table)
{
    [Theory]
    [Trait(SliderTimes.Trait, SliderTimes.Sliders)]
    [InlineData(false)]
    [InlineData(true)]
    public async Task The_answer_follows_a_slider_and_a_link_gives_the_same(bool wide)
    {
        var page = await table.OpenAsync(chromium, withDemo: true, wide: wide);
        await page.GotoAsync(table.Places["forecast"]);
        await page.Locator("#race-head h1.answer").WaitForAsync();
        await SliderTimes.TellAsync(page, "race", "air", [.. Enumerable.Range(0, 12), 12, 14, 16, 18, 20, 22, 24, 26, 28, 30, 32, 34, 36, 37, 38], warmUp: 12);

        // At rest: all draws, and the address has it.
        await page.WaitForFunctionAsync("() => document.getElementById('race-form').dataset.answered?.startsWith('whole') && !document.querySelector('[data-stale]')");
        Assert.Contains("air=38", page.Url);
        var (head, rest) = (await page.Locator("#race-head").InnerTextAsync(), await page.Locator("#race-table").InnerTextAsync());
        Assert.Contains("38 °C", head.Replace('\u00a0', ' '));
        var target = await page.Locator("#race-air").BoundingBoxAsync();
        Assert.True(target!.Height >= 44);
        var other = await table.OpenAsync(chromium, withDemo: true, wide: wide, script: false);
        await other.GotoAsync(page.Url);
        Assert.Equal((head, rest), (await other.Locator("#race-head").InnerTextAsync(), await other.Locator("#race-table").InnerTextAsync()));
        await other.Context.CloseAsync();
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task By_keyboard_and_without_script_warmer_air_gives_no_better_odds_and_too_much_is_refused_with_the_reason()
    {
        var page = await table.OpenAsync(chromium, withDemo: true, script: false);
        await page.GotoAsync($"{table.Places["forecast"]}?air=10");
        var cool = await OddsAsync(page);
        await page.Locator("#race-air").FocusAsync();
        await page.Keyboard.PressAsync("End");
        await page.GetByRole(AriaRole.Button, new() { Name = "Reckon it" }).ClickAsync();
        await page.ArriveAsync("**air=45**");
        var hot = await OddsAsync(page);
        Assert.Equal(cool.Keys.Order(), hot.Keys.Order());
        Assert.All(cool, one => Assert.True(hot[one.Key] >= one.Value, one.Key));
        Assert.Contains(cool, one => hot[one.Key] > one.Value + 20);
        var refused = await page.GotoAsync($"{table.Places["forecast"]}?in=c&air=70");
        Assert.Equal(422, refused!.Status);
        Assert.Contains("expected -20 to 55 °C", await page.Locator(".wrong").InnerTextAsync());
        await page.GotoAsync($"{table.Places["forecast"]}?in=f&air=95");
        Assert.Contains("35 °C", (await page.Locator("h1.answer").InnerTextAsync()).Replace('\u00a0', ' '));
        await page.Context.CloseAsync();
    }

    static async Task<Dictionary<string, int>> OddsAsync(IPage page)
    {
        Dictionary<string, int> odds = [];
        foreach (var row in await page.Locator(".chances li").AllAsync())
        {
            var words = await row.Locator("b").InnerTextAsync();
            odds[await row.Locator("span").First.InnerTextAsync()] = words.StartsWith("under", StringComparison.Ordinal) ? 0 : words.StartsWith("over", StringComparison.Ordinal) ? 100 : int.Parse(words.Split(' ')[0], System.Globalization.CultureInfo.InvariantCulture);
        }
        return odds;
    }
}
