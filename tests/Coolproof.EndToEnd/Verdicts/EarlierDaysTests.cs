using System.Globalization;
using Coolproof.EndToEnd.Pages;
using Coolproof.EndToEnd.Support;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace Coolproof.EndToEnd.Verdicts;

/// <summary>Earlier days on a verdict, in a browser: beside the day's own answer, put first by a tap, and where a day doesn't agree with them.</summary>
public class EarlierDaysTests(Chromium chromium, PitTable table)
{
    /// <summary>A thumb hits what is so large (WCAG 2.2, 2.5.5: 44 px).</summary>
    const double ThumbPx = 44;

    [Theory]
    [InlineData("light", false)]
    [InlineData("dark", true)]
    [InlineData("sun", false)]
    public async Task A_tap_puts_the_answer_with_earlier_days_first_and_another_takes_it_back(string theme, bool wide)
    {
        var page = await table.OpenAsync(chromium, withDemo: true, theme, wide);
        await page.GotoAsync(table.Places["verdict with earlier days"]);
        var own = await page.Locator("h1.answer").InnerTextAsync();
        const string First = "Put the answer with earlier days first";
        var tap = page.GetByRole(AriaRole.Button, new() { Name = First });
        await tap.WaitForAsync();
        // Found and measured in one step: the page may put the button there anew in between.
        Assert.True(await page.EvaluateAsync<double>("name => [...document.querySelectorAll('button')].find(b => b.textContent.trim() === name).getBoundingClientRect().height", First) >= ThumbPx);
        await tap.ClickAsync();
        await page.Locator("#with-earlier").WaitForAsync();
        Assert.StartsWith("With 3 earlier days, as this device asks. From this day alone:", await page.Locator("#with-earlier").InnerTextAsync());
        Assert.Empty((await page.RunAxe()).Violations);
        Assert.True(await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth - innerWidth") <= 0);
        await page.ReloadAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Put the day’s own answer first" }).ClickAsync();
        await page.Locator("#with-earlier").WaitForAsync(new() { State = WaitForSelectorState.Detached });
        Assert.Equal(own, await page.Locator("h1.answer").InnerTextAsync());
        await page.Context.CloseAsync();
    }

    [Theory]
    [InlineData("light", true)]
    [InlineData("dark", false)]
    [InlineData("sun", false)]
    public async Task A_day_that_contradicts_is_pointed_out_below_its_own_answer(string theme, bool wide)
    {
        await using var bench = await Bench.StartAsync();
        var page = await PitTable.OpenAsync(chromium, bench, theme, wide);
        foreach (var (name, bareC, fanC) in new[] { ("2026-06-09", 84.0, 62.0), ("2026-06-16", 64.0, 84.0) })
        {
            await page.GotoAsync("/paper");
            await page.Locator("#paper-text").FillAsync(Table(name, bareC, fanC));
            await page.GetByRole(AriaRole.Button, new() { Name = "Look through it" }).ClickAsync();
            await page.GetByRole(AriaRole.Button, new() { Name = "Keep these readings" }).ClickAsync();
            await page.ArriveAsync("**/verdict/*");
        }
        await page.Locator("#stands-out").WaitForAsync(new() { Timeout = 120_000 });
        Assert.Contains("A changed option is a new one", await page.Locator("#stands-out").InnerTextAsync());
        Assert.Equal(0, await page.Locator("#with-earlier").CountAsync());
        Assert.Empty((await page.RunAxe()).Violations);
        Assert.True(await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth - innerWidth") <= 0);
        await page.Context.CloseAsync();
    }

    static string Table(string date, double bareC, double fanC) => "started_at,run,option,drive_s,roll_in_s,ambient_c,stop_to_read_s,read_c\n" + string.Join('\n', Enumerable.Range(0, 4).SelectMany(run => Enumerable.Range(0, 2).Select(shot =>
        string.Create(CultureInfo.InvariantCulture, $"{date}T{16 + run}:05,{run + 1},{(run % 2 == 0 ? "bare can" : "fan")},360,8,25,{10 + (20 * shot)},{(run % 2 == 0 ? bareC : fanC) + (0.4 * run) - (2.5 * shot):0.0}")))) + "\n";
}
