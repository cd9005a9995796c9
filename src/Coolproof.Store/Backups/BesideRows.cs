using System.Text.RegularExpressions;
using Coolproof.Store.Engines;
using Microsoft.Data.Sqlite;

namespace Coolproof.Store.Backups;

/// <summary>
/// Files of the folders beside a notebook, as a backup holds them: a table of its own that notebooks don't have, each file in parts, since a value of SQLite ends at a gigabyte
/// (sqlite.org/limits.html).
/// </summary>
internal static partial class BesideRows
{
    private const int PartBytes = 4_000_000;

    /// <summary>Takes all files of the folders. One that grows meanwhile is taken as long as it was.</summary>
    /// <returns>How many.</returns>
    public static int Write(SqliteConnection connection, SqliteTransaction transaction, IReadOnlyList<FolderBeside> folders, CancellationToken cancel)
    {
        using SqliteCommand command = connection.CreateCommand();
        command.Transaction = transaction;
        command.CommandText = "CREATE TABLE files_beside (name TEXT NOT NULL, part INTEGER NOT NULL, bytes BLOB NOT NULL, PRIMARY KEY (name, part)) STRICT";
        command.ExecuteNonQuery();
        command.CommandText = "INSERT INTO files_beside (name, part, bytes) VALUES ($name, $part, $bytes)";
        int files = 0;
        foreach (FolderBeside folder in folders.Where(folder => Directory.Exists(folder.Path)))
        {
            foreach (string file in Directory.EnumerateFiles(folder.Path, "*" + folder.Ending, SearchOption.AllDirectories).Order(StringComparer.Ordinal))
            {
                Insert(command, $"{folder.Name}/{Path.GetRelativePath(folder.Path, file).Replace(Path.DirectorySeparatorChar, '/')}", file, cancel);
                files++;
            }
        }

        return files;
    }

    /// <summary>Names of the files that a backup holds, such as loggers/0a1b.trace. None in one that was made before there were any.</summary>
    /// <exception cref="InvalidDataException">A name leads somewhere else.</exception>
    public static IReadOnlyList<string> Names(SqliteConnection connection)
    {
        if (SqliteRows.Long(connection, "SELECT COUNT(*) FROM sqlite_master WHERE name = 'files_beside'") == 0) return [];
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = "SELECT DISTINCT name FROM files_beside ORDER BY name";
        using SqliteDataReader reader = command.ExecuteReader();
        List<string> names = [];
        while (reader.Read()) names.Add(reader.GetString(0));
        // What comes from elsewhere is not trusted with paths.
        return names.Find(name => !PlainName().IsMatch(name)) is { } odd ? throw new InvalidDataException($"It names a file {odd}.") : names;
    }

    /// <summary>The bytes of a file, part by part.</summary>
    public static IEnumerable<byte[]> Parts(SqliteConnection connection, string name)
    {
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = "SELECT bytes FROM files_beside WHERE name = $name ORDER BY part";
        command.Parameters.AddWithValue("$name", name);
        using SqliteDataReader reader = command.ExecuteReader();
        while (reader.Read()) yield return reader.GetFieldValue<byte[]>(0);
    }

    private static void Insert(SqliteCommand command, string name, string file, CancellationToken cancel)
    {
        using FileStream stream = new(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete, bufferSize: 0);
        long left = stream.Length;
        for (int part = 0; part == 0 || left > 0; part++)
        {
            cancel.ThrowIfCancellationRequested();
            byte[] bytes = new byte[Math.Min(PartBytes, left)];
            stream.ReadExactly(bytes);
            left -= bytes.Length;
            command.Parameters.Clear();
            command.Parameters.AddWithValue("$name", name);
            command.Parameters.AddWithValue("$part", part);
            command.Parameters.AddWithValue("$bytes", bytes);
            command.ExecuteNonQuery();
        }
    }

    // A folder, and in it a file, or a folder of files: no dot begins a name.
    [GeneratedRegex(@"^[a-z]+(/[A-Za-z0-9_-][A-Za-z0-9._-]*){1,2}$", RegexOptions.CultureInvariant)]
    private static partial Regex PlainName();
}
