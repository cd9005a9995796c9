using System.Runtime.CompilerServices;
using NodaTime;
using Npgsql;
using NpgsqlTypes;

namespace Coolproof.Store.Engines;

/// <summary>Rows of PostgreSQL, mapped by hand: bigint, text and bytea.</summary>
internal static class PostgresRows
{
    private const string Columns = "id, device, kind, at_ms, about, corrects, body, kept_ms";
    private const string Entries = PostgresEngine.Schema + ".entries";
    private const string PhotoTable = PostgresEngine.Schema + ".photos";

    /// <summary>
    /// Takes the writers' lock and inserts new entries in their order, all in one round trip to the server; says which were new, and the largest seq. Listeners hear of it at
    /// the commit.
    /// </summary>
    public static async Task<(bool[] New, long Cursor)> AppendAsync(NpgsqlConnection connection, IReadOnlyList<EntryRow> rows, long writerLock, CancellationToken cancel)
    {
        bool[] isNew = new bool[rows.Count];
        // An id that stands twice in the statement is new once.
        Dictionary<string, int> first = new(rows.Count);
        for (int i = 0; i < rows.Count; i++) first.TryAdd(rows[i].Id, i);
        await using NpgsqlBatch batch = new(connection)
        {
            BatchCommands =
            {
                new NpgsqlBatchCommand("SET LOCAL synchronous_commit = on"),
                new NpgsqlBatchCommand($"SELECT pg_advisory_xact_lock({writerLock})"),
                Insertion([.. first.Values.Order().Select(i => rows[i])]),
                new NpgsqlBatchCommand($"SELECT COALESCE(MAX(seq), 0) FROM {Entries}"),
                new NpgsqlBatchCommand($"NOTIFY {PostgresEngine.NewEntries}"),
            },
        };
        await using NpgsqlDataReader reader = await batch.ExecuteReaderAsync(cancel);
        await reader.NextResultAsync(cancel);
        while (await reader.ReadAsync(cancel)) isNew[first[reader.GetString(0)]] = true;
        await reader.NextResultAsync(cancel);
        await reader.ReadAsync(cancel);
        return (isNew, reader.GetInt64(0));
    }

    private static NpgsqlBatchCommand Insertion(EntryRow[] rows)
    {
        NpgsqlBatchCommand command = new(
            $"INSERT INTO {Entries} ({Columns}) SELECT {Columns} FROM unnest($1, $2, $3, $4, $5, $6, $7, $8) WITH ORDINALITY AS new ({Columns}, place) ORDER BY place ON CONFLICT (id) DO NOTHING RETURNING id");
        command.Parameters.Add(Texts(rows.Select(row => row.Id)));
        command.Parameters.Add(Texts(rows.Select(row => row.Device)));
        command.Parameters.Add(Texts(rows.Select(row => row.Kind)));
        command.Parameters.Add(Longs(rows.Select(row => row.AtMs)));
        command.Parameters.Add(Texts(rows.Select(row => row.About)));
        command.Parameters.Add(Texts(rows.Select(row => row.Corrects)));
        command.Parameters.Add(Texts(rows.Select(row => row.Body)));
        command.Parameters.Add(Longs(rows.Select(row => row.KeptMs)));
        return command;
    }

    /// <summary>Inserts a photo; the same again changes nothing, other bytes are refused.</summary>
    public static async Task InsertAsync(NpgsqlConnection connection, PhotoRow photo, CancellationToken cancel)
    {
        await using NpgsqlCommand command = new($"INSERT INTO {PhotoTable} (id, media_type, bytes, kept_ms) VALUES ($1, $2, $3, $4) ON CONFLICT (id) DO NOTHING", connection);
        command.Parameters.Add(new NpgsqlParameter<string> { TypedValue = photo.Id });
        command.Parameters.Add(new NpgsqlParameter<string> { TypedValue = photo.MediaType });
        command.Parameters.Add(new NpgsqlParameter<byte[]> { TypedValue = photo.Bytes });
        command.Parameters.Add(new NpgsqlParameter<long> { TypedValue = photo.KeptMs });
        if (await command.ExecuteNonQueryAsync(cancel) == 1) return;
        StoredPhoto? held = await PhotoAsync(connection, Guid.ParseExact(photo.Id, "D"), cancel);
        if (held is null || !held.Bytes.AsSpan().SequenceEqual(photo.Bytes)) throw PhotoFaults.Other(photo.Id);
    }

    /// <summary>Copies entries in with their seq.</summary>
    public static async Task CopyInAsync(NpgsqlConnection connection, IAsyncEnumerable<EntryRow> rows, CancellationToken cancel)
    {
        await using NpgsqlBinaryImporter importer = await connection.BeginBinaryImportAsync($"COPY {Entries} (seq, {Columns}) FROM STDIN (FORMAT BINARY)", cancel);
        await foreach (EntryRow row in rows.WithCancellation(cancel))
        {
            await importer.StartRowAsync(cancel);
            await importer.WriteAsync(row.Seq, cancel);
            await importer.WriteAsync(row.Id, cancel);
            await importer.WriteAsync(row.Device, cancel);
            await importer.WriteAsync(row.Kind, cancel);
            await importer.WriteAsync(row.AtMs, cancel);
            await importer.WriteAsync(row.About, cancel);
            if (row.Corrects is { } corrects) await importer.WriteAsync(corrects, cancel);
            else await importer.WriteNullAsync(cancel);
            await importer.WriteAsync(row.Body, cancel);
            await importer.WriteAsync(row.KeptMs, cancel);
        }

        await importer.CompleteAsync(cancel);
    }

    public static async IAsyncEnumerable<EntryRow> ReadAfterAsync(NpgsqlConnection connection, long cursor, long limit, [EnumeratorCancellation] CancellationToken cancel)
    {
        await using NpgsqlCommand command = new($"SELECT seq, {Columns} FROM {Entries} WHERE seq > $1 ORDER BY seq LIMIT $2", connection);
        command.Parameters.Add(new NpgsqlParameter<long> { TypedValue = cursor });
        command.Parameters.Add(new NpgsqlParameter<long> { TypedValue = limit });
        await using NpgsqlDataReader reader = await command.ExecuteReaderAsync(cancel);
        while (await reader.ReadAsync(cancel))
        {
            yield return new EntryRow(
                reader.GetInt64(0), reader.GetString(1), reader.GetString(2), reader.GetString(3), reader.GetInt64(4), reader.GetString(5),
                reader.IsDBNull(6) ? null : reader.GetString(6), reader.GetString(7), reader.GetInt64(8));
        }
    }

    public static async Task<StoredPhoto?> PhotoAsync(NpgsqlConnection connection, Guid id, CancellationToken cancel)
    {
        await using NpgsqlCommand command = new($"SELECT media_type, bytes, kept_ms FROM {PhotoTable} WHERE id = $1", connection);
        command.Parameters.Add(new NpgsqlParameter<string> { TypedValue = id.ToString("D") });
        await using NpgsqlDataReader reader = await command.ExecuteReaderAsync(cancel);
        return await reader.ReadAsync(cancel) ? new StoredPhoto(id, reader.GetString(0), reader.GetFieldValue<byte[]>(1), Instant.FromUnixTimeMilliseconds(reader.GetInt64(2))) : null;
    }

    public static async IAsyncEnumerable<PhotoRow> PhotosAsync(NpgsqlConnection connection, [EnumeratorCancellation] CancellationToken cancel)
    {
        await using NpgsqlCommand command = new($"SELECT id, media_type, bytes, kept_ms FROM {PhotoTable} ORDER BY id", connection);
        await using NpgsqlDataReader reader = await command.ExecuteReaderAsync(cancel);
        while (await reader.ReadAsync(cancel)) yield return new PhotoRow(reader.GetString(0), reader.GetString(1), reader.GetFieldValue<byte[]>(2), reader.GetInt64(3));
    }

    public static async Task<long> CursorAsync(NpgsqlConnection connection, CancellationToken cancel)
    {
        await using NpgsqlCommand command = new($"SELECT COALESCE(MAX(seq), 0) FROM {Entries}", connection);
        return (long)(await command.ExecuteScalarAsync(cancel))!;
    }

    public static async Task DoAsync(NpgsqlConnection connection, string sql, CancellationToken cancel)
    {
        await using NpgsqlCommand command = new(sql, connection);
        await command.ExecuteNonQueryAsync(cancel);
    }

    private static NpgsqlParameter Texts(IEnumerable<string?> values) => new() { Value = values.ToArray(), NpgsqlDbType = NpgsqlDbType.Array | NpgsqlDbType.Text };

    private static NpgsqlParameter Longs(IEnumerable<long> values) => new() { Value = values.ToArray(), NpgsqlDbType = NpgsqlDbType.Array | NpgsqlDbType.Bigint };
}
