using System.Globalization;
using System.Text.Json.Nodes;
using Coolproof.Board;
using Coolproof.Notebook.Journal;
using Coolproof.Tests.Serving;
using NodaTime;

namespace Coolproof.Tests.Pages;

/// <summary>Go on or stop on the day's page, and the option that the run clock is given: what is believed of the readings, never more than the round may show.</summary>
public class SteerPanelTests
{
    static readonly Instant Start = Instant.FromUtc(2026, 6, 13, 16, 0);

    [Fact]
    public async Task After_each_reading_the_day_says_what_next_and_what_it_would_bring()
    {
        await using var pit = await PitServer.StartAsync(clock: new SetClock((Start + Duration.FromMinutes(50)).ToDateTimeOffset()));
        using var reader = new Reader(pit);
        var (day, a, b) = await DayAsync(pit, [0, 1, 0, 1]);
        await reader.GoAsync($"/day/{day}");
        Assert.Contains("Drive on. Next: a, by the plan.", reader.Text);
        Assert.Contains("4 runs are planned.", reader.Text);
        await RunAsync(pit, day, 1, a, 0, 72, 70, 68);
        await RunAsync(pit, day, 2, b, 28, 62, 61, 60);
        await BelievedAsync(pit, day, runs: 2);
        await reader.GoAsync($"/day/{day}");
        Assert.Contains("b leads a by", reader.Text);
        Assert.Contains("Next: a, by the plan", reader.Text);
        Assert.Contains("narrows the main difference by", reader.Text);
        Assert.Contains("settled with a chance of", reader.Text);
        // Until 20:00, a cycle of 28 minutes: the next go not before 17:00 (halt 16:34, 2 min, 20 min = 16:56), so 7 gos at 16:56, 17:24 ... 19:44.
        Assert.Contains("After the 7 runs that still fit", reader.Text);

        await reader.GoAsync($"/day/{day}?rain=17:05");
        Assert.Contains("After the 1 run that still fits", reader.Text);
        await reader.GoAsync($"/day/{day}?rain=17:00");
        Assert.Contains("No further run fits: what has no reading stays open, and the verdict on the rest stands.", reader.Text);
        await reader.GoAsync($"/day/{day}?rain=four");
        Assert.Contains("expected a clock time like 16:00", reader.Text);

        await reader.SendAsync("Drive it next");
        Assert.Equal([a, b, b, a], reader.Notebook.Find<NotedDay>(day)!.Plan);
        Assert.Contains("Next: b, by the plan", reader.Text);
    }

    [Fact]
    public async Task While_a_round_is_hidden_only_the_next_option_is_said()
    {
        await using var pit = await PitServer.StartAsync(clock: new SetClock((Start + Duration.FromMinutes(80)).ToDateTimeOffset()));
        using var reader = new Reader(pit);
        var (day, a, b) = await DayAsync(pit, [0, 1, 0, 1]);
        await RunAsync(pit, day, 1, a, 0, 72, 70, 68);
        await RunAsync(pit, day, 2, b, 28, 62, 61, 60);
        await RunAsync(pit, day, 3, a, 56, 73, 71, 70);
        await BelievedAsync(pit, day, runs: 3);
        reader.Keep("coolproof-hide", "yes");
        await reader.GoAsync($"/day/{day}");
        Assert.Contains("Next: b.", reader.Text);
        Assert.All(["leads", "odds", "narrows", "settled", "chance"], word => Assert.DoesNotContain(word, reader.Page.QuerySelector("#steer")!.TextContent));
        await reader.GoAsync($"/day/{day}?show=1");
        Assert.Contains("b leads a by", reader.Text);
        await reader.GoAsync($"/report/{day}/picture-1080.png"); // a report would tell it too
        Assert.Equal($"/verdict/{day}", reader.Path);
    }

    [Fact]
    public async Task Once_the_plan_is_driven_the_run_clock_is_given_the_run_that_tells_most()
    {
        await using var pit = await PitServer.StartAsync(clock: new SetClock((Start + Duration.FromMinutes(80)).ToDateTimeOffset()));
        var (day, a, b) = await DayAsync(pit, [0, 1, 1]);
        await RunAsync(pit, day, 1, a, 0, 66, 65, 64);
        await RunAsync(pit, day, 2, b, 28, 63, 62, 61);
        Assert.Null((await ThingsAsync(pit, day))["advised"]); // the plan has a run left: it goes before any advice
        await RunAsync(pit, day, 3, b, 56, 64, 62, 61);
        await BelievedAsync(pit, day, runs: 3);
        var notebook = pit.Get<NotebookBoard>().Notebook;
        var noted = notebook.Find<NotedDay>(day)!;
        var advice = DaySteering.Of(notebook, noted, pit.Get<VerdictBoard>().Of(day).Quick, Start + Duration.FromMinutes(80));
        Assert.Equal("a", advice.Next[0].Option); // driven once, the other twice
        var things = await ThingsAsync(pit, day);
        Assert.Equal((a.ToString(), 3), (things["advised"]!.GetValue<string>(), things["advisedAfter"]!.GetValue<int>()));
    }

    [Fact]
    public void Runs_that_still_fit_are_counted_as_they_would_be_driven()
    {
        foreach (var (toMin, afterMin, cool) in new[] { (1200.0, 50.0, 20.0), (1100, 10, 12), (970, 0, 20), (965, 0, 20), (1500, 400, 31), (1005, 33, 9) })
        {
            Guid day = Guid.CreateVersion7(), run = Guid.CreateVersion7();
            List<StoredEntry> entries =
            [
                Stored(EntryKind.DaySet, day, Start, ("date", "2026-06-13"), ("toMin", toMin), ("coolMin", cool), ("driveS", 360)),
                Stored(EntryKind.RunBegin, run, Start, ("day", day)), Stored(EntryKind.RunGo, run, Start), Stored(EntryKind.RunHalt, run, Start + Duration.FromMinutes(7)),
            ];
            var notebook = PitNotebook.Of(entries);
            // One go after the other, as on the day.
            var (go, fits) = (Math.Max(960 + afterMin, 967 + 2 + cool), 0);
            for (; go + 6 <= toMin; go += 6 + 2 + cool) fits++;
            Assert.Equal(fits, DaySteering.RunsLeft(notebook, notebook.Find<NotedDay>(day)!, Start + Duration.FromMinutes(afterMin), null));
        }
    }

    static StoredEntry Stored(string kind, Guid about, Instant at, params (string, object?)[] fields) =>
        new(new Entry(Guid.CreateVersion7(), kind, at, about, null, EntryBody.Of(fields)), PitServer.Device, 1, at);

    static async Task<(Guid Day, Guid A, Guid B)> DayAsync(PitServer pit, int[] plan)
    {
        Guid day = Guid.CreateVersion7(), a = Guid.CreateVersion7(), b = Guid.CreateVersion7();
        using var kept = await pit.SendAsync(
            PitServer.Entry("option.set", a, new() { ["name"] = "a", ["fans"] = 0 }), PitServer.Entry("option.set", b, new() { ["name"] = "b", ["fans"] = 1 }),
            PitServer.Entry("day.set", day, new()
            {
                ["date"] = "2026-06-13",
                ["fromMin"] = 960,
                ["toMin"] = 1200,
                ["coolMin"] = 20,
                ["driveS"] = 360,
                ["plan"] = new JsonArray([.. plan.Select(o => (JsonNode)(o == 0 ? a : b).ToString())]),
            }),
            PitServer.Entry("weather", day, new() { ["day"] = day.ToString(), ["airC"] = 27, ["airBy"] = "thermometer" }, at: At(0)));
        Assert.True(kept.IsSuccessStatusCode, await kept.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
        return (day, a, b);
    }

    static async Task RunAsync(PitServer pit, Guid day, int number, Guid option, double goMin, params double[] reads)
    {
        var run = Guid.CreateVersion7();
        List<JsonNode> entries =
        [
            PitServer.Entry("run.begin", run, new() { ["day"] = day.ToString(), ["option"] = option.ToString(), ["number"] = number }, at: At(goMin)), PitServer.Entry("run.go", run, at: At(goMin)),
            PitServer.Entry("run.stop", run, new() { ["by"] = "horn" }, at: At(goMin + 6)), PitServer.Entry("run.halt", run, at: At(goMin + 6)),
        ];
        for (var i = 0; i < reads.Length; i++)
        {
            var shot = Guid.CreateVersion7();
            entries.Add(PitServer.Entry("shot", shot, new() { ["run"] = run.ToString() }, at: At(goMin + 6 + (12 + 20 * i) / 60.0)));
            entries.Add(PitServer.Entry("shot.read", shot, new() { ["shot"] = shot.ToString(), ["value"] = reads[i], ["unit"] = "c" }, at: At(goMin + 6 + (14 + 20 * i) / 60.0)));
        }
        using var kept = await pit.SendAsync([.. entries]);
        Assert.True(kept.IsSuccessStatusCode, await kept.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
    }

    // The quick look at the newest readings takes part of a second.
    static async Task BelievedAsync(PitServer pit, Guid day, int runs)
    {
        var board = pit.Get<NotebookBoard>();
        await board.ReachAsync(await pit.Store.CursorAsync(TestContext.Current.CancellationToken), TestContext.Current.CancellationToken);
        Assert.Equal(runs, board.Notebook.RunsOf(day).Count);
        for (var tries = 0; tries < 600; tries++)
        {
            if (pit.Get<VerdictBoard>().Of(day) is { Quick: not null, QuickRuns: var of } && of == runs) return;
            await Task.Delay(100, TestContext.Current.CancellationToken);
        }
        Assert.Fail("nothing is believed after a minute");
    }

    static async Task<JsonNode> ThingsAsync(PitServer pit, Guid day)
    {
        await pit.Get<NotebookBoard>().ReachAsync(await pit.Store.CursorAsync(TestContext.Current.CancellationToken), TestContext.Current.CancellationToken);
        using var answer = await pit.Paired.GetAsync($"/clock/{day}/entries?after=0", TestContext.Current.CancellationToken);
        return (await PitServer.JsonAsync(answer))["things"]!;
    }

    static string At(double minutes) => (Start + Duration.FromMinutes(minutes)).ToString("uuuu-MM-dd'T'HH:mm:ss.fff'Z'", CultureInfo.InvariantCulture);
}
