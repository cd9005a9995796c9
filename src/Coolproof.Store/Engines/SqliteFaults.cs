using Microsoft.Data.Sqlite;

namespace Coolproof.Store.Engines;

/// <summary>What SQLite's result codes (sqlite.org/rescode.html) mean to a person.</summary>
internal static class SqliteFaults
{
    public static StoreException Of(string file, SqliteException failure) => failure.SqliteErrorCode switch
    {
        13 => new(StoreFault.DiskFull, $"The disk that holds {file} is full.", "Make room on it; what is not acknowledged is still on the phones, and is sent again by itself.", failure),
        11 or 26 => Damaged(file, failure),
        5 or 6 => new(StoreFault.Locked, $"Another program holds {file}.", "Close that program (a copy, a sync or a database browser), and try again.", failure),
        3 or 8 or 14 or 23 => new(StoreFault.NoAccess, $"{file} can't be opened for reading and writing.", "Check that the folder is there and that you may write to it.", failure),
        10 => new(StoreFault.Failed, $"The disk that holds {file} failed to read or write.", "Check the disk (is the stick still in, is it full?); what is not acknowledged is still on the phones.", failure),
        _ => new(StoreFault.Failed, $"{file}: {failure.Message}", "Try again; if it stays, make a backup and tell the makers.", failure),
    };

    public static StoreException Damaged(string file, Exception failure) => new(
        StoreFault.Damaged, $"{file} is damaged.", "Nothing more was written to it. Put it aside, and restore the latest backup into a new file (coolproof restore).", failure);
}
