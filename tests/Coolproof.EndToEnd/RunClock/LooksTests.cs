using System.Text.Json;
using Coolproof.EndToEnd.Support;
using Deque.AxeCore.Playwright;

namespace Coolproof.EndToEnd.RunClock;

/// <summary>Read in the sun at arm's length, pressed by a cold thumb: measured in the page, in each theme and step.</summary>
public sealed class LooksTests(Chromium chromium)
{
    static readonly string Measure = File.ReadAllText(Path.Combine(RepositoryRoot.Path, "tests", "Coolproof.EndToEnd", "Scripts", "looks.js"));

    sealed record Looks(int Targets, string[] Small, string[] Close, double Digits, double Contrast, string Palest, double PrimaryTop, bool Sideways);

    [Theory]
    [InlineData(390, 844)]
    [InlineData(360, 640)]
    public async Task Targets_digits_and_contrast_are_large_enough_and_axe_finds_nothing(int width, int height)
    {
        await using var bench = await Bench.StartAsync();
        var evening = await Evening.NoteAsync(bench, driveS: 60, air: false);
        await using var phone = await Phone.OpenAsync(chromium, bench, evening.Day);
        await phone.Page.SetViewportSizeAsync(width, height);
        await LookAsync(phone, "ready");
        await phone.PressAsync("role-say");
        await LookAsync(phone, "a choice");
        await phone.PressAsync("pick-any");
        await phone.PressAsync("go-now");
        await phone.StepAsync("Driving");
        await LookAsync(phone, "driving");
        await phone.PressAsync("stop");
        await phone.StepAsync("Rolling");
        await LookAsync(phone, "rolling");
        await phone.PressAsync("halt");
        await phone.StepAsync("Halted");
        await phone.PressAsync("shot");
        await phone.StepAsync("Shooting");
        await LookAsync(phone, "shooting");
        await phone.PressShotAsync(0);
        await phone.Page.Locator("#sheet[data-sheet=pad]").WaitForAsync();
        await LookAsync(phone, "the pad");
        await phone.TypeAsync("66.5");
        await phone.PressAsync("more");
        await phone.PressAsync("pick-stamps");
        await phone.Page.Locator("#sheet[data-sheet=list]").WaitForAsync();
        await LookAsync(phone, "stamps");
    }

    static async Task LookAsync(Phone phone, string what)
    {
        foreach (var theme in (string[])["light", "dark", "sun"])
        {
            await phone.Page.EvaluateAsync("theme => document.documentElement.dataset.theme = theme", theme);
            var looks = JsonSerializer.Deserialize<Looks>(await phone.Page.EvaluateAsync<string>($"() => JSON.stringify(({Measure})())"), JsonSerializerOptions.Web)!;
            var where = $"{what}, {theme}";
            Assert.True(looks.Targets >= 2, where);
            Assert.True(looks.Small.Length == 0, $"{where}: under 72 px: {string.Join("; ", looks.Small)}");
            Assert.True(looks.Close.Length == 0, $"{where}: nearer than 16 px: {string.Join("; ", looks.Close)}");
            Assert.True(looks.Digits >= 48, $"{where}: digits of {looks.Digits} px");
            Assert.True(looks.Contrast >= (theme == "sun" ? 7 : 4.5), $"{where}: contrast {looks.Contrast:0.0} of \"{looks.Palest}\"");
            Assert.True(looks.PrimaryTop >= 0.5, $"{where}: the large button begins at {looks.PrimaryTop:0.00} of the height");
            Assert.False(looks.Sideways, where);
            // One engine's view of each step is enough; colours differ by theme.
            var axe = await phone.Page.RunAxe();
            Assert.True(axe.Violations.Length == 0, $"{where}: {string.Join("; ", axe.Violations.Select(violation => $"{violation.Id} {string.Join(",", violation.Nodes.Select(node => node.Html))}"))}");
        }
    }

    [Fact]
    public async Task The_first_view_is_light_and_nothing_leaves_the_machine()
    {
        await using var bench = await Bench.StartAsync();
        var evening = await Evening.NoteAsync(bench, driveS: 3);
        List<string> asked = [];
        await using var context = await chromium.Browser.NewContextAsync(new() { ViewportSize = new() { Width = 390, Height = 844 }, HasTouch = true, IsMobile = true });
        context.Request += (_, request) => asked.Add(request.Url);
        var page = await context.NewPageAsync();
        await page.GotoAsync(bench.Entrance);
        var session = await context.NewCDPSessionAsync(page);
        await session.SendAsync("Network.enable");
        double bytes = 0;
        session.Event("Network.loadingFinished").OnEvent += (_, finished) => bytes += finished!.Value.GetProperty("encodedDataLength").GetDouble();
        await page.GotoAsync($"{bench.Origin}/clock/{evening.Day:D}");
        await page.Locator("body[data-ready=yes]").WaitForAsync();
        await Task.Delay(1_000, TestContext.Current.CancellationToken);
        TestContext.Current.TestOutputHelper?.WriteLine($"first view: {bytes / 1000:0} kB");
        Assert.InRange(bytes, 10_000, 150_000);
        Assert.All(asked, address => Assert.StartsWith(bench.Origin, address, StringComparison.Ordinal));
        await context.CloseAsync();
    }

    [Fact]
    [Trait("Suite", "long")]
    public async Task It_can_be_used_within_a_second_on_a_slow_phone()
    {
        await using var bench = await Bench.StartAsync();
        var evening = await Evening.NoteAsync(bench, driveS: 3);
        List<double> ready = [];
        for (var visit = 0; visit < 5; visit++)
        {
            await using var context = await chromium.Browser.NewContextAsync(new() { ViewportSize = new() { Width = 390, Height = 844 }, HasTouch = true, IsMobile = true });
            var page = await context.NewPageAsync();
            await page.GotoAsync(bench.Entrance);
            var session = await context.NewCDPSessionAsync(page);
            // A cheap phone on a hotspot: a quarter of this machine's speed, 40 ms away, 10 Mbit/s.
            await session.SendAsync("Emulation.setCPUThrottlingRate", new() { ["rate"] = 4 });
            await session.SendAsync("Network.enable");
            await session.SendAsync("Network.emulateNetworkConditions", new() { ["offline"] = false, ["latency"] = 40, ["downloadThroughput"] = 1_250_000, ["uploadThroughput"] = 1_250_000 });
            await page.GotoAsync($"{bench.Origin}/clock/{evening.Day:D}");
            await page.Locator("body[data-ready=yes]").WaitForAsync();
            ready.Add(await page.EvaluateAsync<double>("performance.getEntriesByName('ready')[0].startTime"));
            await context.CloseAsync();
        }
        TestContext.Current.TestOutputHelper?.WriteLine($"ready after {string.Join(", ", ready.Select(ms => $"{ms:0}"))} ms");
        Assert.True(ready.Order().ElementAt(2) < 1_000, string.Join(", ", ready));
    }
}
