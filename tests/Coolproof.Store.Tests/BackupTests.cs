using Coolproof.Notebook.Journal;
using Coolproof.Store.Engines;
using Microsoft.Data.Sqlite;

namespace Coolproof.Store.Tests;

/// <summary>Backups are whole, made while the store is in use, and come back into either engine.</summary>
public sealed class BackupTests(PostgresServer server) : IDisposable
{
    private static readonly byte[] Picture = [1, 2, 3];
    private readonly Places _places = new(server);

    public void Dispose() => _places.Dispose();

    [Theory]
    [InlineData(Places.Sqlite, Places.Sqlite)]
    [InlineData(Places.Sqlite, Places.Postgres)]
    [InlineData(Places.Postgres, Places.Sqlite)]
    [InlineData(Places.Postgres, Places.Postgres)]
    public async Task A_backup_of_one_engine_comes_back_into_the_other_and_goes_on_from_there(string from, string to)
    {
        string file = _places.FileOf("backup.coolproof");
        StoredEntry[] all;
        await using (JournalStore store = await JournalStore.OpenAsync(await _places.FreshAsync(from)))
        {
            await store.AppendAsync(Entries.Phone, Entries.Laps(40, 25));
            await store.AppendAsync(Entries.Id(41, 0), Entries.Laps(41, 5));
            await store.PutPhotoAsync(Entries.Id(42, 1), "image/png", Picture);
            await store.BackupAsync(file);
            all = [.. (await store.ReadAfterAsync(0)).Entries];
        }

        Assert.Equal(["backup.coolproof"], Directory.GetFiles(_places.Folder, "backup*").Select(Path.GetFileName));
        string place = await _places.FreshAsync(to);
        await JournalStore.RestoreAsync(file, place);
        await using JournalStore back = await JournalStore.OpenAsync(place);
        Assert.Equal(all, (await back.ReadAfterAsync(0)).Entries);
        Assert.Equal(Picture, (await back.GetPhotoAsync(Entries.Id(42, 1)))!.Bytes);
        Kept more = await back.AppendAsync(Entries.Phone, Entries.Laps(43, 1));
        Assert.True(more.Cursor > all[^1].Seq);
        await using JournalStore itself = await JournalStore.OpenAsync(file);
        Assert.Equal(all, (await itself.ReadAfterAsync(0)).Entries);
    }

    [Theory, InlineData(Places.Sqlite), InlineData(Places.Postgres)]
    public async Task A_backup_made_while_phones_write_is_of_one_instant(string engine)
    {
        await using JournalStore store = await JournalStore.OpenAsync(await _places.FreshAsync(engine));
        using CancellationTokenSource stop = new();
        Task writer = Task.Run(async () =>
        {
            for (int i = 0; !stop.IsCancellationRequested; i++) await store.AppendAsync(Entries.Phone, Entries.Laps(5000 + i, 3));
        });
        await Task.Delay(200);
        for (int i = 0; i < 5; i++)
        {
            string file = _places.FileOf($"backup-{i}");
            await store.BackupAsync(file);
            await using JournalStore copy = await JournalStore.OpenAsync(file);
            await copy.CheckAsync();
            JournalPage page = await copy.ReadAfterAsync(0);
            Assert.NotEmpty(page.Entries);
            // Batches of three are in it whole, and none is missing before the last.
            Assert.Equal(0, page.Entries.Count % 3);
            Assert.Equal((await store.ReadAfterAsync(0, page.Entries.Count)).Entries, page.Entries);
        }

        await stop.CancelAsync();
        await writer;
    }

    [Theory, InlineData(Places.Sqlite), InlineData(Places.Postgres)]
    public async Task A_notebook_is_only_replaced_when_told_and_a_file_is_put_aside(string engine)
    {
        string file = _places.FileOf("backup"), place = await _places.FreshAsync(engine);
        await using (JournalStore store = await JournalStore.OpenAsync(_places.FileOf("source")))
        {
            await store.AppendAsync(Entries.Phone, Entries.Laps(44, 2));
            await store.BackupAsync(file);
            Assert.Equal(StoreFault.AlreadyThere, (await Assert.ThrowsAsync<StoreException>(() => store.BackupAsync(file))).Fault);
        }

        await using (JournalStore old = await JournalStore.OpenAsync(place)) await old.AppendAsync(Entries.Phone, Entries.Laps(45, 7));
        Assert.Equal(StoreFault.AlreadyThere, (await Assert.ThrowsAsync<StoreException>(() => JournalStore.RestoreAsync(file, place))).Fault);
        await using (JournalStore still = await JournalStore.OpenAsync(place)) Assert.Equal(7, (await still.ReadAfterAsync(0)).Entries.Count);
        await JournalStore.RestoreAsync(file, place, replace: true);
        await using (JournalStore replaced = await JournalStore.OpenAsync(place)) Assert.Equal(Entries.Laps(44, 2), (await replaced.ReadAfterAsync(0)).Entries.Select(stored => stored.Entry));
        if (engine != Places.Sqlite) return;
        await using JournalStore aside = await JournalStore.OpenAsync(place + ".replaced");
        Assert.Equal(7, (await aside.ReadAfterAsync(0)).Entries.Count);
    }

    [Fact]
    public async Task A_damaged_backup_is_refused_and_the_place_stays_as_it_was()
    {
        string file = _places.FileOf("backup"), place = await _places.FreshAsync(Places.Sqlite);
        await using (JournalStore store = await JournalStore.OpenAsync(_places.FileOf("source")))
        {
            await store.AppendAsync(Entries.Phone, Entries.Laps(46, 3000));
            await store.BackupAsync(file);
        }

        byte[] bytes = await File.ReadAllBytesAsync(file);
        for (int i = 8192; i < bytes.Length; i += 64) bytes[i] ^= 0x5A;
        await File.WriteAllBytesAsync(file, bytes);
        Assert.Equal(StoreFault.Damaged, (await Assert.ThrowsAsync<StoreException>(() => JournalStore.RestoreAsync(file, place))).Fault);
        Assert.False(File.Exists(place));
        Assert.Empty(Directory.GetFiles(_places.Folder, "*.unfinished*"));
    }

    [Theory]
    [InlineData(Places.Sqlite, Places.Sqlite)]
    [InlineData(Places.Sqlite, Places.Postgres)]
    [InlineData(Places.Postgres, Places.Sqlite)]
    public async Task Files_beside_a_notebook_go_with_it_and_come_back_byte_for_byte(string from, string to)
    {
        string file = _places.FileOf("backup"), there = _places.FileOf("there"), here = _places.FileOf("here");
        byte[] large = new byte[9_000_001]; // three parts
        new Random(1).NextBytes(large);
        Directory.CreateDirectory(Path.Combine(there, "2026-06-09"));
        await File.WriteAllBytesAsync(Path.Combine(there, "large.trace"), large);
        await File.WriteAllBytesAsync(Path.Combine(there, "2026-06-09", "can-1.trace"), []);
        await File.WriteAllTextAsync(Path.Combine(there, "writing.lock"), "stays out");
        await using (JournalStore store = await JournalStore.OpenAsync(await _places.FreshAsync(from)))
        {
            await store.AppendAsync(Entries.Phone, Entries.Laps(51, 2));
            // One that is being written to, as a sensor's log is.
            await using FileStream growing = new(Path.Combine(there, "2026-06-09", "air-1.trace"), FileMode.CreateNew, FileAccess.ReadWrite, FileShare.Read);
            growing.Write(Picture);
            growing.Flush();
            Assert.Equal(new BackedUp(2, 3), await store.BackupAsync(file, [new("files", there, ".trace"), new("none", _places.FileOf("no such folder"), ".trace")]));
        }

        string place = await _places.FreshAsync(to);
        Assert.Equal(3, await JournalStore.RestoreAsync(file, place, beside: [new("files", here, ".trace")]));
        Assert.Equal(["2026-06-09/air-1.trace", "2026-06-09/can-1.trace", "large.trace"], Directory.GetFiles(here, "*", SearchOption.AllDirectories).Select(one => Path.GetRelativePath(here, one)).Order(StringComparer.Ordinal));
        Assert.Equal(large, await File.ReadAllBytesAsync(Path.Combine(here, "large.trace")));
        Assert.Empty(await File.ReadAllBytesAsync(Path.Combine(here, "2026-06-09", "can-1.trace")));
        Assert.Equal(Picture, await File.ReadAllBytesAsync(Path.Combine(here, "2026-06-09", "air-1.trace")));
        await using JournalStore back = await JournalStore.OpenAsync(place);
        Assert.Equal(Entries.Laps(51, 2), (await back.ReadAfterAsync(0)).Entries.Select(stored => stored.Entry));
    }

    [Fact]
    public async Task A_file_that_has_gone_on_stays_another_one_is_put_aside_and_a_refused_restore_touches_none()
    {
        string file = _places.FileOf("backup"), there = _places.FileOf("there"), place = await _places.FreshAsync(Places.Sqlite);
        FolderBeside folder = new("files", there, ".trace");
        Directory.CreateDirectory(there);
        string longer = Path.Combine(there, "longer.trace"), other = Path.Combine(there, "other.trace"), gone = Path.Combine(there, "gone.trace");
        string sub = Path.Combine(there, "sub"), last = Path.Combine(sub, "last.trace");
        Directory.CreateDirectory(sub);
        foreach (string one in (string[])[longer, other, gone, last]) await File.WriteAllBytesAsync(one, Picture);
        await using (JournalStore store = await JournalStore.OpenAsync(place))
        {
            await store.AppendAsync(Entries.Phone, Entries.Laps(52, 2));
            await store.BackupAsync(file, [folder]);
        }

        await File.WriteAllBytesAsync(longer, [.. Picture, 4]);
        await File.WriteAllBytesAsync(other, [1, 2]);
        File.Delete(gone);
        Assert.Equal(StoreFault.AlreadyThere, (await Assert.ThrowsAsync<StoreException>(() => JournalStore.RestoreAsync(file, place, beside: [folder]))).Fault);
        Assert.False(File.Exists(gone));
        // The last one can't be written: those before it go back to how they were.
        Directory.Delete(sub, recursive: true);
        await File.WriteAllTextAsync(sub, "in the way");
        await Assert.ThrowsAsync<IOException>(() => JournalStore.RestoreAsync(file, place, replace: true, [folder]));
        Assert.Equal(["longer.trace", "other.trace", "sub"], Directory.GetFiles(there).Select(Path.GetFileName).Order(StringComparer.Ordinal));
        Assert.Equal([1, 2], await File.ReadAllBytesAsync(other));
        Assert.False(File.Exists(place + ".replaced") || File.Exists(place + ".unfinished"));
        File.Delete(sub);
        Assert.Equal(4, await JournalStore.RestoreAsync(file, place, replace: true, [folder]));
        Assert.Equal(Picture, await File.ReadAllBytesAsync(last));
        Assert.Equal(["gone.trace", "longer.trace", "other.trace", "other.trace.replaced"], Directory.GetFiles(there).Select(Path.GetFileName).Order(StringComparer.Ordinal));
        Assert.Equal([1, 2, 3, 4], await File.ReadAllBytesAsync(longer));
        Assert.Equal(Picture, await File.ReadAllBytesAsync(other));
        Assert.Equal([1, 2], await File.ReadAllBytesAsync(other + ".replaced"));
    }

    [Theory]
    [InlineData("files/../../outside.trace")]
    [InlineData("/tmp/outside.trace")]
    [InlineData("files/.hidden.trace")]
    public async Task A_backup_that_names_a_file_elsewhere_is_refused_whole(string name)
    {
        string file = _places.FileOf("backup"), there = _places.FileOf("there"), place = await _places.FreshAsync(Places.Sqlite);
        Directory.CreateDirectory(there);
        await File.WriteAllBytesAsync(Path.Combine(there, "a.trace"), Picture);
        await using (JournalStore store = await JournalStore.OpenAsync(_places.FileOf("source"))) await store.BackupAsync(file, [new("files", there, ".trace")]);
        using (SqliteConnection connection = SqliteFile.Connect(file, SqliteOpenMode.ReadWrite, 10, pooling: false)) SqliteRows.Do(connection, $"INSERT INTO files_beside VALUES ('{name}', 0, x'01')");
        StoreException refused = await Assert.ThrowsAsync<StoreException>(() => JournalStore.RestoreAsync(file, place, beside: [new("files", _places.FileOf("here"), ".trace")]));
        Assert.Equal(StoreFault.Damaged, refused.Fault);
        Assert.False(File.Exists(place) || Directory.Exists(_places.FileOf("here")));
    }

    [Fact]
    public async Task A_notebook_of_version_1_is_brought_up_to_date_with_all_that_it_holds()
    {
        string file = _places.FileOf("old.coolproof");
        File.Copy(Path.Combine(AppContext.BaseDirectory, "Data", "version-1.coolproof"), file);
        await using JournalStore store = await JournalStore.OpenAsync(file);
        PitNotebook notebook = PitNotebook.Of((await store.ReadAfterAsync(0)).Entries);
        Assert.Equal(["bare can", "clip-on finned clamp"], notebook.Options.Select(option => option.Name));
        Assert.Equal((360.0, 61.5), (notebook.Runs.Single().DriveS, notebook.Runs.Single().Shots.Single().ReadC));
        await store.PutPhotoAsync(Entries.Id(47, 1), "image/png", Picture);
        await store.AppendAsync(Entries.Phone, Entries.Laps(47, 1));
    }

    [Fact]
    public async Task A_database_of_version_1_is_brought_up_to_date_with_all_that_it_holds()
    {
        string place = await server.FreshAsync();
        await using (PostgresEngine old = new(Place.Of(place), TimeProvider.System)) await old.OpenAsync("0001-entries.sql", default);
        string name = place.Split('/')[^1];
        await server.DoAsync(name, "INSERT INTO coolproof.entries (id, device, kind, at_ms, about, body, kept_ms) VALUES ('00000001-0000-7000-8000-000000000001', '00000001-0000-7000-8000-000000000002', 'run.go', 1780000000000, '00000001-0000-7000-8000-000000000003', '{}', 1780000000001)");
        await using JournalStore store = await JournalStore.OpenAsync(place);
        Assert.Equal("run.go", Assert.Single((await store.ReadAfterAsync(0)).Entries).Entry.Kind);
        await store.PutPhotoAsync(Entries.Id(48, 1), "image/png", Picture);
    }
}
