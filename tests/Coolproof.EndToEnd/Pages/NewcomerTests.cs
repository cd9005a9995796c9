using System.Diagnostics;
using Coolproof.EndToEnd.Support;
using Microsoft.Playwright;

namespace Coolproof.EndToEnd.Pages;

/// <summary>Somebody who was given the address, and nothing else: docs/newcomer.md.</summary>
public class NewcomerTests(Chromium chromium)
{
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task From_an_empty_notebook_a_rehearsal_and_its_verdict_are_two_taps_and_no_page_leads_astray(bool wide)
    {
        var watch = Stopwatch.StartNew();
        await using var bench = await Bench.StartAsync();
        var page = await PitTable.OpenAsync(chromium, bench, wide: wide);
        List<string> errors = [];
        page.PageError += (_, error) => errors.Add(error);
        await page.GetByRole(AriaRole.Button, new() { Name = "Rehearse an evening" }).ClickAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Read the verdict" }).ClickAsync();
        await page.Locator("h1.answer").WaitForAsync();
        Assert.True(watch.Elapsed < TimeSpan.FromMinutes(2), $"it took {watch.Elapsed}");
        // All that stands under More, by the links that a person presses, one after another.
        var links = await page.Locator("details.more a").EvaluateAllAsync<string[]>("all => all.map(one => one.getAttribute('href'))");
        Assert.True(links.Length > 5);
        foreach (var link in links)
        {
            await page.Locator("details.more summary").ClickAsync();
            await page.Locator($"details.more a[href='{link}']").ClickAsync();
            await page.ArriveAsync($"**{link}");
            // The new page is there when its link is the one marked; its menu is shut again.
            await page.Locator($"details.more:not([open]) a.active[href='{link}']").WaitForAsync(new() { State = WaitForSelectorState.Attached });
            Assert.Equal(1, await page.Locator("h1").CountAsync());
        }
        await page.Locator("nav").GetByRole(AriaRole.Link, new() { Name = "Run clock", Exact = true }).ClickAsync();
        await page.Locator("body[data-ready=yes]").WaitForAsync(new() { State = WaitForSelectorState.Attached });
        Assert.Empty(errors);
        await page.Context.CloseAsync();
    }
}
