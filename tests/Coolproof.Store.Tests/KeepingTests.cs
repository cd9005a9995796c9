using Coolproof.Notebook.Journal;
using NodaTime;

namespace Coolproof.Store.Tests;

/// <summary>What is appended is kept, once, in order; on both engines.</summary>
public sealed class KeepingTests(PostgresServer server) : IDisposable
{
    private readonly Places _places = new(server);

    public void Dispose() => _places.Dispose();

    [Theory, InlineData(Places.Sqlite), InlineData(Places.Postgres)]
    public async Task Every_type_of_value_is_read_back_as_it_was(string engine)
    {
        string place = await _places.FreshAsync(engine);
        Entry[] entries =
        [
            new(Entries.Id(3, 1), EntryKind.OptionSet, Instant.FromUtc(2026, 6, 13, 15, 5, 12).Plus(Duration.FromMilliseconds(345)), Entries.Id(3, 2), null,
                EntryBody.Of(("name", "naïve ✓ 你好 \"clamp\"; DROP TABLE entries;\n\u0001"), ("price", 12.5), ("cantBeUndone", true), ("note", null), ("massG", 1.0 / 3))),
            new(Entries.Id(3, 3), EntryKind.DaySet, Instant.FromUtc(2000, 1, 1, 0, 0), Entries.Id(3, 4), Entries.Id(3, 1), EntryBody.Of(("plan", new[] { Entries.Id(3, 2), Entries.Id(3, 2) }))),
            new(Entries.Id(3, 5), EntryKind.RunGo, Instant.FromUtc(2199, 12, 31, 23, 59, 59), Entries.Run, null, EntryBody.Empty),
            new(Entries.Id(3, 6), EntryKind.SettingSet, Instant.FromUtc(2026, 6, 13, 0, 0), Entries.Id(3, 7), null, EntryBody.Of(("big", 9007199254740993.0), ("tiny", 5e-324), ("empty", ""))),
        ];
        await using (JournalStore store = await JournalStore.OpenAsync(place)) await store.AppendAsync(Entries.Phone, entries);
        await using JournalStore again = await JournalStore.OpenAsync(place);
        JournalPage page = await again.ReadAfterAsync(0);
        Assert.Equal(entries, page.Entries.Select(stored => stored.Entry));
        Assert.All(page.Entries, stored => Assert.Equal(Entries.Phone, stored.Device));
        Assert.All(page.Entries, stored => Assert.InRange(SystemClock.Instance.GetCurrentInstant() - stored.Kept, Duration.Zero, Duration.FromMinutes(1)));
        Assert.Equal(page.Entries.Select(stored => stored.Seq), page.Entries.Select(stored => stored.Seq).Order());
        Assert.False(page.More);
    }

    [Theory, InlineData(Places.Sqlite), InlineData(Places.Postgres)]
    public async Task What_is_sent_twice_is_kept_once_and_acknowledged_both_times(string engine)
    {
        await using JournalStore store = await JournalStore.OpenAsync(await _places.FreshAsync(engine));
        Entry[] laps = Entries.Laps(4, 3);
        Kept first = await store.AppendAsync(Entries.Phone, laps[..2]);
        Kept second = await store.AppendAsync(Entries.Phone, [.. laps, laps[2]]);
        Assert.Equal((2, 1), (first.New, second.New));
        Assert.Equal([laps[0].Id, laps[1].Id, laps[2].Id, laps[2].Id], second.Ids);
        JournalPage page = await store.ReadAfterAsync(0);
        Assert.Equal(laps, page.Entries.Select(stored => stored.Entry));
        Assert.Equal(page.Cursor, second.Cursor);
    }

    [Theory, InlineData(Places.Sqlite), InlineData(Places.Postgres)]
    public async Task An_id_that_comes_again_with_other_words_changes_nothing(string engine)
    {
        await using JournalStore store = await JournalStore.OpenAsync(await _places.FreshAsync(engine));
        Entry lap = Entries.Laps(5, 1)[0];
        await store.AppendAsync(Entries.Phone, [lap]);
        await store.AppendAsync(Entries.Id(6, 0), [lap with { Kind = EntryKind.RunGo }]);
        StoredEntry held = Assert.Single((await store.ReadAfterAsync(0)).Entries);
        Assert.Equal((lap, Entries.Phone), (held.Entry, held.Device));
    }

    [Theory, InlineData(Places.Sqlite), InlineData(Places.Postgres)]
    public async Task Pages_join_to_the_whole(string engine)
    {
        await using JournalStore store = await JournalStore.OpenAsync(await _places.FreshAsync(engine));
        Entry[] laps = Entries.Laps(7, 25);
        await store.AppendAsync(Entries.Phone, laps);
        List<Entry> read = [];
        long cursor = 0;
        bool more;
        do
        {
            JournalPage page = await store.ReadAfterAsync(cursor, 10);
            read.AddRange(page.Entries.Select(stored => stored.Entry));
            (cursor, more) = (page.Cursor, page.More);
        }
        while (more);
        Assert.Equal(laps, read);
        Assert.Equal(cursor, (await store.ReadAfterAsync(cursor)).Cursor);
        Assert.Equal(cursor, await store.CursorAsync());
    }

    [Theory, InlineData(Places.Sqlite), InlineData(Places.Postgres)]
    public async Task A_photo_is_kept_to_the_byte_and_never_overwritten(string engine)
    {
        await using JournalStore store = await JournalStore.OpenAsync(await _places.FreshAsync(engine));
        byte[] bytes = [.. Enumerable.Range(0, 300_000).Select(i => (byte)(i * 7))];
        Guid id = Entries.Id(8, 1);
        Assert.Null(await store.GetPhotoAsync(id));
        await store.PutPhotoAsync(id, "image/jpeg", bytes);
        await store.PutPhotoAsync(id, "image/jpeg", bytes);
        StoreException refused = await Assert.ThrowsAsync<StoreException>(() => store.PutPhotoAsync(id, "image/jpeg", new byte[] { 1 }));
        Assert.Equal(StoreFault.OtherPhoto, refused.Fault);
        StoredPhoto? photo = await store.GetPhotoAsync(id);
        Assert.Equal(("image/jpeg", true), (photo!.MediaType, photo.Bytes.AsSpan().SequenceEqual(bytes)));
    }
}
