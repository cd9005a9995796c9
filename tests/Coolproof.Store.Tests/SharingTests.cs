using System.Diagnostics;
using Coolproof.Notebook.Journal;

namespace Coolproof.Store.Tests;

/// <summary>Many writers at once: nothing is missed by who reads along, and nobody waits long.</summary>
public sealed class SharingTests(PostgresServer server, ITestOutputHelper output) : IDisposable
{
    private readonly Places _places = new(server);

    public void Dispose() => _places.Dispose();

    [Theory, InlineData(Places.Sqlite), InlineData(Places.Postgres)]
    public async Task A_reader_who_goes_on_from_its_cursor_misses_nothing_that_two_servers_write(string engine)
    {
        string place = await _places.FreshAsync(engine);
        await using JournalStore a = await JournalStore.OpenAsync(place), b = await JournalStore.OpenAsync(place);
        Task[] writers = [.. Enumerable.Range(0, 8).Select(async phone =>
        {
            foreach (Entry lap in Entries.Laps(100 + phone, 60)) await (phone % 2 == 0 ? a : b).AppendAsync(Entries.Phone, [lap]);
        })];
        Task all = Task.WhenAll(writers);
        HashSet<Guid> read = [];
        long cursor = 0;
        while (true)
        {
            bool over = all.IsCompleted;
            JournalPage page = await b.ReadAfterAsync(cursor, 50);
            Assert.All(page.Entries, stored => Assert.True(read.Add(stored.Id)));
            cursor = page.Cursor;
            if (over && page.Entries.Count == 0) break;
        }

        await all;
        Assert.Equal(8 * 60, read.Count);
    }

    [Theory, InlineData(Places.Sqlite), InlineData(Places.Postgres)]
    public async Task What_another_server_writes_is_told_within_a_second(string engine)
    {
        string place = await _places.FreshAsync(engine);
        await using JournalStore here = await JournalStore.OpenAsync(place), there = await JournalStore.OpenAsync(place);
        using CancellationTokenSource limit = new(TimeSpan.FromSeconds(30));
        await using IAsyncEnumerator<long> watch = here.WatchAsync(limit.Token).GetAsyncEnumerator(limit.Token);
        Assert.True(await watch.MoveNextAsync());
        Assert.Equal(0, watch.Current);
        ValueTask<bool> next = watch.MoveNextAsync();
        Kept kept = await there.AppendAsync(Entries.Phone, Entries.Laps(9, 2));
        Stopwatch since = Stopwatch.StartNew();
        Assert.True(await next);
        Assert.Equal(kept.Cursor, watch.Current);
        Assert.InRange(since.Elapsed, TimeSpan.Zero, TimeSpan.FromSeconds(5)); // a second, and four for a busy machine
        next = watch.MoveNextAsync();
        kept = await here.AppendAsync(Entries.Phone, Entries.Laps(10, 1));
        Assert.True(await next);
        Assert.Equal(kept.Cursor, watch.Current);
    }

    [Fact]
    public async Task A_listener_comes_back_after_the_server_was_restarted()
    {
        await using PostgresServer own = new();
        await own.InitializeAsync();
        await using JournalStore store = await JournalStore.OpenAsync(await own.FreshAsync());
        using CancellationTokenSource limit = new(TimeSpan.FromSeconds(60));
        await using IAsyncEnumerator<long> watch = store.WatchAsync(limit.Token).GetAsyncEnumerator(limit.Token);
        await watch.MoveNextAsync();
        await store.AppendAsync(Entries.Phone, Entries.Laps(11, 3));
        await watch.MoveNextAsync();
        await own.StopAtOnceAsync();
        StoreException gone = await Assert.ThrowsAsync<StoreException>(() => store.AppendAsync(Entries.Phone, Entries.Laps(12, 1)));
        Assert.Equal(StoreFault.NoAccess, gone.Fault);
        await own.StartAsync();
        ValueTask<bool> next = watch.MoveNextAsync();
        Kept kept = await store.AppendAsync(Entries.Phone, Entries.Laps(12, 1));
        Assert.True(await next);
        Assert.Equal(kept.Cursor, watch.Current);
        Assert.Equal(4, (await store.ReadAfterAsync(0)).Entries.Count);
    }

    [Theory, InlineData(Places.Sqlite), InlineData(Places.Postgres)]
    [Trait("Suite", "long")]
    public async Task Fifty_phones_at_once_are_all_kept_and_what_they_waited_is_told(string engine)
    {
        await using JournalStore store = await JournalStore.OpenAsync(await _places.FreshAsync(engine));
        await store.AppendAsync(Entries.Phone, Entries.Laps(200, 100));
        double[][] waits = await Task.WhenAll(Enumerable.Range(0, 50).Select(phone => Task.Run(async () =>
        {
            // Each taps a few times a second, as fifty people do who stamp, shoot and type at once.
            Random chance = new(phone);
            List<double> own = [];
            foreach (Entry[] batch in Entries.Laps(300 + phone, 120).Chunk(2))
            {
                await Task.Delay(chance.Next(50, 250));
                Stopwatch watch = Stopwatch.StartNew();
                await store.AppendAsync(Entries.Phone, batch);
                own.Add(watch.Elapsed.TotalMilliseconds);
            }

            return own.ToArray();
        })));
        double[] all = [.. waits.SelectMany(own => own).Order()];
        output.WriteLine($"{engine}: {all.Length} batches of 50 phones: median {all[all.Length / 2]:F1} ms, 99 % {all[all.Length * 99 / 100]:F1} ms, longest {all[^1]:F1} ms");
        Assert.Equal(100 + (50 * 120), (await store.ReadAfterAsync(0)).Entries.Count);
    }

    [Theory, InlineData(Places.Sqlite), InlineData(Places.Postgres)]
    [Trait("Suite", "long")]
    public async Task A_hundred_thousand_entries_are_read_and_folded_in_seconds(string engine)
    {
        await using JournalStore store = await JournalStore.OpenAsync(await _places.FreshAsync(engine));
        Stopwatch watch = Stopwatch.StartNew();
        for (int maker = 400; maker < 500; maker++) await store.AppendAsync(Entries.Phone, Entries.Laps(maker, 1000));
        double writeS = watch.Elapsed.TotalSeconds;
        watch.Restart();
        List<StoredEntry> all = [];
        await foreach (StoredEntry stored in store.ReadAllAsync()) all.Add(stored);
        double readS = watch.Elapsed.TotalSeconds;
        output.WriteLine($"{engine}: {all.Count} entries written in {writeS:F1} s, read in {readS:F2} s");
        Assert.Equal(100_000, all.Select(stored => stored.Id).Distinct().Count());
    }
}
