using DbUp;
using DbUp.Sqlite.Helpers;
using Microsoft.Data.Sqlite;

namespace Coolproof.Store.Engines;

/// <summary>Opens SQLite files: makes a new one, refuses a stranger's or a newer one, brings an older one up to date.</summary>
internal static class SqliteFile
{
    public const string Journal = "schema_versions";

    /// <summary>Makes the file ready: up to the last script that is named, or to the newest.</summary>
    public static void Prepare(string file, int busySeconds, string? last = null)
    {
        CheckFolder(file);
        bool fresh = !File.Exists(file) || new FileInfo(file).Length == 0;
        using SqliteConnection connection = Connect(file, SqliteOpenMode.ReadWriteCreate, busySeconds, pooling: false);
        if (!fresh) CheckOurs(connection, file);
        SqliteRows.Do(connection, "PRAGMA journal_mode = WAL");
        if (UpToDate(connection)) return;
        using SharedConnection shared = new(connection);
        Migrations.Run(DeployChanges.To.SqliteDatabase(shared).JournalToSqliteTable(Journal), "Sqlite", last);
        // Last, so that a file whose making was broken off is found empty and made again.
        SqliteRows.Do(connection, $"PRAGMA application_id = {SqliteEngine.ApplicationId}");
    }

    /// <summary>An open connection that syncs at each commit and waits for other programs' writes.</summary>
    public static SqliteConnection Connect(string file, SqliteOpenMode mode, int busySeconds, bool pooling)
    {
        SqliteConnection connection = new(ConnectionText(file, mode, busySeconds, pooling));
        try
        {
            connection.Open();
            SqliteRows.Do(connection, $"PRAGMA busy_timeout = {busySeconds * 1000}; PRAGMA synchronous = FULL; PRAGMA foreign_keys = ON");
            return connection;
        }
        catch
        {
            connection.Dispose();
            throw;
        }
    }

    public static string ConnectionText(string file, SqliteOpenMode mode, int busySeconds, bool pooling) =>
        new SqliteConnectionStringBuilder { DataSource = file, Mode = mode, Pooling = pooling, DefaultTimeout = busySeconds }.ToString();

    /// <summary>Refuses what is no notebook, and what a newer version wrote.</summary>
    public static void CheckOurs(SqliteConnection connection, string file)
    {
        long tables = SqliteRows.Long(connection, "SELECT COUNT(*) FROM sqlite_master");
        if (tables == 0) return;
        if (!Ran(connection).Any() || SqliteRows.Long(connection, "PRAGMA application_id") is not (SqliteEngine.ApplicationId or 0))
        {
            throw new StoreException(StoreFault.NotANotebook, $"{file} is a SQLite file, but no notebook of Coolproof.", "Name another file. This one was left as it is.");
        }

        Migrations.CheckKnown("Sqlite", Ran(connection), file);
    }

    /// <summary>Brings the write-ahead log into the file, which must be held by nobody else.</summary>
    public static void FoldLog(string file, int busySeconds)
    {
        using SqliteConnection connection = Connect(file, SqliteOpenMode.ReadWrite, busySeconds, pooling: false);
        SqliteRows.Do(connection, "PRAGMA locking_mode = EXCLUSIVE");
        SqliteRows.Do(connection, "PRAGMA journal_mode = DELETE");
    }

    private static bool UpToDate(SqliteConnection connection) => Migrations.Of("Sqlite").Select(script => script.Name).Except(Ran(connection)).Any() is false;

    private static List<string> Ran(SqliteConnection connection)
    {
        if (SqliteRows.Long(connection, $"SELECT COUNT(*) FROM sqlite_master WHERE name = '{Journal}'") == 0) return [];
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = $"SELECT ScriptName FROM {Journal}";
        using SqliteDataReader reader = command.ExecuteReader();
        List<string> names = [];
        while (reader.Read()) names.Add(reader.GetString(0));
        return names;
    }

    private static void CheckFolder(string file)
    {
        string? folder = Path.GetDirectoryName(file);
        if (folder is not null && !Directory.Exists(folder))
        {
            throw new StoreException(StoreFault.NoAccess, $"The folder {folder} is not there.", "Make it, or name a file in another folder.");
        }

        if (Directory.Exists(file)) throw new StoreException(StoreFault.NoAccess, $"{file} is a folder.", "Name a file in it.");
    }
}
