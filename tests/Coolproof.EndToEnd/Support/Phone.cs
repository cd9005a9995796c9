using System.Globalization;
using Microsoft.Playwright;
using NodaTime;

namespace Coolproof.EndToEnd.Support;

/// <summary>A phone (or the laptop) that has the run clock open, and the thumb on it.</summary>
sealed class Phone : IAsyncDisposable
{
    readonly Bench bench;
    ICDPSession? session;

    Phone(Bench bench, IBrowserContext context, IPage page, bool touch)
    {
        this.bench = bench;
        Context = context;
        Page = page;
        Touch = touch;
        page.PageError += (_, error) => Errors.Add(error);
    }

    /// <summary>Its windows.</summary>
    public IBrowserContext Context { get; }

    /// <summary>Its page.</summary>
    public IPage Page { get; private set; }

    /// <summary>Whether it is pressed by a finger, not by a mouse.</summary>
    public bool Touch { get; }

    /// <summary>Faults of the page's scripts.</summary>
    public List<string> Errors { get; } = [];

    /// <summary>When each act was pressed, by the machine's clock: the instant that the finger came down.</summary>
    public Dictionary<string, Instant> Pressed { get; } = [];

    /// <summary>Opens the run clock of a day on a new phone.</summary>
    /// <param name="chromium">The browser.</param>
    /// <param name="bench">The bench.</param>
    /// <param name="day">The day.</param>
    /// <param name="leadS">Seconds of the countdown.</param>
    /// <param name="clockAheadMs">How wrong the phone's clock is.</param>
    /// <param name="laptop">A laptop with a mouse instead.</param>
    public static async Task<Phone> OpenAsync(Chromium chromium, Bench bench, Guid day, int leadS = 3, long clockAheadMs = 0, bool laptop = false)
    {
        var context = await chromium.Browser.NewContextAsync(laptop
            ? new() { ViewportSize = new() { Width = 1280, Height = 800 } }
            : new() { ViewportSize = new() { Width = 390, Height = 844 }, HasTouch = true, IsMobile = true });
        return await OpenAsync(context, bench, day, leadS, clockAheadMs, !laptop);
    }

    /// <summary>Opens the run clock in windows that are there.</summary>
    public static async Task<Phone> OpenAsync(IBrowserContext context, Bench bench, Guid day, int leadS, long clockAheadMs, bool touch)
    {
        context.SetDefaultTimeout(Patience.Ms);
        if (clockAheadMs != 0) await context.AddInitScriptAsync(WrongClock(clockAheadMs));
        var phone = new Phone(bench, context, await context.NewPageAsync(), touch);
        await phone.Page.GotoAsync(bench.Entrance);
        await phone.ToClockAsync(day);
        await phone.Page.EvaluateAsync(ShortCountdown, leadS);
        await phone.ReloadAsync();
        return phone;
    }

    /// <summary>Opens the clock of a day.</summary>
    public async Task ToClockAsync(Guid day)
    {
        await Page.GotoAsync($"{bench.Origin}/clock/{day:D}");
        await ReadyAsync();
    }

    /// <summary>Waits until the page has read what the phone holds.</summary>
    public Task ReadyAsync() => Page.Locator("body[data-ready=yes]").WaitForAsync(new() { State = WaitForSelectorState.Attached });

    /// <summary>Says what this device does, where it asks.</summary>
    public async Task RoleAsync(string role)
    {
        await PressAsync("role-say");
        await PressAsync($"pick-{role}");
        await Act("role-say").WaitForAsync(new() { State = WaitForSelectorState.Detached });
    }

    /// <summary>A button by what it does.</summary>
    public ILocator Act(string act) => Page.Locator($"button[data-act=\"{act}\"]");

    /// <summary>The shots in the list, without what takes one back.</summary>
    public ILocator Shots => Page.Locator("#shots button[data-act^=type-]");

    /// <summary>Presses a button as a thumb does: waits until it is there and no longer new, comes down, rests as long as is wanted, goes up.</summary>
    /// <param name="act">What it does.</param>
    /// <param name="restMs">How long the finger rests; firm buttons want half a second.</param>
    public async Task PressAsync(string act, int? restMs = null)
    {
        var button = Act(act);
        var box = await FindAsync(button) ?? throw new InvalidOperationException($"{act} is nowhere.");
        var firm = await button.GetAttributeAsync("data-firm") is not null;
        Pressed[act] = SystemClock.Instance.GetCurrentInstant();
        await FingerAsync(box.X + (box.Width / 2), box.Y + (box.Height / 2), restMs ?? (firm ? 650 : 60));
    }

    // Where a button is, once it has been there for a moment and lies still; one that moved away meanwhile is looked for again, as people do.
    static async Task<LocatorBoundingBoxResult?> FindAsync(ILocator button)
    {
        for (var look = 1; ; look++)
        {
            await button.WaitForAsync();
            await Task.Delay(750); // people need longer than that to find a new button
            try
            {
                await button.ScrollIntoViewIfNeededAsync();
                var box = await button.BoundingBoxAsync();
                await Task.Delay(50);
                var after = await button.BoundingBoxAsync();
                if (box is null || after is null || look >= 10 || (box.X == after.X && box.Y == after.Y)) return after;
            }
            catch (PlaywrightException) when (look < 3)
            {
                // It was taken away and put there anew.
            }
        }
    }

    /// <summary>Takes a shot, and again where the finger missed.</summary>
    /// <param name="place">How many shots the list holds before.</param>
    public Task ShootAsync(int place) => PressUntilAsync(() => Task.FromResult("shot"), Shots.Nth(place));

    /// <summary>Presses a shot in the list until the thumb pad is there, to type its number.</summary>
    /// <param name="place">0 for the first.</param>
    public Task PressShotAsync(int place) =>
        PressUntilAsync(async () => await Shots.Nth(place).GetAttributeAsync("data-act") ?? "", Page.Locator("#sheet[data-sheet=pad]"));

    // On a crowded machine a button may move under the finger; people press again.
    async Task PressUntilAsync(Func<Task<string>> act, ILocator there)
    {
        for (var press = 1; ; press++)
        {
            await PressAsync(await act());
            try
            {
                await there.WaitForAsync(new() { Timeout = press < 3 ? 8_000 : Patience.Ms });
                return;
            }
            catch (TimeoutException) when (press < 3)
            {
                // It missed, or the page is late; where it has come meanwhile, nothing more is pressed.
                if (await there.IsVisibleAsync()) return;
            }
        }
    }

    /// <summary>A finger (or the mouse) that comes down and goes up somewhere.</summary>
    /// <param name="x">px from the left.</param>
    /// <param name="y">px from the top.</param>
    /// <param name="restMs">How long it rests.</param>
    /// <param name="down">When it came down; null: now.</param>
    public async Task FingerAsync(double x, double y, int restMs, Instant? down = null)
    {
        if (!Touch)
        {
            await Page.Mouse.MoveAsync((float)x, (float)y);
            await Page.Mouse.DownAsync();
            await Page.Mouse.UpAsync();
            return;
        }
        await RestAsync(down ?? SystemClock.Instance.GetCurrentInstant(), restMs, (x, y));
    }

    /// <summary>Fingers that come down together, rest and go up. The glass stamps when, as it does on a phone: a browser that is late still knows how long they rested.</summary>
    /// <param name="down">When they came down.</param>
    /// <param name="restMs">How long they rest.</param>
    /// <param name="points">Where.</param>
    public async Task RestAsync(Instant down, int restMs, params (double X, double Y)[] points)
    {
        await TouchAsync("touchStart", down, points);
        await Task.Delay(restMs);
        await TouchAsync("touchEnd", down + Duration.FromMilliseconds(restMs));
    }

    // The browser takes a touch in at once, unless something of its own, a menu say, lies over the page.
    static readonly TimeSpan LongestTouch = TimeSpan.FromSeconds(60);

    /// <summary>Fingers on the glass, now.</summary>
    public Task TouchAsync(string type, params (double X, double Y)[] points) => TouchAsync(type, SystemClock.Instance.GetCurrentInstant(), points);

    /// <summary>Fingers on the glass.</summary>
    /// <exception cref="TimeoutException">The page doesn't get them.</exception>
    public async Task TouchAsync(string type, Instant at, params (double X, double Y)[] points)
    {
        session ??= await Context.NewCDPSessionAsync(Page);
        await session.SendAsync("Input.dispatchTouchEvent", new()
        {
            ["type"] = type,
            ["timestamp"] = (at - NodaConstants.UnixEpoch).TotalSeconds,
            ["touchPoints"] = points.Select((point, index) => new Dictionary<string, object> { ["x"] = point.X, ["y"] = point.Y, ["id"] = index }).ToArray(),
        }).WaitAsync(LongestTouch);
    }

    /// <summary>Types a number on the thumb pad and saves it.</summary>
    public async Task TypeAsync(string number, int betweenMs = 0)
    {
        await Page.Locator("#sheet[data-sheet=pad]").WaitForAsync();
        foreach (var key in number)
        {
            if (betweenMs > 0) await Task.Delay(betweenMs);
            await Page.Locator(".key").GetByText($"{key}", new() { Exact = true }).ClickAsync();
        }
        await PressAsync("pad-save");
        await Page.Locator("#sheet[open]").WaitForAsync(new() { State = WaitForSelectorState.Detached });
    }

    /// <summary>Waits for a step.</summary>
    public Task StepAsync(string step, int withinMs = Patience.Ms) => Page.Locator($"body[data-step={step}]").WaitForAsync(new() { Timeout = withinMs });

    /// <summary>The step that is shown.</summary>
    public async Task<string> StepNowAsync() => await Page.Locator("body").GetAttributeAsync("data-step") ?? "";

    /// <summary>Seconds that the digits show.</summary>
    public async Task<double> DigitsAsync()
    {
        var parts = (await Page.Locator("#digits").InnerTextAsync()).Split(':');
        return parts.Length == 1 ? double.Parse(parts[0], CultureInfo.InvariantCulture) : (int.Parse(parts[0], CultureInfo.InvariantCulture) * 60) + int.Parse(parts[1], CultureInfo.InvariantCulture);
    }

    /// <summary>Waits until nothing is on this phone only.</summary>
    public async Task SentAsync()
    {
        await Task.Delay(300); // what was pressed last is on its way to the phone's storage
        await Page.WaitForFunctionAsync("() => document.body.dataset.writing === '0' && document.getElementById('counts').dataset.here === '0'", null, new() { PollingInterval = 100 });
    }

    /// <summary>Sets a clock that was opened as wrong to another wrong.</summary>
    public Task SetClockAheadAsync(long ms) => Page.EvaluateAsync("ms => setClockAhead(ms)", ms);

    /// <summary>Waits until the page would open without a network.</summary>
    public Task KeptForOfflineAsync() => Page.WaitForFunctionAsync("async () => navigator.serviceWorker.controller !== null && (await (await caches.open('run-clock-pages')).keys()).length > 0");

    /// <summary>Puts an entry of a kind that nobody knows among those that wait.</summary>
    public Task HoldAsync(Guid day, string kind) => Page.EvaluateAsync(Hold, new object[] { day.ToString("D"), Guid.CreateVersion7().ToString("D"), kind });

    /// <summary>Pulls the network cable, or plugs it in.</summary>
    public Task OfflineAsync(bool offline) => Context.SetOfflineAsync(offline);

    /// <summary>Another page comes to the front, and the browser freezes this one by its lifecycle command, as it does with pages in the background.</summary>
    /// <param name="during">For how long.</param>
    public async Task FreezeAsync(TimeSpan during)
    {
        session ??= await Context.NewCDPSessionAsync(Page);
        var other = await Context.NewPageAsync();
        await other.BringToFrontAsync();
        await session.SendAsync("Page.setWebLifecycleState", new() { ["state"] = "frozen" });
        await Task.Delay(during, TestContext.Current.CancellationToken);
        await session.SendAsync("Page.setWebLifecycleState", new() { ["state"] = "active" });
        await Page.BringToFrontAsync();
        await other.CloseAsync();
    }

    /// <summary>Lets the page note how long its own timers were kept from it.</summary>
    public Task NotePausesAsync() => Page.EvaluateAsync("""
        () => {
            let last = Date.now();
            globalThis.longestPause = 0;
            setInterval(() => {
                const now = Date.now();
                globalThis.longestPause = Math.max(globalThis.longestPause, now - last);
                last = now;
            }, 250);
        }
        """);

    /// <summary>The longest of those pauses, in seconds.</summary>
    public async Task<double> LongestPauseAsync() => await Page.EvaluateAsync<double>("() => globalThis.longestPause / 1000");

    /// <summary>Loads the page again.</summary>
    public async Task ReloadAsync()
    {
        session = null;
        await Page.ReloadAsync();
        await ReadyAsync();
    }

    /// <summary>Closes the page and opens it again, as a camera that needs the memory does.</summary>
    public async Task LosePageAsync(Guid day)
    {
        await Page.CloseAsync();
        session = null;
        Page = await Context.NewPageAsync();
        Page.PageError += (_, error) => Errors.Add(error);
        await ToClockAsync(day);
    }

    public async ValueTask DisposeAsync()
    {
        await Context.CloseAsync();
        Assert.Empty(Errors);
    }

    // As "Countdown 20 s" under More does, without a minute of typing in each test.
    const string ShortCountdown = """
        seconds => new Promise((done, failed) => {
            const open = indexedDB.open("coolproof-run-clock");
            open.onerror = () => failed(open.error);
            open.onsuccess = () => {
                const writing = open.result.transaction("notes", "readwrite");
                writing.objectStore("notes").put(seconds, "lead");
                writing.oncomplete = () => { open.result.close(); done(); };
            };
        })
        """;

    const string Hold = """
        ([day, id, kind]) => new Promise((done, failed) => {
            const open = indexedDB.open("coolproof-run-clock");
            open.onerror = () => failed(open.error);
            open.onsuccess = () => {
                const writing = open.result.transaction("entries", "readwrite");
                const entry = { id, kind, at: new Date().toISOString(), about: id, corrects: null, body: {} };
                writing.objectStore("entries").put({ id, day, device: id, entry, state: "here", reason: null });
                writing.oncomplete = () => { open.result.close(); done(); };
            };
        })
        """;

    static string WrongClock(long aheadMs) => $$"""
        (() => {
            const Right = Date;
            let ahead = {{aheadMs}};
            globalThis.setClockAhead = (ms) => (ahead = ms);
            globalThis.Date = class extends Right {
                constructor(...given) { if (given.length === 0) super(Right.now() + ahead); else super(...given); }
                static now() { return Right.now() + ahead; }
            };
        })();
        """;
}
