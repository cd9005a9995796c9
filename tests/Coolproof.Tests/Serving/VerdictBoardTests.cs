using System.Net;
using System.Text.Json.Nodes;
using Coolproof.Board;
using Coolproof.Evidence;
using Coolproof.Notebook;
using Coolproof.Notebook.Journal;
using Coolproof.Store;
using Microsoft.Extensions.Logging.Abstractions;
using NodaTime;

namespace Coolproof.Tests.Serving;

/// <summary>Verdicts follow the readings: marked old as soon as they are, replaced when the next one is there, stopped when newer readings come.</summary>
public class VerdictBoardTests
{
    static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_latest_day_is_judged_as_compare_judges_its_table_and_a_new_reading_makes_it_old_until_it_is_judged_again()
    {
        await using var pit = await PitServer.StartAsync();
        using var events = await LiveEvents.OpenAsync(pit.Paired);
        var table = Table();
        await pit.Get<NotebookBoard>().KeepAsync(PitServer.Device, TableImport.Of(table), Cancel);
        var day = pit.Get<NotebookBoard>().Notebook.Days[^1].Id;
        var verdict = await UntilAsync(pit, day, "current");
        var straight = (Judged)Judge.Of(NotebookTable.Of(pit.Get<NotebookBoard>().Notebook, day: day).Table, new JudgeSettings(), cancel: Cancel);
        Assert.Equal(straight.Verdict.Sentence, (string)verdict["sentence"]!);
        Assert.Equal(straight.Verdict.Options[0].PeakCanC.Mean, (double)verdict["verdict"]!["options"]![0]!["peakCanC"]!["mean"]!, 2);

        var shot = pit.Get<NotebookBoard>().Notebook.RunsOf(day)[0].Shots[0];
        await pit.SendAsync(PitServer.Entry("shot.read", shot.Id, new() { ["shot"] = shot.Id.ToString(), ["value"] = 85.5, ["unit"] = "c" }));
        await pit.Get<NotebookBoard>().ReachAsync(await pit.Store.CursorAsync(Cancel), Cancel);
        var words = new List<string>();
        while (words.Count < 400 && (words.Count == 0 || words[^1] != "current"))
        {
            if (await events.NextAsync() is not { Event: "verdict" } one) continue;
            var said = JsonNode.Parse(one.Data)!;
            if ((string?)said["about"] == day.ToString()) words.Add((string)said["state"]! + (said["doing"] is null ? "" : "…"));
            // Those of the first verdict come first.
            if (words is [.., "current"] && !words.Contains("old…")) words.Clear();
        }
        Assert.Contains("old…", words);
        Assert.DoesNotContain("working…", words); // the last answer stays in sight
        Assert.NotEqual((string)verdict["judgedAt"]!, (string)(await UntilAsync(pit, day, "current"))["judgedAt"]!);
    }

    [Fact]
    public async Task Within_a_second_of_a_reading_the_first_look_names_the_option_in_front_and_the_answer_takes_its_place()
    {
        using var answer = new ManualResetEventSlim();
        await using var board = await Boards.StartAsync((table, how, progress, cancel) =>
        {
            answer.Wait(cancel);
            return new Refused("just a test", "none");
        });
        var (day, _) = await board.DayAsync();
        var (fan, run, shot) = (Guid.CreateVersion7(), Guid.CreateVersion7(), Guid.CreateVersion7());
        await board.Notebook.KeepAsync(PitServer.Device, [
            board.Entry(EntryKind.OptionSet, fan, EntryBody.Of(("name", "clamp with a 25 mm fan"))), board.Entry(EntryKind.RunBegin, run, EntryBody.Of(("day", day), ("option", fan), ("number", 2))),
            board.Entry(EntryKind.RunSet, run, EntryBody.Of(("driveS", 360))), board.Entry(EntryKind.Shot, shot, EntryBody.Of(("run", run))),
            board.Entry(EntryKind.ShotRead, shot, EntryBody.Of(("shot", shot), ("value", 62), ("unit", "c")))], Cancel);
        await board.UntilAsync(day, state => state.First is not null);
        var first = board.Verdicts.Of(day).First!;
        Assert.False(board.Verdicts.Of(day).Current);
        var table = NotebookTable.Of(board.Notebook.Notebook, day: day).Table;
        Assert.Equal("clamp with a 25 mm fan", first.Leader);
        Assert.InRange(first.Probability, 1.0 / table.Options.Count, 1);
        Assert.Contains(first.Leader, first.Words);
        answer.Set();
        await board.UntilAsync(day, state => state.Current);
        Assert.Null(board.Verdicts.Of(day).First);
    }

    [Fact]
    public async Task A_reading_that_is_taken_back_brings_its_verdict_back_without_judging_again()
    {
        var judged = 0;
        await using var board = await Boards.StartAsync((table, how, progress, cancel) =>
        {
            Interlocked.Increment(ref judged);
            return new Refused("just a test", "none");
        });
        var (day, shot) = await board.DayAsync();
        await board.UntilAsync(day, state => state.Current);
        var more = board.Entry(EntryKind.ShotRead, shot, EntryBody.Of(("shot", shot), ("value", 85.5), ("unit", "c")));
        await board.Notebook.KeepAsync(PitServer.Device, [more], Cancel);
        await board.UntilAsync(day, state => state.Current && judged == 2);
        await board.Notebook.KeepAsync(PitServer.Device, [board.Entry(EntryKind.Undo, Guid.CreateVersion7(), EntryBody.Of(("of", more.Id)))], Cancel);
        await board.UntilAsync(day, state => state.Current && judged == 3); // the last verdict was of other readings
        await board.Notebook.KeepAsync(PitServer.Device, [board.Entry(EntryKind.DeviceSet, PitServer.Device, EntryBody.Of(("name", "left phone")))], Cancel);
        await Task.Delay(600, Cancel);
        Assert.Equal(3, judged); // what says nothing of readings starts no work
    }

    [Fact]
    public async Task Newer_readings_stop_the_work_on_older_ones()
    {
        var stopped = new TaskCompletionSource();
        var calls = 0;
        await using var board = await Boards.StartAsync((table, how, progress, cancel) =>
        {
            if (Interlocked.Increment(ref calls) > 1) return new Refused("the newer ones", "none");
            progress.Report(new JudgeProgress("weighing the readings", 0.4));
            cancel.WaitHandle.WaitOne(TimeSpan.FromSeconds(30));
            if (cancel.IsCancellationRequested) stopped.SetResult();
            cancel.ThrowIfCancellationRequested();
            return new Refused("the older ones", "none");
        });
        var (day, shot) = await board.DayAsync();
        var working = await board.UntilAsync(day, state => state.Progress?.Fraction == 0.4);
        Assert.Equal(("working", "weighing the readings"), (working.Word, working.Progress!.Doing));
        await board.Notebook.KeepAsync(PitServer.Device, [board.Entry(EntryKind.ShotRead, shot, EntryBody.Of(("shot", shot), ("value", 85.5), ("unit", "c")))], Cancel);
        await stopped.Task.WaitAsync(TimeSpan.FromSeconds(10), Cancel);
        var state = await board.UntilAsync(day, one => one.Current);
        Assert.Equal("the newer ones", ((Refused)state.Judgement!).Reason);
    }

    [Fact]
    public async Task A_failure_of_the_program_is_kept_with_its_words_and_tried_again_with_the_next_reading()
    {
        var calls = 0;
        await using var board = await Boards.StartAsync((table, how, progress, cancel) =>
            Interlocked.Increment(ref calls) == 1 ? throw new InvalidOperationException("a number that can't be") : new Refused("now it runs", "none"));
        var (day, shot) = await board.DayAsync();
        var failed = await board.UntilAsync(day, state => state.Fault is not null);
        Assert.Equal("failed", failed.Word);
        Assert.Contains("a number that can't be", failed.Fault);
        Assert.False(failed.Current);
        await board.Notebook.KeepAsync(PitServer.Device, [board.Entry(EntryKind.ShotRead, shot, EntryBody.Of(("shot", shot), ("value", 85.5), ("unit", "c")))], Cancel);
        Assert.Null((await board.UntilAsync(day, state => state.Current)).Fault);
    }

    [Fact]
    public async Task Days_that_nobody_looks_at_are_not_judged_and_asking_is_enough()
    {
        await using var pit = await PitServer.StartAsync();
        await pit.Get<NotebookBoard>().KeepAsync(PitServer.Device, TableImport.Of(Table()), Cancel);
        var (older, newer) = (pit.Get<NotebookBoard>().Notebook.Days[^1].Id, Guid.CreateVersion7());
        var option = pit.Get<NotebookBoard>().Notebook.Options[0].Id;
        await pit.SendAsync(
            PitServer.Entry("day.set", newer, new() { ["date"] = "2031-01-01" }),
            PitServer.Entry("run.begin", Guid.CreateVersion7(), new() { ["day"] = newer.ToString(), ["option"] = option.ToString(), ["number"] = 1 }));
        Assert.Equal("refused", (string)(await UntilAsync(pit, newer, "refused"))["state"]!); // no readings yet: said so, with what to do
        Assert.NotEmpty((string)(await UntilAsync(pit, newer, "refused"))["remedy"]!);
        Assert.Equal("current", (string)(await UntilAsync(pit, older, "current"))["state"]!);
        using var none = await pit.Paired.GetAsync($"/api/verdicts/{Guid.CreateVersion7()}", Cancel);
        Assert.Equal(HttpStatusCode.NotFound, none.StatusCode);
    }

    [Fact]
    public async Task A_day_is_judged_together_with_earlier_ones_only_where_that_is_asked_and_after_it_was_judged_by_itself()
    {
        List<string> done = [];
        await using var board = await Boards.StartAsync((table, how, progress, cancel) => Noted(done, "alone", table), (table, before, alone, how, progress, cancel) => Noted(done, $"with {before.Sum(one => one.Runs.Count)}", table));
        var (before, shot) = await board.DayAsync();
        var (day, _) = await board.DayAsync("2026-06-14", before);
        await board.UntilAsync(day, state => state.Current);
        await board.UntilAsync(before, state => state.Current);
        await Task.Delay(400, Cancel);
        Assert.DoesNotContain("with 1", done);
        Assert.Null(board.Verdicts.Of(day).Earlier);

        Assert.NotNull(board.Verdicts.WithEarlier(day));
        var state = await board.UntilAsync(day, one => one.Earlier is { Current: true, Together: not null });
        Assert.Equal([before], state.Earlier!.Judged);
        Assert.Equal(1, done.Count(one => one == "with 1"));

        // A reading of the earlier day asks for it anew, and for nothing of the day itself.
        var alone = done.Count(one => one == "alone");
        await board.Notebook.KeepAsync(PitServer.Device, [board.Entry(EntryKind.ShotRead, shot, EntryBody.Of(("shot", shot), ("value", 85.5), ("unit", "c")))], Cancel);
        await board.UntilAsync(day, one => one.Earlier is { Current: true } && done.Count(what => what == "with 1") == 2);
        Assert.Equal(alone + 1, done.Count(one => one == "alone")); // the earlier day's own
    }

    [Fact]
    public async Task A_newer_reading_stops_the_work_on_days_together_and_the_last_answer_stays_marked_old()
    {
        var (calls, stopped) = (0, new TaskCompletionSource());
        await using var board = await Boards.StartAsync((table, how, progress, cancel) => Noted([], "alone", table), (table, before, alone, how, progress, cancel) =>
        {
            if (Interlocked.Increment(ref calls) == 2)
            {
                progress.Report(new JudgeProgress("weighing all days together", 0.5));
                cancel.WaitHandle.WaitOne(TimeSpan.FromSeconds(30));
                stopped.SetResult();
                cancel.ThrowIfCancellationRequested();
            }
            return Noted([], "with", table);
        });
        var (before, _) = await board.DayAsync();
        var (day, shot) = await board.DayAsync("2026-06-14", before);
        board.Verdicts.WithEarlier(day);
        var answered = await board.UntilAsync(day, state => state.Earlier is { Current: true });
        foreach (var reading in new[] { 85.5, 84 })
        {
            await board.Notebook.KeepAsync(PitServer.Device, [board.Entry(EntryKind.ShotRead, shot, EntryBody.Of(("shot", shot), ("value", reading), ("unit", "c")))], Cancel);
            if (reading == 84) break;
            var old = await board.UntilAsync(day, state => state.Earlier?.Progress is { Fraction: 0.5 });
            Assert.True(old.Current && !old.Earlier!.Current);
            Assert.Equal(answered.Earlier!.JudgedAt, old.Earlier.JudgedAt);
        }
        await stopped.Task.WaitAsync(TimeSpan.FromSeconds(10), Cancel);
        await board.UntilAsync(day, state => state.Earlier is { Current: true } && calls == 3);
    }

    static Judgement Noted(List<string> done, string what, ReadingsTable table)
    {
        lock (done) done.Add(what);
        return table.Runs.Count == 0 ? new Refused("no runs", "drive") : new Judged(Samples.Of(2));
    }

    static ReadingsTable Table()
    {
        using var stream = File.OpenRead(TestFiles.Of("demo", "demo-day.csv"));
        return ReadingsTableReader.Read(stream, null).Table!;
    }

    static async Task<JsonNode> UntilAsync(PitServer pit, Guid about, string word)
    {
        for (var i = 0; i < 600; i++)
        {
            var said = await PitServer.JsonAsync(await pit.Paired.GetAsync($"/api/verdicts/{about}", Cancel));
            if ((string)said["state"]! == word && said["doing"] is null) return said;
            await Task.Delay(100, Cancel);
        }
        throw new TimeoutException($"the verdict never was {word}");
    }

    /// <summary>Both boards on a real store, with a judging of the test's own.</summary>
    sealed class Boards : IAsyncDisposable
    {
        string folder = "";
        JournalStore? store;
        int made;

        public required NotebookBoard Notebook { get; init; }

        public required VerdictBoard Verdicts { get; init; }

        public static async Task<Boards> StartAsync(Judging judging, JudgingTogether? together = null)
        {
            var folder = Directory.CreateTempSubdirectory("coolproof-").FullName;
            var store = await JournalStore.OpenAsync(Path.Combine(folder, "n.coolproof"));
            var notebook = new NotebookBoard(store, TimeProvider.System);
            var boards = new Boards { Notebook = notebook, Verdicts = new VerdictBoard(notebook, TimeProvider.System, judging, together ?? ((_, _, _, _, _, _) => new Refused("just a test", "none")), NullLogger<VerdictBoard>.Instance), store = store, folder = folder };
            await notebook.StartAsync(Cancel);
            await boards.Verdicts.StartAsync(Cancel);
            return boards;
        }

        public Entry Entry(string kind, Guid about, EntryBody body) =>
            new(Guid.CreateVersion7(), kind, Instant.FromUtc(2026, 6, 13, 15, 0) + Duration.FromSeconds(++made), about, null, body);

        /// <summary>A day with one run and one reading, with the option of another day where one is named.</summary>
        public async Task<(Guid Day, Guid Shot)> DayAsync(string date = "2026-06-13", Guid? like = null)
        {
            var option = like is { } other ? Notebook.Notebook.RunsOf(other)[0].Option!.Value : Guid.CreateVersion7();
            var (day, run, shot) = (Guid.CreateVersion7(), Guid.CreateVersion7(), Guid.CreateVersion7());
            await Notebook.KeepAsync(PitServer.Device, [
                Entry(EntryKind.OptionSet, option, EntryBody.Of(("name", "bare can"))), Entry(EntryKind.DaySet, day, EntryBody.Of(("date", date))),
                Entry(EntryKind.RunBegin, run, EntryBody.Of(("day", day), ("option", option), ("number", 1))), Entry(EntryKind.RunSet, run, EntryBody.Of(("driveS", 360))),
                Entry(EntryKind.Shot, shot, EntryBody.Of(("run", run))), Entry(EntryKind.ShotRead, shot, EntryBody.Of(("shot", shot), ("value", 80), ("unit", "c")))], Cancel);
            return (day, shot);
        }

        public async Task<VerdictState> UntilAsync(Guid about, Func<VerdictState, bool> holds)
        {
            for (var i = 0; i < 300; i++)
            {
                var state = Verdicts.Of(about);
                if (holds(state)) return state;
                await Task.Delay(50, Cancel);
            }
            throw new TimeoutException($"it never came to that: {Verdicts.Of(about)}");
        }

        public async ValueTask DisposeAsync()
        {
            await Verdicts.StopAsync(default);
            await Notebook.StopAsync(default);
            await store!.DisposeAsync();
            Directory.Delete(folder, recursive: true);
        }
    }
}
