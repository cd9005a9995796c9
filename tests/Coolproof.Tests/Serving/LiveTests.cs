namespace Coolproof.Tests.Serving;

/// <summary>Pages hear of what others tap.</summary>
public class LiveTests
{
    [Fact]
    public async Task A_listener_hears_where_the_notebook_is_and_then_each_change()
    {
        await using var pit = await PitServer.StartAsync();
        using var events = await LiveEvents.OpenAsync(pit.Paired);
        Assert.Equal(("entries", "{\"cursor\":0}"), await EntriesAsync(events));
        await pit.SendAsync(PitServer.Entry("run.lap", Guid.CreateVersion7()));
        Assert.Equal(("entries", "{\"cursor\":1}"), await EntriesAsync(events));
    }

    [Fact]
    public async Task A_listener_that_comes_back_is_told_what_it_missed_and_nothing_else()
    {
        await using var pit = await PitServer.StartAsync();
        await pit.SendAsync(PitServer.Entry("run.lap", Guid.CreateVersion7()));
        await pit.Get<Board.NotebookBoard>().ReachAsync(1, TestContext.Current.CancellationToken);
        string id;
        using (var events = await LiveEvents.OpenAsync(pit.Paired)) id = (await events.NextAsync())!.Value.Id;
        using (var missedNothing = await LiveEvents.OpenAsync(pit.Paired, id)) Assert.Null(await missedNothing.NextAsync(seconds: 1));
        await pit.SendAsync(PitServer.Entry("run.lap", Guid.CreateVersion7()));
        using var missedOne = await LiveEvents.OpenAsync(pit.Paired, id);
        Assert.Equal(("entries", "{\"cursor\":2}"), await EntriesAsync(missedOne));
    }

    [Fact]
    public async Task What_another_program_writes_into_the_notebook_is_heard_too()
    {
        await using var pit = await PitServer.StartAsync();
        using var events = await LiveEvents.OpenAsync(pit.Paired);
        await events.NextAsync();
        await using (var other = await Store.JournalStore.OpenAsync(pit.File, cancel: TestContext.Current.CancellationToken))
            await other.AppendAsync(PitServer.Device, [new(Guid.CreateVersion7(), "run.lap", NodaTime.Instant.FromUtc(2026, 6, 13, 15, 0), Guid.CreateVersion7(), null, Coolproof.Notebook.Journal.EntryBody.Empty)], TestContext.Current.CancellationToken);
        Assert.Equal(("entries", "{\"cursor\":1}"), await EntriesAsync(events));
    }

    [Fact]
    public async Task The_server_ends_at_once_although_someone_listens()
    {
        var pit = await PitServer.StartAsync();
        using var events = await LiveEvents.OpenAsync(pit.Paired);
        await events.NextAsync();
        var watch = System.Diagnostics.Stopwatch.StartNew();
        await pit.DisposeAsync();
        Assert.InRange(watch.Elapsed.TotalSeconds, 0, 3);
    }

    static async Task<(string, string)> EntriesAsync(LiveEvents events) => await events.NextAsync() is { } one ? (one.Event, one.Data) : ("nothing", "");
}
