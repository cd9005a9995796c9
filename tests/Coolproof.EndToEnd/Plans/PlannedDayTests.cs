using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Coolproof.EndToEnd.Pages;
using Coolproof.EndToEnd.Support;
using Coolproof.Notebook.Journal;
using Microsoft.Playwright;
using NodaTime;

namespace Coolproof.EndToEnd.Plans;

/// <summary>A day is planned, printed, driven for two rounds on the run clock and cut short.</summary>
public sealed partial class PlannedDayTests(Chromium chromium)
{
    [Fact]
    public async Task What_was_planned_and_not_driven_is_called_open_and_the_verdict_on_the_rest_stands()
    {
        await using var bench = await Bench.StartAsync();
        var (question, bare, fan, cut) = await AskAsync(bench);
        var page = await PitTable.OpenAsync(chromium, bench, "dark", wide: true);

        // Plan.
        await page.GotoAsync($"/plan/{question}");
        var now = DateTime.Now;
        await page.Locator("[name=from]").FillAsync(now.ToString("HH:mm", CultureInfo.InvariantCulture));
        await page.Locator("[name=to]").FillAsync(now.AddHours(3).ToString("HH:mm", CultureInfo.InvariantCulture));
        await page.Locator("[name=drive]").FillAsync("0:12");
        await page.Locator("[name=cool]").FillAsync("0");
        await page.Locator("[name=packs]").FillAsync("12");
        await page.Locator("#plan-more summary").ClickAsync();
        await page.Locator("[name=rounds]").SelectOptionAsync("2");
        await page.GetByRole(AriaRole.Button, new() { Name = "Plan it" }).ClickAsync();
        await page.ArriveAsync("**rounds=2**");
        Assert.StartsWith("6 runs of 3 options", await page.Locator("h1").InnerTextAsync());
        await page.ReloadAsync();
        Assert.Equal(1, await page.Locator(".picture svg:visible").CountAsync());
        await page.GetByRole(AriaRole.Button, new() { Name = "Begin a day with this plan" }).ClickAsync();
        await page.ArriveAsync("**/day/*");
        var day = Guid.Parse(page.Url.Split('/')[^1]);
        var plan = (await bench.NotebookAsync()).Find<NotedDay>(day)!.Plan;
        Assert.Equal([cut, cut], plan.Skip(4));
        Assert.True(plan.Take(2).ToHashSet().SetEquals([bare, fan]) && plan.Skip(2).Take(2).ToHashSet().SetEquals([bare, fan])); // whole rounds

        // Print: black on white whatever the theme, without what is of no use on paper; one side of A4 and of Letter.
        await page.GotoAsync($"/sheet/{day}");
        Assert.Equal(6, await page.Locator(".sheet-table tbody tr").CountAsync());
        await page.EmulateMediaAsync(new() { Media = Media.Print });
        Assert.False(await page.Locator("header.top").IsVisibleAsync());
        Assert.Equal(("rgb(255, 255, 255)", "rgb(0, 0, 0)"), (await StyleAsync(page, "html", "backgroundColor"), await StyleAsync(page, ".sheet-table td", "color")));
        foreach (var (format, wide, high) in new[] { ("A4", 842, 595), ("Letter", 792, 612) })
        {
            var paper = Encoding.Latin1.GetString(await page.PdfAsync(new() { Format = format, Landscape = true }));
            Assert.StartsWith("%PDF-", paper);
            Assert.Single(Sheets().Matches(paper));
            var box = Box().Match(paper);
            Assert.Equal((wide, high), ((int)double.Parse(box.Groups[1].Value, CultureInfo.InvariantCulture), (int)double.Parse(box.Groups[2].Value, CultureInfo.InvariantCulture)));
        }
        await page.EmulateMediaAsync(new() { Media = Media.Screen });

        // Two rounds on the run clock: each time the plan's next option lies ready.
        await bench.KeepAsync(Guid.CreateVersion7(), Of(EntryKind.Weather, day, ("day", day), ("airC", 25.0), ("airBy", "thermometer")));
        await using (var phone = await Phone.OpenAsync(chromium, bench, day))
        {
            for (var run = 0; run < 4; run++)
            {
                var name = plan[run] == bare ? "Bare can" : "Clamp with a 25 mm fan";
                await phone.Page.Locator("#option").GetByText(name).WaitForAsync();
                Assert.Contains("next by the plan", await phone.Act("option").InnerTextAsync());
                var box = await phone.Act("option").BoundingBoxAsync();
                Assert.True(box!.Height >= 72 && box.Width >= 72);
                await phone.PressAsync("go-now");
                await phone.StepAsync("Rolling");
                await phone.PressAsync("halt");
                await phone.StepAsync("Halted");
                for (var shot = 0; shot < 2; shot++)
                {
                    await phone.ShootAsync(shot);
                    await phone.PressShotAsync(shot);
                    await phone.TypeAsync(((plan[run] == bare ? 71.5 : 63.5) + (0.3 * run) - (1.5 * shot)).ToString("0.0", CultureInfo.InvariantCulture));
                }
                await phone.PressAsync("next-run");
            }
            await phone.SentAsync();
        }

        // What took seconds here took six minutes there, each half an hour after the one before: typed figures go before the stamps.
        var begun = DateTime.Now.AddHours(-4);
        var runs = (await bench.NotebookAsync()).RunsOf(day);
        Assert.Equal(4, runs.Count);
        await bench.KeepAsync(Guid.CreateVersion7(), [.. runs.Select((run, i) => Of(EntryKind.RunSet, run.Id, ("driveS", 360), ("rollInS", 8), ("startedAt", begun.AddMinutes(30 * i).ToString("yyyy-MM-dd'T'HH:mm:ss", CultureInfo.InvariantCulture))))]);

        // Cut short.
        await page.GotoAsync($"/day/{day}");
        await page.Locator("#steer").GetByText("settled with a chance of").WaitForAsync();
        await page.Locator("#steer-end summary").ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "End the day now" }).ClickAsync();
        await page.Locator("#steer").GetByText("No further run fits").WaitForAsync();
        await page.GotoAsync($"/verdict/{day}");
        await page.Locator("h1.answer").WaitForAsync();
        var open = await page.Locator("#open").InnerTextAsync();
        Assert.Contains("Cut shell has no reading that counts", open);
        Assert.Contains("The verdict on the rest stands", open);
        Assert.Equal(2, await page.Locator("table.figures").First.Locator("tbody tr").CountAsync());
        await page.Context.CloseAsync();
    }

    static async Task<(Guid Question, Guid Bare, Guid Fan, Guid Cut)> AskAsync(Bench bench)
    {
        var (question, bare, fan, cut) = (Guid.CreateVersion7(), Guid.CreateVersion7(), Guid.CreateVersion7(), Guid.CreateVersion7());
        await bench.KeepAsync(
            Guid.CreateVersion7(), Of(EntryKind.OptionSet, bare, ("name", "Bare can"), ("fans", 0)), Of(EntryKind.OptionSet, fan, ("name", "Clamp with a 25 mm fan"), ("fans", 1)),
            Of(EntryKind.OptionSet, cut, ("name", "Cut shell"), ("fans", 0), ("cantBeUndone", true)),
            Of(EntryKind.QuestionSet, question, ("text", "Which keeps it coolest?"), ("sort", "which"), ("options", new[] { bare, fan, cut })));
        return (question, bare, fan, cut);
    }

    static Entry Of(string kind, Guid about, params (string Name, object? Value)[] fields) => new(Guid.CreateVersion7(), kind, SystemClock.Instance.GetCurrentInstant(), about, null, EntryBody.Of(fields));

    static Task<string> StyleAsync(IPage page, string selector, string property) => page.Locator(selector).First.EvaluateAsync<string>("(element, property) => getComputedStyle(element)[property]", property);

    [GeneratedRegex("/Type\\s*/Page[^s]")]
    private static partial Regex Sheets();

    [GeneratedRegex("/MediaBox ?\\[0 0 ([0-9.]+) ([0-9.]+)\\]")]
    private static partial Regex Box();
}
