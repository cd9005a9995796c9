using System.Globalization;
using Coolproof.EndToEnd.Pages;
using Coolproof.EndToEnd.Support;
using Microsoft.Playwright;

namespace Coolproof.EndToEnd.Reasons;

/// <summary>The page that splits a difference up: reached from a run, any two can be chosen, its parts add up, its address holds both, and it works without script.</summary>
public sealed class ReasonsTests(Chromium chromium, PitTable table)
{
    /// <summary>Each part is rounded to a tenth.</summary>
    const double RoundedBy = 0.05;

    [Theory]
    [InlineData("light", false)]
    [InlineData("dark", true)]
    public async Task From_a_run_to_its_reasons_and_on_to_others_whose_parts_add_up(string theme, bool wide)
    {
        var page = await table.OpenAsync(chromium, withDemo: true, theme: theme, wide: wide);
        await page.GotoAsync(table.Places["run"]);
        await page.GetByRole(AriaRole.Link, new() { Name = "Why did it read what it read?" }).ClickAsync();
        await page.ArriveAsync("**/why/*?a=*");
        var first = await CheckedAsync(page, wide);

        // Another is chosen: another answer, and a link gives the same without script.
        await page.Locator("#why-b").SelectOptionAsync(new SelectOptionValue { Index = 0 });
        await page.Locator("#why-a").SelectOptionAsync(new SelectOptionValue { Index = 4 });
        await page.GetByRole(AriaRole.Button, new() { Name = "Split it up" }).ClickAsync();
        await page.ArriveAsync("**b=*");
        var second = await CheckedAsync(page, wide);
        Assert.NotEqual(first, second);
        var other = await table.OpenAsync(chromium, withDemo: true, wide: wide, script: false);
        await other.GotoAsync(page.Url);
        Assert.Equal(second, await other.Locator("h1.answer").InnerTextAsync());
        await other.Context.CloseAsync();
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task Nothing_to_set_against_and_nobody_known_are_said_in_words()
    {
        var page = await table.OpenAsync(chromium, withDemo: true);
        var run = table.Places["run"].Split('/')[^1];
        await page.GotoAsync($"{table.Places["why"]}?a={run}&b={run}");
        Assert.Equal("Choose two different ones", await page.Locator("h1").InnerTextAsync());
        await page.GotoAsync($"{table.Places["why"]}?a={Guid.CreateVersion7()}");
        Assert.Equal("That run or day is not here", await page.Locator("h1").InnerTextAsync());
        Assert.True(await page.Locator("#why-form").IsVisibleAsync());
        var nobody = await page.GotoAsync($"/why/{Guid.CreateVersion7()}");
        Assert.Equal("There is no such day or question here", await page.Locator("h1").InnerTextAsync());
        Assert.Equal(200, nobody!.Status);
        await page.Context.CloseAsync();
    }

    // The sentence, after a look at the picture and at the sum of the parts.
    static async Task<string> CheckedAsync(IPage page, bool wide)
    {
        var sentence = await page.Locator("h1.answer").InnerTextAsync();
        Assert.True(await page.Locator(wide ? ".picture .broad svg" : ".picture .narrow svg").IsVisibleAsync());
        var rows = await page.Locator("#why table.figures tbody tr").AllAsync();
        List<double> parts = [];
        foreach (var row in rows) parts.Add(double.Parse((await row.Locator("td b").InnerTextAsync()).Replace('\u2212', '-').Replace("+", "", StringComparison.Ordinal), CultureInfo.InvariantCulture));
        Assert.True(parts.Count > 4);
        Assert.Equal(parts[^1], parts.SkipLast(1).Sum(), RoundedBy * parts.Count);
        return sentence;
    }
}
