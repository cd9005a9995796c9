using Coolproof.EndToEnd.Support;
using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace Coolproof.EndToEnd.Pages;

/// <summary>What holds for every page: it can be used by everybody, fits the screen, is light and asks nobody outside.</summary>
public class EveryPageTests(Chromium chromium, PitTable table)
{
    /// <summary>Most bytes of a first view, as they go over the air.</summary>
    const int MostBytes = 150_000;

    // A page is opened once: its themes differ in their colours only, which the root element names.
    static readonly (string Theme, int Width, int Height)[] Looks = [("light", 390, 844), ("dark", 1280, 800), ("sun", 390, 844)];

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task Axe_finds_nothing_on_any_page_and_none_is_wider_than_its_screen(bool withDemo)
    {
        var page = await table.OpenAsync(chromium, withDemo, "light");
        foreach (var (name, address) in withDemo ? table.Places : PitTable.Always)
        {
            var answer = await page.GotoAsync(address);
            Assert.Equal(200, answer!.Status);
            await page.EvaluateAsync("() => document.querySelectorAll('main details').forEach(details => { details.open = true; })");
            foreach (var (theme, width, height) in Looks)
            {
                await page.SetViewportSizeAsync(width, height);
                await page.EvaluateAsync("theme => { document.documentElement.dataset.theme = theme; }", theme);
                var found = (await page.RunAxe(theme switch { "dark" => Colours, "sun" => Sunlight, _ => null })).Violations;
                Assert.True(found.Length == 0, $"{name}, {theme}, {(withDemo ? "demo" : "empty")}: {string.Join("; ", found.Select(one => $"{one.Id}: {one.Help}: {string.Join(" | ", one.Nodes.Take(3).Select(node => node.Html))}"))}");
                var over = await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth - innerWidth");
                Assert.True(over <= 0, $"{name} is {over} px wider than its screen of {width} px");
            }
        }
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task The_first_view_of_every_page_is_light_and_asks_nobody_outside()
    {
        var weights = new List<string>();
        var page = await table.OpenAsync(chromium, withDemo: true);
        var host = new Uri(page.Url).Host;
        var requests = new List<IRequest>();
        page.Request += (_, request) => requests.Add(request);
        var session = await page.Context.NewCDPSessionAsync(page);
        await session.SendAsync("Network.enable");
        await session.SendAsync("Network.setCacheDisabled", new() { ["cacheDisabled"] = true });
        double bytes = 0;
        session.Event("Network.loadingFinished").OnEvent += (_, said) => bytes += said!.Value.GetProperty("encodedDataLength").GetDouble();
        foreach (var (name, address) in table.Places)
        {
            await page.GotoAsync("about:blank");
            bytes = 0;
            requests.Clear();
            await page.GotoAsync(address, new() { WaitUntil = WaitUntilState.Load });
            await page.WaitForTimeoutAsync(150);
            Assert.All(requests, request => Assert.True(request.Url.StartsWith("data:", StringComparison.Ordinal) || new Uri(request.Url).Host == host, $"{name} asks {request.Url}"));
            Assert.True(bytes is > 1000 and < MostBytes, $"{name} weighs {bytes} bytes");
            weights.Add($"{name} {bytes / 1000:0} kB");
        }
        await page.Context.CloseAsync();
        TestContext.Current.TestOutputHelper!.WriteLine(string.Join(", ", weights));
    }

    [Fact]
    public async Task The_pit_table_is_used_by_keyboard_alone()
    {
        await using var bench = await Bench.StartAsync();
        var page = await PitTable.OpenAsync(chromium, bench, wide: true);
        await page.GotoAsync("/");
        await TabToAsync(page, "document.activeElement.name === 'text'");
        await page.Keyboard.TypeAsync("which fan?");
        await TabToAsync(page, "document.activeElement.textContent.trim() === 'Ask'");
        var outline = await page.EvaluateAsync<string>("() => getComputedStyle(document.activeElement).outlineStyle");
        Assert.Equal("solid", outline);
        await page.Keyboard.PressAsync("Enter");
        await page.ArriveAsync("**/question/*");
        Assert.Equal("which fan?", await page.Locator("h1").InnerTextAsync());
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task What_another_device_notes_appears_without_a_reload_and_leaves_alone_what_is_being_typed()
    {
        var page = await table.OpenAsync(chromium, withDemo: true, wide: true);
        await page.GotoAsync("/");
        await page.EvaluateAsync("() => { document.getElementById('ask-more').open = true; document.getElementById('begin-day').open = true; window.kept = true; }");
        await page.Locator("#questions [name=text]").FillAsync("half a ques");
        var other = await table.OpenAsync(chromium, withDemo: true);
        await other.GotoAsync("/");
        await other.EvaluateAsync("() => { document.getElementById('begin-day').open = true; }");
        await other.Locator("#begin-day [name=venue]").FillAsync("hall of the other phone");
        await other.GetByRole(AriaRole.Button, new() { Name = "Begin the day" }).ClickAsync();
        await other.ArriveAsync("**/day/*");
        await page.Locator("#days").GetByText("hall of the other phone").First.WaitForAsync();
        Assert.Equal("half a ques", await page.Locator("#questions [name=text]").InputValueAsync());
        Assert.True(await page.EvaluateAsync<bool>("() => window.kept"));
        await other.GetByText("About the day").ClickAsync();
        await other.GetByText("Take it out").First.ClickAsync();
        await other.GetByRole(AriaRole.Button, new() { Name = "Take it out" }).ClickAsync();
        await other.ArriveAsync("**/");
        await other.Context.CloseAsync();
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task A_table_with_faults_is_put_right_in_the_browser_without_script()
    {
        var page = await table.OpenAsync(chromium, withDemo: false, script: false);
        await page.GotoAsync("/paper");
        await page.Locator("#paper-text").FillAsync("option,run,drive_min,read_c\nbare can,1,6,hot\n");
        await page.GetByRole(AriaRole.Button, new() { Name = "Look through it" }).ClickAsync();
        Assert.Contains("bare can,1,6,hot", await page.Locator(".problems pre").InnerTextAsync());
        await page.Locator("#paper-text").FillAsync("option,run,drive_min,read_c\nbare can,1,6,71\n");
        await page.GetByRole(AriaRole.Button, new() { Name = "Look through it" }).ClickAsync();
        Assert.Contains("1 reading", await page.Locator("h1").InnerTextAsync());
        await page.Context.CloseAsync();
    }

    // All rules are run in the light theme.
    static AxeRunOptions Colours { get; } = Only("color-contrast");

    // In the sun every word stands out 7:1 at least (WCAG 2.2, 1.4.6).
    static AxeRunOptions Sunlight { get; } = Only("color-contrast", "color-contrast-enhanced");

    static AxeRunOptions Only(params List<string> rules) => new() { RunOnly = new() { Type = "rule", Values = rules }, Rules = rules.ToDictionary(rule => rule, _ => new RuleOptions { Enabled = true }) };

    static async Task TabToAsync(IPage page, string there)
    {
        for (var presses = 0; presses < 60; presses++)
        {
            await page.Keyboard.PressAsync("Tab");
            if (await page.EvaluateAsync<bool>($"() => {there}")) return;
        }
        Assert.Fail($"Sixty presses of Tab do not reach what is looked for: {there}");
    }
}
