using System.Text.RegularExpressions;
using Coolproof.EndToEnd.Pages;
using Coolproof.EndToEnd.Support;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace Coolproof.EndToEnd.Traced;

/// <summary>A logger's file on the pages: brought in, its runs confirmed by one tap, its picture readable on a phone and on a laptop, taken out again.</summary>
public sealed partial class TracePagesTests(Chromium chromium)
{
    [Theory]
    [InlineData(false, "light")]
    [InlineData(false, "dark")]
    [InlineData(true, "light")]
    [InlineData(true, "dark")]
    public async Task A_file_is_brought_in_its_runs_are_confirmed_by_one_tap_and_taken_out_by_another(bool wide, string theme)
    {
        await using var bench = await Bench.StartAsync();
        var day = await LoggedEvening.NoteAsync(bench);
        var page = await PitTable.OpenAsync(chromium, bench, theme, wide);
        await LoggedEvening.ToAsync(page, $"/day/{day}");
        await page.GetByRole(AriaRole.Link, new() { Name = "Bring in a logger’s file" }).ClickAsync();
        await page.Locator("#bring").WaitForAsync();
        await LookAsync(page, "traces empty", wide, theme);
        await LoggedEvening.BringAsync(page, LoggedEvening.File);
        await page.ArriveAsync("**/trace/*");
        var trace = page.Url;

        // One tap is offered, and what it rests on is seen before: the picture, and where each run lies.
        Assert.Equal($"It holds {LoggedEvening.Runs} runs: go and stop are seen in each", await page.Locator("h1").InnerTextAsync());
        await LookAsync(page, "trace found", wide, theme);
        await ReadableAsync(page, "#content .picture", LoggedEvening.Runs);
        Assert.Contains("found -127", await page.Locator("#odd").TextContentAsync());
        await page.GetByRole(AriaRole.Button, new() { Name = "Take its readings", Exact = true }).ClickAsync();
        await page.WaitForFunctionAsync("() => document.querySelector('h1').textContent.includes('readings taken')");
        var taken = await TakenAsync(bench, day);
        Assert.InRange(taken, 4 * LoggedEvening.Runs, 6 * LoggedEvening.Runs);
        Assert.StartsWith($"{taken} readings taken from evening-log.csv", await page.Locator("h1").InnerTextAsync());
        await LookAsync(page, "trace taken", wide, theme);

        // Where the runs are read they are found again.
        await page.Locator("#content .list a").First.ClickAsync();
        await page.ArriveAsync("**/run/*");
        await page.Locator("[id^=trace-] h2", new() { HasText = "evening-log.csv" }).WaitForAsync();
        await LookAsync(page, "run with a trace", wide, theme);
        await ReadableAsync(page, "[id^=trace-] .picture", 1);
        await page.GotoAsync($"/traces/{day}");
        Assert.Contains($"{taken} readings taken", await page.Locator("#traces").InnerTextAsync());
        await LookAsync(page, "traces", wide, theme);

        // Undone: as before, and it can be taken again.
        await page.GotoAsync(trace);
        await page.GetByRole(AriaRole.Button, new() { Name = "Take its readings out again" }).ClickAsync();
        await page.WaitForFunctionAsync("() => document.querySelector('h1').textContent.startsWith('It holds')");
        Assert.Equal(0, await TakenAsync(bench, day));
        await page.GetByRole(AriaRole.Button, new() { Name = "Take its readings", Exact = true }).ClickAsync();
        await page.WaitForFunctionAsync("() => document.querySelector('h1').textContent.includes('readings taken')");
        Assert.Equal(taken, await TakenAsync(bench, day));
        await page.Context.CloseAsync();
    }

    [Theory]
    [InlineData(false, "dark")]
    [InlineData(true, "light")]
    public async Task A_file_that_is_no_trace_is_refused_with_its_place_and_a_way_back_and_nothing_is_kept(bool wide, string theme)
    {
        await using var bench = await Bench.StartAsync();
        var day = await LoggedEvening.NoteAsync(bench);
        var page = await PitTable.OpenAsync(chromium, bench, theme, wide);
        await LoggedEvening.ToAsync(page, $"/traces/{day}");
        var before = (await bench.EntriesAsync()).Count;
        await LoggedEvening.BringAsync(page, LoggedEvening.Nonsense);
        await page.GetByRole(AriaRole.Heading, new() { Name = "The file was not brought in" }).WaitForAsync();
        var said = await page.Locator("main").InnerTextAsync();
        Assert.Contains("no rows of numbers", said);
        Assert.Contains("Nothing was kept", said);
        Assert.Equal(theme, await page.Locator("html").GetAttributeAsync("data-theme"));
        await LookAsync(page, "trace refused", wide, theme);
        await page.GetByRole(AriaRole.Link, new() { Name = "Bring in another file" }).ClickAsync();
        await page.ArriveAsync($"**/traces/{day}");
        Assert.Equal(0, await page.Locator("#traces").CountAsync());
        // The right file, but a column of time that it hasn't got.
        await page.Locator("#layout > summary").ClickAsync();
        await page.Locator("#trace-time").FillAsync("clock");
        await LoggedEvening.BringAsync(page, LoggedEvening.File);
        await page.GetByRole(AriaRole.Heading, new() { Name = "The file was not brought in" }).WaitForAsync();
        Assert.Contains("one of time, can, pack", await page.Locator("main").InnerTextAsync());
        Assert.Equal(before, (await bench.EntriesAsync()).Count);
        Assert.False(Directory.Exists(bench.File("notebook.coolproof.loggers")) && Directory.EnumerateFiles(bench.File("notebook.coolproof.loggers")).Any());
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task The_same_file_again_is_the_same_trace_and_without_script_all_of_it_works()
    {
        await using var bench = await Bench.StartAsync();
        var day = await LoggedEvening.NoteAsync(bench);
        var page = await PitTable.OpenAsync(chromium, bench, script: false);
        await LoggedEvening.ToAsync(page, $"/traces/{day}");
        await LoggedEvening.BringAsync(page, LoggedEvening.File);
        await page.ArriveAsync("**/trace/*");
        var trace = page.Url;
        await page.GetByRole(AriaRole.Button, new() { Name = "Take its readings", Exact = true }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Take its readings out again" }).WaitForAsync();
        var taken = await TakenAsync(bench, day);
        await page.GotoAsync($"/traces/{day}");
        await LoggedEvening.BringAsync(page, LoggedEvening.File);
        await page.ArriveAsync(trace);
        Assert.Single((await bench.NotebookAsync()).TracesOf(day));
        Assert.Equal(taken, await TakenAsync(bench, day));

        // Out of the lists, and by its history back again.
        await page.Locator("details.remove > summary").ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Take it out", Exact = true }).ClickAsync();
        await page.ArriveAsync($"**/traces/{day}");
        Assert.Equal(0, await page.Locator("#traces").CountAsync());
        await page.GotoAsync($"/history/{trace.Split('/')[^1]}");
        await page.Locator("button", new() { HasText = "taken out of the lists" }).First.ClickAsync();
        await page.GotoAsync($"/traces/{day}");
        Assert.Equal(1, await page.Locator("#traces li").CountAsync());
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task Its_clock_is_set_by_hand_by_when_the_first_run_went_and_what_is_no_time_is_refused()
    {
        await using var bench = await Bench.StartAsync();
        var day = await LoggedEvening.NoteAsync(bench);
        var page = await PitTable.OpenAsync(chromium, bench);
        await LoggedEvening.ToAsync(page, $"/traces/{day}");
        await LoggedEvening.BringAsync(page, LoggedEvening.File);
        await page.ArriveAsync("**/trace/*");
        var found = await page.Locator("#content .list li").First.InnerTextAsync();
        await page.Locator("#clock > summary").ClickAsync();
        var after = await page.Locator("#trace-after").InputValueAsync();
        Assert.Matches(@"^\d+:\d\d\.\d$", after);
        foreach (var wrong in new[] { "soon", "12:75", "12:", "1:2:3:4" })
        {
            await page.Locator("#trace-after").FillAsync(wrong);
            await page.GetByRole(AriaRole.Button, new() { Name = "Set it" }).ClickAsync();
            await page.GetByRole(AriaRole.Heading, new() { Name = "The clock was not set" }).WaitForAsync();
            Assert.Contains($"“{wrong}”", await page.Locator("main").InnerTextAsync());
            await page.GetByRole(AriaRole.Link, new() { Name = "Back to the trace" }).ClickAsync();
            await page.Locator("#clock > summary").ClickAsync();
        }
        // As it was found, to a tenth of a second: all stays where it is.
        await page.GetByRole(AriaRole.Button, new() { Name = "Set it" }).ClickAsync();
        await page.GetByText("By the clock as it was set").WaitForAsync();
        Assert.Equal(found, await page.Locator("#content .list li").First.InnerTextAsync());
        // Twenty minutes later the shading lies elsewhere, and it is said that nothing is seen there.
        await page.Locator("#clock > summary").ClickAsync();
        await page.Locator("#trace-after").FillAsync($"{int.Parse(after.Split(':')[0], System.Globalization.CultureInfo.InvariantCulture) + 20}:00");
        await page.GetByRole(AriaRole.Button, new() { Name = "Set it" }).ClickAsync();
        await page.GetByText("nothing seen there").First.WaitForAsync();
        await page.Context.CloseAsync();
    }

    static async Task<int> TakenAsync(Bench bench, Guid day) => (await bench.NotebookAsync()).RunsOf(day).SelectMany(run => run.Shots).Count(shot => shot.Trace is not null);

    // Everybody can use it, it fits, and a thumb with dirty hands hits what is to be tapped.
    static async Task LookAsync(IPage page, string name, bool wide, string theme)
    {
        await Looked.AtAsync(page, name, wide, theme);
        await page.EvaluateAsync("() => document.querySelectorAll('main details').forEach(details => { details.open = true; })");
        var found = (await page.RunAxe()).Violations;
        Assert.True(found.Length == 0, $"{name}: {string.Join("; ", found.Select(one => $"{one.Id}: {string.Join(" | ", one.Nodes.Take(3).Select(node => node.Html))}"))}");
        Assert.True(await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth - innerWidth") <= 0, $"{name} is wider than its screen");
        Assert.Empty(await Targets.TooSmallAsync(page));
    }

    // The picture is seen, its letters are large enough, none lies over another, and each run is named in it.
    static async Task ReadableAsync(IPage page, string picture, int runs)
    {
        var shown = page.Locator($"{picture} svg:visible").First;
        await shown.ScrollIntoViewIfNeededAsync();
        var words = await shown.EvaluateAsync<Word[]>("""
            svg => [...svg.querySelectorAll('text')].map(text => {
                const box = text.getBoundingClientRect(), scale = svg.getBoundingClientRect().width / svg.viewBox.baseVal.width;
                return { says: text.textContent, x: box.x, y: box.y, width: box.width, height: box.height, size: parseFloat(getComputedStyle(text).fontSize) * scale };
            })
            """);
        Assert.NotEmpty(words);
        Assert.All(words, word => Assert.True(word.Size >= 11, $"“{word.Says}” is {word.Size:0.0} px high"));
        var view = page.ViewportSize!;
        Assert.All(words, word => Assert.True(word.X >= 0 && word.X + word.Width <= view.Width, $"“{word.Says}” is off the edge"));
        foreach (var (one, i) in words.Select((word, i) => (word, i)))
            foreach (var other in words.Skip(i + 1)) Assert.False(one.Over(other), $"“{one.Says}” lies over “{other.Says}”");
        Assert.True(words.Count(word => RunLabel().IsMatch(word.Says)) >= (runs > 1 ? runs - 1 : 1), string.Join(", ", words.Select(word => word.Says)));
    }

    sealed class Word
    {
        public string Says { get; set; } = "";
        public double X { get; set; }
        public double Y { get; set; }
        public double Width { get; set; }
        public double Height { get; set; }
        public double Size { get; set; }

        // Boxes are as high as letters with room above and below: a quarter may be shared.
        public bool Over(Word other) => X < other.X + other.Width && other.X < X + Width && Y + (0.25 * Height) < other.Y + (0.75 * other.Height) && other.Y + (0.25 * other.Height) < Y + (0.75 * Height);
    }

    [GeneratedRegex("^run \\d+$")]
    private static partial Regex RunLabel();
}
