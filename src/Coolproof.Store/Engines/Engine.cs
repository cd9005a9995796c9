using Coolproof.Notebook.Journal;

namespace Coolproof.Store.Engines;

/// <summary>What a database does for the store. Failures that a person can put right are thrown as <see cref="StoreException"/>.</summary>
internal abstract class Engine : IAsyncDisposable
{
    /// <summary>The engine for a place.</summary>
    public static Engine For(Place place, TimeProvider clock) => place.File is { } file ? new SqliteEngine(file, clock) : new PostgresEngine(place, clock);

    /// <summary>The place for people.</summary>
    public abstract string Says { get; }

    /// <summary>Opens it, makes it where there is none, brings an older one up to date.</summary>
    public abstract Task OpenAsync(CancellationToken cancel);

    /// <summary>
    /// Writes rows and photos in one transaction and returns after it is synced to disk. Rows whose id is there are left out. Called by one thread at a time.
    /// </summary>
    /// <returns>For each row whether it was new, and the largest seq.</returns>
    public abstract Task<(bool[] New, long Cursor)> WriteAsync(IReadOnlyList<EntryRow> rows, PhotoRow? photo, CancellationToken cancel);

    /// <summary>Entries after a cursor in the order of seq.</summary>
    public abstract Task<List<StoredEntry>> ReadAfterAsync(long cursor, int limit, CancellationToken cancel);

    /// <summary>The largest seq; 0 when empty.</summary>
    public abstract Task<long> CursorAsync(CancellationToken cancel);

    /// <summary>A photo; null when it is not there.</summary>
    public abstract Task<StoredPhoto?> GetPhotoAsync(Guid id, CancellationToken cancel);

    /// <summary>Rings the bell for what others commit, until disposed.</summary>
    public abstract Task<IAsyncDisposable> WatchAsync(CommitBell bell, CancellationToken cancel);

    /// <summary>Looks for damage.</summary>
    public abstract Task CheckAsync(CancellationToken cancel);

    /// <summary>Copies everything as of one instant.</summary>
    public abstract Task CopyAsync(Func<EntryRow, CancellationToken, Task> entry, Func<PhotoRow, CancellationToken, Task> photo, CancellationToken cancel);

    /// <summary>Whether there are no entries and no photos.</summary>
    public abstract Task<bool> IsEmptyAsync(CancellationToken cancel);

    /// <summary>Writes rows with their seq and instants into it in one transaction, after emptying it where told.</summary>
    public abstract Task FillAsync(IAsyncEnumerable<EntryRow> entries, IAsyncEnumerable<PhotoRow> photos, bool empty, CancellationToken cancel);

    public abstract ValueTask DisposeAsync();
}
