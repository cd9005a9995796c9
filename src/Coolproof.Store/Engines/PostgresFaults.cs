using Npgsql;

namespace Coolproof.Store.Engines;

/// <summary>What PostgreSQL's error codes (postgresql.org/docs/current/errcodes-appendix.html) mean to a person.</summary>
internal static class PostgresFaults
{
    public static StoreException Of(string says, NpgsqlException failure) => failure.SqlState switch
    {
        PostgresErrorCodes.DiskFull => new(StoreFault.DiskFull, $"The disk of the database server of {says} is full.", "Make room on it; what is not acknowledged is still on the phones, and is sent again by itself.", failure),
        PostgresErrorCodes.DataCorrupted or PostgresErrorCodes.IndexCorrupted => new(StoreFault.Damaged, $"The database {says} is damaged.", "Have it checked by whoever runs it, or restore the latest backup into a new database.", failure),
        PostgresErrorCodes.InvalidPassword or PostgresErrorCodes.InvalidAuthorizationSpecification => new(StoreFault.NoAccess, $"The database server refuses the user or the password of {says}.", "Check both in the address.", failure),
        PostgresErrorCodes.InvalidCatalogName => new(StoreFault.NoAccess, $"The database of {says} is not there.", "Have it made (createdb), or name another.", failure),
        PostgresErrorCodes.InsufficientPrivilege => new(StoreFault.NoAccess, $"The user of {says} lacks a right: {Plain(failure)}.", "Have it granted: the user must be allowed to make a schema and tables in that database.", failure),
        PostgresErrorCodes.LockNotAvailable or PostgresErrorCodes.DeadlockDetected => new(StoreFault.Locked, $"Another program holds {says}.", "Try again.", failure),
        PostgresErrorCodes.TooManyConnections => new(StoreFault.NoAccess, $"The database server of {says} takes no more connections.", "Close other programs, or have max_connections raised.", failure),
        PostgresErrorCodes.AdminShutdown or PostgresErrorCodes.CannotConnectNow or PostgresErrorCodes.CrashShutdown => Unreachable(says, failure),
        PostgresErrorCodes.ReadOnlySqlTransaction => new(StoreFault.NoAccess, $"The database {says} only lets itself be read.", "Name the server that takes writes, not its copy.", failure),
        null => Unreachable(says, failure),
        _ => new(StoreFault.Failed, $"{says}: {Plain(failure)}.", "Try again; if it stays, make a backup and tell the makers.", failure),
    };

    private static StoreException Unreachable(string says, NpgsqlException failure) => new(
        StoreFault.NoAccess, $"The database server of {says} can't be reached: {failure.InnerException?.Message ?? failure.Message}.", "Check that it runs and that the network is up; what is not acknowledged is still on the phones.", failure);

    private static string Plain(NpgsqlException failure) => failure is PostgresException { MessageText: var text } ? text : failure.Message;
}
