using Coolproof.Notebook.Journal;
using Microsoft.Data.Sqlite;
using NodaTime;
using SQLitePCL;

namespace Coolproof.Store.Engines;

/// <summary>Rows of SQLite, mapped by hand: long and text and bytes.</summary>
internal static class SqliteRows
{
    private const string Columns = "id, device, kind, at_ms, about, corrects, body, kept_ms";

    /// <summary>Inserts new entries; says which were new.</summary>
    public static bool[] Insert(SqliteConnection connection, SqliteTransaction transaction, IReadOnlyList<EntryRow> rows)
    {
        using SqliteCommand command = connection.CreateCommand();
        command.Transaction = transaction;
        command.CommandText = $"INSERT INTO entries ({Columns}) VALUES ($id, $device, $kind, $at, $about, $corrects, $body, $kept) ON CONFLICT (id) DO NOTHING";
        bool[] isNew = new bool[rows.Count];
        for (int i = 0; i < rows.Count; i++)
        {
            Bind(command, rows[i]);
            isNew[i] = command.ExecuteNonQuery() == 1;
        }

        return isNew;
    }

    /// <summary>Inserts an entry with its seq.</summary>
    public static void InsertKept(SqliteConnection connection, SqliteTransaction transaction, EntryRow row)
    {
        using SqliteCommand command = connection.CreateCommand();
        command.Transaction = transaction;
        command.CommandText = $"INSERT INTO entries (seq, {Columns}) VALUES ($seq, $id, $device, $kind, $at, $about, $corrects, $body, $kept)";
        command.Parameters.AddWithValue("$seq", row.Seq);
        Bind(command, row);
        command.ExecuteNonQuery();
    }

    /// <summary>Inserts a photo; the same again changes nothing, other bytes are refused.</summary>
    public static void Insert(SqliteConnection connection, SqliteTransaction transaction, PhotoRow photo)
    {
        using SqliteCommand command = connection.CreateCommand();
        command.Transaction = transaction;
        command.CommandText = "INSERT INTO photos (id, media_type, bytes, kept_ms) VALUES ($id, $type, $bytes, $kept) ON CONFLICT (id) DO NOTHING";
        command.Parameters.AddWithValue("$id", photo.Id);
        command.Parameters.AddWithValue("$type", photo.MediaType);
        command.Parameters.AddWithValue("$bytes", photo.Bytes);
        command.Parameters.AddWithValue("$kept", photo.KeptMs);
        if (command.ExecuteNonQuery() == 1) return;
        StoredPhoto held = Photo(connection, Guid.ParseExact(photo.Id, "D"), transaction)!;
        if (!held.Bytes.AsSpan().SequenceEqual(photo.Bytes)) throw PhotoFaults.Other(photo.Id);
    }

    /// <summary>Entries after a cursor. Ids and bodies are taken from the bytes of the row, without a text in between: a notebook is read whole whenever it is opened.</summary>
    public static List<StoredEntry> EntriesAfter(SqliteConnection connection, long cursor, long limit)
    {
        using SqliteCommand command = ReadingAfter(connection, cursor, limit);
        using SqliteDataReader reader = command.ExecuteReader();
        sqlite3_stmt row = reader.Handle!;
        List<StoredEntry> entries = [];
        while (reader.Read())
        {
            Entry entry = new(
                Id(row, 1), EntryReader.ReadKeptKind(raw.sqlite3_column_blob(row, 3)), At(row, 4), Id(row, 5), raw.sqlite3_column_type(row, 6) == raw.SQLITE_NULL ? null : Id(row, 6),
                EntryReader.ReadKeptBody(raw.sqlite3_column_blob(row, 7)));
            entries.Add(new StoredEntry(entry, Id(row, 2), raw.sqlite3_column_int64(row, 0), At(row, 8)));
        }

        return entries;
    }

    private static Guid Id(sqlite3_stmt row, int column) => Guid.Parse(raw.sqlite3_column_blob(row, column));

    private static Instant At(sqlite3_stmt row, int column) => Instant.FromUnixTimeMilliseconds(raw.sqlite3_column_int64(row, column));

    public static IEnumerable<EntryRow> ReadAfter(SqliteConnection connection, long cursor, long limit)
    {
        using SqliteCommand command = ReadingAfter(connection, cursor, limit);
        using SqliteDataReader reader = command.ExecuteReader();
        while (reader.Read())
        {
            yield return new EntryRow(
                reader.GetInt64(0), reader.GetString(1), reader.GetString(2), reader.GetString(3), reader.GetInt64(4), reader.GetString(5),
                reader.IsDBNull(6) ? null : reader.GetString(6), reader.GetString(7), reader.GetInt64(8));
        }
    }

    private static SqliteCommand ReadingAfter(SqliteConnection connection, long cursor, long limit)
    {
        SqliteCommand command = connection.CreateCommand();
        command.CommandText = $"SELECT seq, {Columns} FROM entries WHERE seq > $cursor ORDER BY seq LIMIT $limit";
        command.Parameters.AddWithValue("$cursor", cursor);
        command.Parameters.AddWithValue("$limit", limit);
        return command;
    }

    public static StoredPhoto? Photo(SqliteConnection connection, Guid id, SqliteTransaction? transaction = null)
    {
        using SqliteCommand command = connection.CreateCommand();
        command.Transaction = transaction;
        command.CommandText = "SELECT media_type, bytes, kept_ms FROM photos WHERE id = $id";
        command.Parameters.AddWithValue("$id", id.ToString("D"));
        using SqliteDataReader reader = command.ExecuteReader();
        return reader.Read() ? new StoredPhoto(id, reader.GetString(0), reader.GetFieldValue<byte[]>(1), Instant.FromUnixTimeMilliseconds(reader.GetInt64(2))) : null;
    }

    public static IEnumerable<PhotoRow> Photos(SqliteConnection connection)
    {
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = "SELECT id, media_type, bytes, kept_ms FROM photos ORDER BY id";
        using SqliteDataReader reader = command.ExecuteReader();
        while (reader.Read()) yield return new PhotoRow(reader.GetString(0), reader.GetString(1), reader.GetFieldValue<byte[]>(2), reader.GetInt64(3));
    }

    public static long Cursor(SqliteConnection connection, SqliteTransaction? transaction)
    {
        using SqliteCommand command = connection.CreateCommand();
        command.Transaction = transaction;
        command.CommandText = "SELECT COALESCE(MAX(seq), 0) FROM entries";
        return (long)command.ExecuteScalar()!;
    }

    public static long Long(SqliteConnection connection, string sql)
    {
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = sql;
        return (long)command.ExecuteScalar()!;
    }

    public static void Do(SqliteConnection connection, string sql)
    {
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }

    private static void Bind(SqliteCommand command, EntryRow row)
    {
        Set(command, "$id", row.Id);
        Set(command, "$device", row.Device);
        Set(command, "$kind", row.Kind);
        Set(command, "$at", row.AtMs);
        Set(command, "$about", row.About);
        Set(command, "$corrects", row.Corrects);
        Set(command, "$body", row.Body);
        Set(command, "$kept", row.KeptMs);
    }

    private static void Set(SqliteCommand command, string name, object? value)
    {
        if (command.Parameters.Contains(name)) command.Parameters[name].Value = value ?? DBNull.Value;
        else command.Parameters.AddWithValue(name, value ?? DBNull.Value);
    }
}
