using System.Runtime.CompilerServices;
using Coolproof.Store.Engines;
using Microsoft.Data.Sqlite;

namespace Coolproof.Store.Backups;

/// <summary>Backups: one SQLite file whatever the engine, so that a notebook moves from a laptop to a club's server and back.</summary>
internal static class Backup
{
    private const int BusySeconds = 10;

    /// <summary>Writes everything into a new file; under its name only when it is whole and synced.</summary>
    public static async Task<BackedUp> WriteAsync(Engine engine, string file, IReadOnlyList<FolderBeside> beside, CancellationToken cancel)
    {
        file = Path.GetFullPath(file);
        if (File.Exists(file)) throw new StoreException(StoreFault.AlreadyThere, $"{file} is there already.", "Name a new file; a backup never overwrites one.");
        string unfinished = file + ".unfinished";
        DeleteFile(unfinished);
        int copied = 0, files = 0;
        try
        {
            // Files after the entries that name them: each lies there before its entry is noted.
            await FillNewAsync(unfinished, (entry, photo) => engine.CopyAsync((row, stop) =>
            {
                copied++;
                return entry(row, stop);
            }, photo, cancel), (connection, transaction) => files = BesideRows.Write(connection, transaction, beside, cancel), cancel);
            File.Move(unfinished, file);
            return new BackedUp(copied, files);
        }
        catch
        {
            DeleteFile(unfinished);
            throw;
        }
    }

    /// <summary>Brings a backup into a place.</summary>
    /// <returns>How many files of the folders it holds.</returns>
    public static async Task<int> RestoreAsync(string file, Place place, bool replace, IReadOnlyList<FolderBeside> beside, CancellationToken cancel)
    {
        file = Path.GetFullPath(file);
        if (!File.Exists(file)) throw new StoreException(StoreFault.NoAccess, $"The backup {file} is not there.", "Check its name.");
        // A copy is opened, never the backup itself: opening an older one would bring it up to date.
        string copy = Path.Combine(Path.GetTempPath(), $"coolproof-restore-{Guid.NewGuid():N}");
        try
        {
            CopyFile(file, copy);
            await using SqliteEngine source = new(copy, TimeProvider.System);
            await source.OpenAsync(cancel);
            await source.CheckAsync(cancel);
            return place.File is { } target ? await IntoFileAsync(source, target, replace, beside, cancel) : await IntoDatabaseAsync(source, place, replace, beside, cancel);
        }
        finally
        {
            DeleteFile(copy);
        }
    }

    private static async Task<int> IntoFileAsync(SqliteEngine source, string target, bool replace, IReadOnlyList<FolderBeside> beside, CancellationToken cancel)
    {
        bool there = File.Exists(target) && new FileInfo(target).Length > 0;
        if (there && !replace) throw AlreadyThere(target);
        string unfinished = target + ".unfinished";
        DeleteFile(unfinished);
        BroughtFiles? brought = null;
        try
        {
            await FillNewAsync(unfinished, (entry, photo) => source.CopyAsync(entry, photo, cancel), null, cancel);
            brought = Files(source, beside, cancel);
            if (there) PutAside(target);
            File.Move(unfinished, target);
            return brought.Held;
        }
        catch
        {
            brought?.TakeBack();
            DeleteFile(unfinished);
            throw;
        }
    }

    private static async Task<int> IntoDatabaseAsync(SqliteEngine source, Place place, bool replace, IReadOnlyList<FolderBeside> beside, CancellationToken cancel)
    {
        await using Engine target = Engine.For(place, TimeProvider.System);
        await target.OpenAsync(cancel);
        bool empty = await target.IsEmptyAsync(cancel);
        if (!empty && !replace) throw AlreadyThere(target.Says);
        BroughtFiles brought = Files(source, beside, cancel);
        try
        {
            await target.FillAsync(EntriesOf(source, cancel), PhotosOf(source, cancel), !empty, cancel);
            return brought.Held;
        }
        catch
        {
            brought.TakeBack();
            throw;
        }
    }

    private static BroughtFiles Files(SqliteEngine source, IReadOnlyList<FolderBeside> beside, CancellationToken cancel)
    {
        try
        {
            return BroughtFiles.Of(source.Writer, beside, cancel);
        }
        catch (InvalidDataException odd)
        {
            throw new StoreException(StoreFault.Damaged, $"The backup can't be right. {odd.Message}", "Take another backup. Nothing was changed.", odd);
        }
    }

    private static async IAsyncEnumerable<EntryRow> EntriesOf(SqliteEngine source, [EnumeratorCancellation] CancellationToken cancel)
    {
        await Task.CompletedTask;
        foreach (EntryRow row in SqliteRows.ReadAfter(source.Writer, 0, long.MaxValue))
        {
            cancel.ThrowIfCancellationRequested();
            yield return row;
        }
    }

    private static async IAsyncEnumerable<PhotoRow> PhotosOf(SqliteEngine source, [EnumeratorCancellation] CancellationToken cancel)
    {
        await Task.CompletedTask;
        foreach (PhotoRow row in SqliteRows.Photos(source.Writer))
        {
            cancel.ThrowIfCancellationRequested();
            yield return row;
        }
    }

    private static async Task FillNewAsync(
        string file, Func<Func<EntryRow, CancellationToken, Task>, Func<PhotoRow, CancellationToken, Task>, Task> copy, Action<SqliteConnection, SqliteTransaction>? beside, CancellationToken cancel)
    {
        try
        {
            SqliteFile.Prepare(file, BusySeconds);
            using SqliteConnection connection = SqliteFile.Connect(file, SqliteOpenMode.ReadWrite, BusySeconds, pooling: false);
            // One file, with nothing beside it.
            SqliteRows.Do(connection, "PRAGMA journal_mode = DELETE");
            await using SqliteTransaction transaction = connection.BeginTransaction(deferred: false);
            await copy(
                (row, _) =>
                {
                    SqliteRows.InsertKept(connection, transaction, row);
                    return Task.CompletedTask;
                },
                (row, _) =>
                {
                    SqliteRows.Insert(connection, transaction, row);
                    return Task.CompletedTask;
                });
            beside?.Invoke(connection, transaction);
            await transaction.CommitAsync(cancel);
        }
        catch (SqliteException failure)
        {
            throw SqliteFaults.Of(file, failure);
        }
    }

    // By the database's own copying, so that a notebook in use may be given as well.
    private static void CopyFile(string file, string copy)
    {
        try
        {
            using SqliteConnection from = SqliteFile.Connect(file, SqliteOpenMode.ReadOnly, BusySeconds, pooling: false);
            using SqliteConnection to = SqliteFile.Connect(copy, SqliteOpenMode.ReadWriteCreate, BusySeconds, pooling: false);
            from.BackupDatabase(to);
        }
        catch (SqliteException failure)
        {
            throw SqliteFaults.Of(file, failure);
        }
    }

    // The one that is replaced is kept, under a name that says so.
    private static void PutAside(string target)
    {
        SqliteFile.FoldLog(target, BusySeconds);
        File.Move(target, Aside.Of(target));
    }

    private static void DeleteFile(string file)
    {
        foreach (string name in (string[])[file, file + "-wal", file + "-shm", file + "-journal"]) File.Delete(name);
    }

    private static StoreException AlreadyThere(string says) => new(
        StoreFault.AlreadyThere, $"There is a notebook in {says} already.", "Restore into a fresh place, or say that this one is to be replaced.");
}
