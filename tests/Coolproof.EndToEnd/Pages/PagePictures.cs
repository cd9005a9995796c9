using System.Globalization;
using System.Text;
using Coolproof.EndToEnd.Support;
using Coolproof.EndToEnd.Traced;
using Microsoft.Playwright;

namespace Coolproof.EndToEnd.Pages;

/// <summary>Takes the pictures of docs/pages.md: ./test --pictures. Every page on a phone and on a laptop, in its themes, in the states that it has.</summary>
public sealed class PagePictures(Chromium chromium, PitTable table)
{
    const int Quality = 32;

    static readonly string Docs = Path.Combine(RepositoryRoot.Path, "docs");
    static readonly string Folder = Path.Combine(Docs, "pictures", "pages");

    readonly List<(string Chapter, string Name)> taken = [];

    [Fact]
    [Trait("Suite", "pictures")]
    public async Task Takes_pictures_of_every_page()
    {
        Directory.CreateDirectory(Folder);
        foreach (var old in Directory.EnumerateFiles(Folder, "*.webp")) File.Delete(old);
        await OfPagesAsync("Nothing noted yet", "empty", withDemo: false, PitTable.Always);
        await OfPagesAsync("With the demo", "demo", withDemo: true, table.Places);
        await OfRehearsalAsync();
        await OfTracesAsync();
        await OfTroubleAsync();
        await OfRunClockAsync();
        await File.WriteAllTextAsync(Path.Combine(Docs, "pages.md"), Page(), TestContext.Current.CancellationToken);
        Assert.InRange(Directory.EnumerateFiles(Folder).Sum(file => new FileInfo(file).Length), 500_000, 8_000_000);
    }

    async Task OfPagesAsync(string chapter, string state, bool withDemo, IReadOnlyDictionary<string, string> places)
    {
        foreach (var wide in (bool[])[false, true])
        {
            var page = await table.OpenAsync(chromium, withDemo, "light", wide);
            foreach (var (name, address) in places.Where(place => place.Key != "verdict with earlier days"))
            {
                await page.GotoAsync(address);
                await TakeAsync(page, chapter, $"{state}-{name}", wide);
            }
            await page.GotoAsync("/connect");
            await TakeAsync(page, chapter, $"{state}-connect a phone", wide);
            if (withDemo) await OfEarlierDaysAsync(page, chapter, wide);
            await page.Context.CloseAsync();
        }
    }

    // Beside the day's own answer, further down, and before it; where it begins it looks as any verdict.
    async Task OfEarlierDaysAsync(IPage page, string chapter, bool wide)
    {
        await page.GotoAsync($"{table.Places["verdict with earlier days"]}#earlier");
        await TakeAsync(page, chapter, "demo-with earlier days and without", wide);
        await page.GetByRole(AriaRole.Button, new() { Name = "Put the answer with earlier days first" }).ClickAsync();
        await page.Locator("#with-earlier").WaitForAsync();
        await page.GotoAsync(table.Places["verdict with earlier days"]);
        await TakeAsync(page, chapter, "demo-earlier days first", wide);
    }

    async Task OfRehearsalAsync()
    {
        await using var bench = await Bench.StartAsync();
        var day = "";
        foreach (var wide in (bool[])[false, true])
        {
            var page = await PitTable.OpenAsync(chromium, bench, "light", wide);
            if (day.Length == 0)
            {
                await page.GetByRole(AriaRole.Button, new() { Name = "Rehearse an evening" }).ClickAsync();
                await page.ArriveAsync("**/day/*");
                day = new Uri(page.Url).AbsolutePath;
            }
            await page.GotoAsync(day.Replace("/day/", "/verdict/", StringComparison.Ordinal));
            await page.Locator(".picture svg").First.WaitForAsync(new() { State = WaitForSelectorState.Attached });
            await TakeAsync(page, "With a rehearsal", "rehearsal-verdict", wide);
            await page.GotoAsync(day);
            await TakeAsync(page, "With a rehearsal", "rehearsal-day", wide);
            await page.GotoAsync("/");
            await TakeAsync(page, "With a rehearsal", "rehearsal-pit table", wide);
            await page.GetByRole(AriaRole.Button, new() { Name = "Drive a rehearsal yourself" }).ClickAsync();
            await page.Locator("#rehearsal:not([hidden])").WaitForAsync();
            await TakeAsync(page, "With a rehearsal", "rehearsal-driven by hand", wide);
            await page.Context.CloseAsync();
        }
    }

    // From the logger's file to its readings in the runs.
    async Task OfTracesAsync()
    {
        const string Chapter = "With a logger’s file";
        foreach (var wide in (bool[])[false, true])
        {
            await using var bench = await Bench.StartAsync();
            var day = await LoggedEvening.NoteAsync(bench);
            var page = await PitTable.OpenAsync(chromium, bench, "light", wide);
            await LoggedEvening.ToAsync(page, $"/traces/{day}");
            await TakeAsync(page, Chapter, "trace-bring it in", wide);
            await LoggedEvening.BringAsync(page, LoggedEvening.Nonsense);
            await TakeAsync(page, Chapter, "trace-no logger’s file", wide);
            await page.GotoAsync($"/traces/{day}");
            await LoggedEvening.BringAsync(page, LoggedEvening.File);
            await page.ArriveAsync("**/trace/*");
            await TakeAsync(page, Chapter, "trace-its runs are found", wide);
            await page.GetByRole(AriaRole.Button, new() { Name = "Take its readings", Exact = true }).ClickAsync();
            await page.GetByRole(AriaRole.Button, new() { Name = "Take its readings out again" }).WaitForAsync();
            await TakeAsync(page, Chapter, "trace-its readings are taken", wide);
            await page.Locator("#content .list a").First.ClickAsync();
            await page.ArriveAsync("**/run/*");
            await page.Locator("section[id^=trace-] h2", new() { HasText = "evening-log.csv" }).WaitForAsync();
            await page.EvaluateAsync("() => document.querySelector('section[id^=trace-]').scrollIntoView()");
            await TakeAsync(page, Chapter, "trace-on the run’s page", wide);
            await page.Context.CloseAsync();
        }
    }

    async Task OfTroubleAsync()
    {
        const string Chapter = "In trouble";
        foreach (var wide in (bool[])[false, true])
        {
            var page = await table.OpenAsync(chromium, withDemo: false, "light", wide);
            await page.GotoAsync("/paper");
            await page.Locator("#paper-text").FillAsync("option,run,drive_min,read_c\nbare can,1,6,hot\nbare can,2,0,71\n");
            await page.GetByRole(AriaRole.Button, new() { Name = "Look through it" }).ClickAsync();
            await page.Locator(".problems pre").First.WaitForAsync();
            await TakeAsync(page, Chapter, "trouble-a table with faults", wide);
            await OfSameRunsAsync(Chapter, wide);
            await page.GotoAsync("/no-such-page");
            await TakeAsync(page, Chapter, "trouble-no such page", wide);
            await page.GotoAsync($"/day/{Guid.CreateVersion7()}");
            await TakeAsync(page, Chapter, "trouble-no such day", wide);
            await page.Context.ClearCookiesAsync();
            await page.GotoAsync("/connect");
            await TakeAsync(page, Chapter, "trouble-a device that is not connected", wide);
            await page.Context.CloseAsync();
            await OfOneRunAsync(Chapter, wide);
            await OfContradictionAsync(Chapter, wide);
        }
    }

    // A table that was edited and is brought again.
    async Task OfSameRunsAsync(string chapter, bool wide)
    {
        await using var bench = await Bench.StartAsync();
        var page = await PitTable.OpenAsync(chromium, bench, "light", wide);
        foreach (var read in (string[])["71.8", "70.8"])
        {
            await page.GotoAsync("/paper");
            await page.Locator("#paper-text").FillAsync($"option,run,drive_min,ambient_c,read_c\nbare can,1,6,27,{read}\nrear blower,2,6,27,60.9\n{(read == "70.8" ? "bare can,3,6,27,72.4\n" : "")}");
            await page.GetByRole(AriaRole.Button, new() { Name = "Look through it" }).ClickAsync();
            var keep = page.GetByRole(AriaRole.Button, new() { Name = "Keep these readings" });
            await keep.WaitForAsync();
            if (read == "70.8") continue;
            await keep.ClickAsync();
            await page.ArriveAsync("**/verdict/*");
        }
        await TakeAsync(page, chapter, "trouble-runs that are there already", wide);
        await page.Context.CloseAsync();
    }

    // A day with one reading, which is left out.
    async Task OfOneRunAsync(string chapter, bool wide)
    {
        await using var bench = await Bench.StartAsync();
        var page = await PitTable.OpenAsync(chromium, bench, "light", wide);
        await page.GotoAsync("/paper");
        await page.Locator("#paper-text").FillAsync("option,run,drive_min,read_c,exclude\nbare can,1,6,71,half on the chassis\n");
        await page.GetByRole(AriaRole.Button, new() { Name = "Look through it" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep these readings" }).ClickAsync();
        await page.WaitForTimeoutAsync(1_000);
        await page.GotoAsync("/");
        var day = await page.Locator("#days a.main").First.GetAttributeAsync("href") ?? "";
        await page.GotoAsync(day.Replace("/day/", "/verdict/", StringComparison.Ordinal));
        await page.Locator("h1").WaitForAsync();
        await page.WaitForTimeoutAsync(1_500);
        await TakeAsync(page, chapter, "trouble-no reading that counts", wide);
        await page.Context.CloseAsync();
    }

    // An option that was altered between two days.
    async Task OfContradictionAsync(string chapter, bool wide)
    {
        await using var bench = await Bench.StartAsync();
        var page = await PitTable.OpenAsync(chromium, bench, "light", wide);
        foreach (var (date, bareC, fanC) in new[] { ("2026-06-09", 80.0, 62.0), ("2026-06-16", 80.0, 74.0) })
        {
            await page.GotoAsync("/paper");
            await page.Locator("#paper-text").FillAsync("started_at,run,option,drive_s,ambient_c,stop_to_read_s,read_c\n" + string.Join('\n', Enumerable.Range(0, 6).Select(run =>
                string.Create(CultureInfo.InvariantCulture, $"{date}T{15 + run}:05,{run + 1},{(run % 2 == 0 ? "bare can" : "rear blower")},360,27,10,{(run % 2 == 0 ? bareC : fanC) + (0.3 * run):0.0}"))));
            await page.GetByRole(AriaRole.Button, new() { Name = "Look through it" }).ClickAsync();
            await page.GetByRole(AriaRole.Button, new() { Name = "Keep these readings" }).ClickAsync();
            await page.ArriveAsync("**/verdict/*");
        }
        await page.Locator("#stands-out").WaitForAsync(new() { Timeout = 120_000 });
        await TakeAsync(page, chapter, "trouble-a day that contradicts earlier ones", wide);
        await page.Context.CloseAsync();
    }

    async Task OfRunClockAsync()
    {
        const string Chapter = "The run clock";
        foreach (var wide in (bool[])[false, true])
        {
            await using var bench = await Bench.StartAsync();
            var evening = await Evening.NoteAsync(bench, driveS: 60);
            await using var phone = await Phone.OpenAsync(chromium, bench, evening.Day, laptop: wide);
            await TakeAsync(phone.Page, Chapter, "clock-1 ready", wide);
            await phone.PressAsync("role-say");
            await TakeAsync(phone.Page, Chapter, "clock-2 what this device does", wide);
            await phone.PressAsync("pick-any");
            await phone.PressAsync("go-now");
            await phone.StepAsync("Driving");
            await phone.Page.WaitForTimeoutAsync(2_000);
            await TakeAsync(phone.Page, Chapter, "clock-3 driving", wide);
            await phone.PressAsync("stop");
            await phone.StepAsync("Rolling");
            await TakeAsync(phone.Page, Chapter, "clock-4 rolling in", wide);
            await phone.PressAsync("halt");
            await phone.StepAsync("Halted");
            await TakeAsync(phone.Page, Chapter, "clock-5 halted", wide);
            await phone.OfflineAsync(true);
            await phone.PressAsync("shot");
            await phone.StepAsync("Shooting");
            await phone.Page.WaitForTimeoutAsync(1_500);
            await TakeAsync(phone.Page, Chapter, "clock-6 a shot without a network", wide);
            await phone.PressShotAsync(0);
            await phone.Page.Locator("#sheet[data-sheet=pad]").WaitForAsync();
            await TakeAsync(phone.Page, Chapter, "clock-7 its number", wide);
            await phone.TypeAsync("66.5");
            await phone.OfflineAsync(false);
            await phone.PressAsync("shot");
            await phone.PressShotAsync(1);
            await phone.TypeAsync("64.9");
            await phone.StepAsync("Done");
            await TakeAsync(phone.Page, Chapter, "clock-8 the run is over", wide);
            await phone.PressAsync("more");
            await TakeAsync(phone.Page, Chapter, "clock-9 more", wide);
        }
    }

    async Task TakeAsync(IPage page, string chapter, string name, bool wide)
    {
        var session = await page.Context.NewCDPSessionAsync(page);
        foreach (var theme in Themes(wide))
        {
            // As the page of settings does: the theme, and the choice that stands on that page.
            await page.EvaluateAsync("theme => { document.documentElement.dataset.theme = theme; const choice = document.querySelector(`input[name=theme][value=${theme}]`); if (choice) choice.checked = true; }", theme);
            await page.WaitForTimeoutAsync(120);
            var picture = await session.SendAsync("Page.captureScreenshot", new() { ["format"] = "webp", ["quality"] = Quality });
            var bytes = Convert.FromBase64String(picture!.Value.GetProperty("data").GetString()!);
            await File.WriteAllBytesAsync(Path.Combine(Folder, Named(name, wide, theme)), bytes);
        }
        await page.EvaluateAsync("() => { document.documentElement.dataset.theme = 'light'; }");
        await session.DetachAsync();
        if (!wide) taken.Add((chapter, name));
    }

    // The theme for the sun is for a phone in the hand: a laptop stands in the shade.
    static string[] Themes(bool wide) => wide ? ["light", "dark"] : ["light", "dark", "sun"];

    static string Named(string name, bool wide, string theme) => $"{name.Replace(' ', '-').Replace("’", "", StringComparison.Ordinal)}-{(wide ? "laptop" : "phone")}-{theme}.webp";

    string Page()
    {
        StringBuilder page = new();
        page.Append(CultureInfo.InvariantCulture, $"""
            # The pages

            First screens of every page on a phone (390 × 844) and on a laptop (1280 × 800), in the light theme; the dark one and, on a phone, the one for the sun stand behind their words.
            What is seen on them is made up: no motor was driven. Taken anew with `./test --pictures`, which writes this page too ({taken.Count} views).

            """);
        foreach (var chapter in taken.GroupBy(one => one.Chapter))
        {
            page.Append(CultureInfo.InvariantCulture, $"\n## {chapter.Key}\n\n| | Phone | Laptop |\n|---|---|---|\n");
            foreach (var (_, name) in chapter)
                page.Append(CultureInfo.InvariantCulture, $"| {Said(name)} | {Shown(name, false)} | {Shown(name, true)} |\n");
        }
        return page.ToString();
    }

    static string Said(string name) => name[(name.IndexOf('-', StringComparison.Ordinal) + 1)..].TrimStart('1', '2', '3', '4', '5', '6', '7', '8', '9', ' ') is { Length: > 0 } said ? char.ToUpperInvariant(said[0]) + said[1..] : name;

    static string Shown(string name, bool wide)
    {
        string At(string theme) => $"pictures/pages/{Named(name, wide, theme)}";
        var others = Themes(wide).Skip(1).Select(theme => $"[{theme}]({At(theme)})");
        return $"<img src=\"{At("light")}\" width=\"{(wide ? 480 : 180)}\" alt=\"{Said(name)}\" loading=\"lazy\"><br>{string.Join(", ", others)}";
    }
}
