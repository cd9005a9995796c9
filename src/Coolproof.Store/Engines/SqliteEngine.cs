using Coolproof.Notebook.Journal;
using Microsoft.Data.Sqlite;

namespace Coolproof.Store.Engines;

/// <summary>The store in one SQLite file: write-ahead log, synced at each commit, one writer, readers beside it.</summary>
internal sealed class SqliteEngine(string file, TimeProvider clock) : Engine
{
    /// <summary>"Cool" in the file's header: what tells a notebook from any other SQLite file.</summary>
    public const int ApplicationId = 0x436F6F6C;

    private static readonly TimeSpan LookEvery = TimeSpan.FromMilliseconds(250);
    private SqliteConnection? _writer;

    /// <summary>Seconds that a write waits for another program's.</summary>
    internal int BusySeconds { get; init; } = 10;

    public override string Says => file;

    /// <summary>The connection that writes.</summary>
    internal SqliteConnection Writer => _writer ?? throw new InvalidOperationException("The store is not open.");

    public override Task OpenAsync(CancellationToken cancel) => OffThread(() =>
    {
        SqliteFile.Prepare(file, BusySeconds);
        _writer = Connect(SqliteOpenMode.ReadWrite);
    }, cancel);

    public override Task<(bool[] New, long Cursor)> WriteAsync(IReadOnlyList<EntryRow> rows, PhotoRow? photo, CancellationToken cancel) => OffThread(() =>
    {
        using SqliteTransaction transaction = Writer.BeginTransaction(deferred: false);
        bool[] isNew = SqliteRows.Insert(Writer, transaction, rows);
        if (photo is not null) SqliteRows.Insert(Writer, transaction, photo);
        long cursor = SqliteRows.Cursor(Writer, transaction);
        transaction.Commit();
        return (isNew, cursor);
    }, cancel);

    public override Task<List<StoredEntry>> ReadAfterAsync(long cursor, int limit, CancellationToken cancel) => OffThread(() =>
    {
        using SqliteConnection reader = Connect(SqliteOpenMode.ReadWrite);
        return SqliteRows.EntriesAfter(reader, cursor, limit);
    }, cancel);

    public override Task<long> CursorAsync(CancellationToken cancel) => OffThread(() =>
    {
        using SqliteConnection reader = Connect(SqliteOpenMode.ReadWrite);
        return SqliteRows.Cursor(reader, null);
    }, cancel);

    public override Task<StoredPhoto?> GetPhotoAsync(Guid id, CancellationToken cancel) => OffThread(() =>
    {
        using SqliteConnection reader = Connect(SqliteOpenMode.ReadWrite);
        return SqliteRows.Photo(reader, id);
    }, cancel);

    // Another process's commits show in data_version, which costs one page read.
    public override Task<IAsyncDisposable> WatchAsync(CommitBell bell, CancellationToken cancel)
    {
        SqliteConnection watcher = Guarded(() => Connect(SqliteOpenMode.ReadWrite));
        return Task.FromResult<IAsyncDisposable>(new Poll(clock, LookEvery, () => SqliteRows.Long(watcher, "PRAGMA data_version"), bell, watcher));
    }

    public override Task CheckAsync(CancellationToken cancel) => OffThread(() =>
    {
        using SqliteConnection reader = Connect(SqliteOpenMode.ReadWrite);
        using SqliteCommand command = reader.CreateCommand();
        command.CommandText = "PRAGMA integrity_check(1)";
        string said = command.ExecuteScalar() as string ?? "";
        if (said != "ok") throw SqliteFaults.Damaged(file, new InvalidDataException(said));
    }, cancel);

    public override Task CopyAsync(Func<EntryRow, CancellationToken, Task> entry, Func<PhotoRow, CancellationToken, Task> photo, CancellationToken cancel) => Task.Run(async () =>
    {
        using SqliteConnection reader = Guarded(() => Connect(SqliteOpenMode.ReadWrite));
        using SqliteTransaction snapshot = reader.BeginTransaction(deferred: true);
        foreach (EntryRow row in SqliteRows.ReadAfter(reader, 0, long.MaxValue)) await entry(row, cancel);
        foreach (PhotoRow row in SqliteRows.Photos(reader)) await photo(row, cancel);
    }, cancel);

    public override Task<bool> IsEmptyAsync(CancellationToken cancel) => OffThread(
        () => SqliteRows.Long(Writer, "SELECT (SELECT COUNT(*) FROM (SELECT 1 FROM entries LIMIT 1)) + (SELECT COUNT(*) FROM (SELECT 1 FROM photos LIMIT 1))") == 0, cancel);

    public override async Task FillAsync(IAsyncEnumerable<EntryRow> entries, IAsyncEnumerable<PhotoRow> photos, bool empty, CancellationToken cancel)
    {
        if (empty) throw new NotSupportedException("A SQLite file is replaced as a whole.");
        try
        {
            await using SqliteTransaction transaction = Writer.BeginTransaction(deferred: false);
            await foreach (EntryRow row in entries.WithCancellation(cancel)) SqliteRows.InsertKept(Writer, transaction, row);
            await foreach (PhotoRow row in photos.WithCancellation(cancel)) SqliteRows.Insert(Writer, transaction, row);
            await transaction.CommitAsync(cancel);
        }
        catch (SqliteException failure)
        {
            throw SqliteFaults.Of(file, failure);
        }
    }

    public override async ValueTask DisposeAsync()
    {
        if (_writer is null) return;
        await _writer.DisposeAsync();
        // Pooled readers hold the file; the last connection to close folds the write-ahead log into it.
        using SqliteConnection pooled = new(SqliteFile.ConnectionText(file, SqliteOpenMode.ReadWrite, BusySeconds, pooling: true));
        SqliteConnection.ClearPool(pooled);
    }

    private SqliteConnection Connect(SqliteOpenMode mode) => SqliteFile.Connect(file, mode, BusySeconds, pooling: _writer is not null);

    private T Guarded<T>(Func<T> work)
    {
        try
        {
            return work();
        }
        catch (SqliteException failure)
        {
            throw SqliteFaults.Of(file, failure);
        }
    }

    private Task OffThread(Action work, CancellationToken cancel) => OffThread(() =>
    {
        work();
        return true;
    }, cancel);

    // SQLite has no asynchronous calls; a sync of the disk must not hold up a thread that serves pages.
    private Task<T> OffThread<T>(Func<T> work, CancellationToken cancel) => Task.Run(() => Guarded(work), cancel);
}
