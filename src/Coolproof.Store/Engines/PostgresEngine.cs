using System.Data;
using Coolproof.Notebook.Journal;
using DbUp;
using DbUp.Postgresql;
using Npgsql;

namespace Coolproof.Store.Engines;

/// <summary>The store in a PostgreSQL database, in a schema of its own, shared by several servers.</summary>
internal sealed class PostgresEngine : Engine
{
    public const string Schema = "coolproof";
    public const string NewEntries = "coolproof_entries";
    private const string Journal = "schema_versions";

    // "Cool" and a number: advisory locks are shared by all programs of a database.
    private const long WriterLock = 0x436F6F6C_0001;
    private const long UpgradeLock = 0x436F6F6C_0002;

    private readonly Place _place;
    private readonly TimeProvider _clock;
    private readonly NpgsqlDataSource _source;

    public PostgresEngine(Place place, TimeProvider clock)
    {
        _place = place;
        _clock = clock;
        NpgsqlConnectionStringBuilder settings = new(place.Database!.ConnectionString);
        if (!settings.ContainsKey("Application Name") || string.IsNullOrEmpty(settings.ApplicationName)) settings.ApplicationName = "coolproof";
        // The same few statements again and again.
        if (settings.MaxAutoPrepare == 0) (settings.MaxAutoPrepare, settings.AutoPrepareMinUsages) = (20, 3);
        _source = new NpgsqlDataSourceBuilder(settings.ConnectionString).Build();
    }

    public override string Says => _place.Says;

    public override Task OpenAsync(CancellationToken cancel) => OpenAsync(null, cancel);

    /// <summary>Opens it up to a script; null for all.</summary>
    internal Task OpenAsync(string? last, CancellationToken cancel) => Guarded(async () =>
    {
        // Held while upgrading, so that two servers that start together upgrade once.
        await using NpgsqlConnection holder = await _source.OpenConnectionAsync(cancel);
        await PostgresRows.DoAsync(holder, $"SELECT pg_advisory_lock({UpgradeLock})", cancel);
        try
        {
            List<string> ran = await RanAsync(holder, cancel);
            Migrations.CheckKnown("Postgres", ran, Says);
            if (Migrations.Of("Postgres").Select(script => script.Name).Except(ran).Any())
            {
                await PostgresRows.DoAsync(holder, $"CREATE SCHEMA IF NOT EXISTS {Schema}", cancel);
                await Task.Run(() => Migrations.Run(DeployChanges.To.PostgresqlDatabase(new PostgresqlConnectionManager(_source)).JournalToPostgresqlTable(Schema, Journal), "Postgres", last), cancel);
            }
        }
        finally
        {
            await PostgresRows.DoAsync(holder, $"SELECT pg_advisory_unlock({UpgradeLock})", CancellationToken.None);
        }

        return true;
    });

    // One writer at a time over all servers: so seq rises in the order of commits, and a reader that has seen one has missed none before it.
    public override Task<(bool[] New, long Cursor)> WriteAsync(IReadOnlyList<EntryRow> rows, PhotoRow? photo, CancellationToken cancel) => Guarded(async () =>
    {
        await using NpgsqlConnection connection = await _source.OpenConnectionAsync(cancel);
        await using NpgsqlTransaction transaction = await connection.BeginTransactionAsync(cancel);
        (bool[] isNew, long cursor) = await PostgresRows.AppendAsync(connection, rows, WriterLock, cancel);
        if (photo is not null) await PostgresRows.InsertAsync(connection, photo, cancel);
        await transaction.CommitAsync(cancel);
        return (isNew, cursor);
    });

    public override Task<List<StoredEntry>> ReadAfterAsync(long cursor, int limit, CancellationToken cancel) => Guarded(async () =>
    {
        await using NpgsqlConnection connection = await _source.OpenConnectionAsync(cancel);
        List<StoredEntry> entries = [];
        await foreach (EntryRow row in PostgresRows.ReadAfterAsync(connection, cursor, limit, cancel)) entries.Add(row.Entry());
        return entries;
    });

    public override Task<long> CursorAsync(CancellationToken cancel) => Guarded(async () =>
    {
        await using NpgsqlConnection connection = await _source.OpenConnectionAsync(cancel);
        return await PostgresRows.CursorAsync(connection, cancel);
    });

    public override Task<StoredPhoto?> GetPhotoAsync(Guid id, CancellationToken cancel) => Guarded(async () =>
    {
        await using NpgsqlConnection connection = await _source.OpenConnectionAsync(cancel);
        return await PostgresRows.PhotoAsync(connection, id, cancel);
    });

    public override Task<IAsyncDisposable> WatchAsync(CommitBell bell, CancellationToken cancel) => Guarded(async () =>
        (IAsyncDisposable)await PostgresEar.OpenAsync(_source, bell, _clock, cancel));

    public override Task CheckAsync(CancellationToken cancel) => Guarded(async () =>
    {
        // Reading every row makes the server check every page, where it keeps checksums.
        await using NpgsqlConnection connection = await _source.OpenConnectionAsync(cancel);
        await PostgresRows.DoAsync(connection, $"SELECT SUM(length(body)) FROM {Schema}.entries; SELECT SUM(length(bytes)) FROM {Schema}.photos", cancel);
        return true;
    });

    public override Task CopyAsync(Func<EntryRow, CancellationToken, Task> entry, Func<PhotoRow, CancellationToken, Task> photo, CancellationToken cancel) => Guarded(async () =>
    {
        await using NpgsqlConnection connection = await _source.OpenConnectionAsync(cancel);
        await using NpgsqlTransaction snapshot = await connection.BeginTransactionAsync(IsolationLevel.RepeatableRead, cancel);
        await foreach (EntryRow row in PostgresRows.ReadAfterAsync(connection, 0, long.MaxValue, cancel)) await entry(row, cancel);
        await foreach (PhotoRow row in PostgresRows.PhotosAsync(connection, cancel)) await photo(row, cancel);
        return true;
    });

    public override Task<bool> IsEmptyAsync(CancellationToken cancel) => Guarded(async () =>
    {
        await using NpgsqlConnection connection = await _source.OpenConnectionAsync(cancel);
        await using NpgsqlCommand command = new($"SELECT NOT EXISTS (SELECT 1 FROM {Schema}.entries) AND NOT EXISTS (SELECT 1 FROM {Schema}.photos)", connection);
        return (bool)(await command.ExecuteScalarAsync(cancel))!;
    });

    public override Task FillAsync(IAsyncEnumerable<EntryRow> entries, IAsyncEnumerable<PhotoRow> photos, bool empty, CancellationToken cancel) => Guarded(async () =>
    {
        await using NpgsqlConnection connection = await _source.OpenConnectionAsync(cancel);
        await using NpgsqlTransaction transaction = await connection.BeginTransactionAsync(cancel);
        await PostgresRows.DoAsync(connection, $"SELECT pg_advisory_xact_lock({WriterLock})", cancel);
        if (empty) await PostgresRows.DoAsync(connection, $"DELETE FROM {Schema}.entries; DELETE FROM {Schema}.photos", cancel);
        await PostgresRows.CopyInAsync(connection, entries, cancel);
        await foreach (PhotoRow row in photos.WithCancellation(cancel)) await PostgresRows.InsertAsync(connection, row, cancel);
        await PostgresRows.DoAsync(connection, $"SELECT setval(pg_get_serial_sequence('{Schema}.entries', 'seq'), GREATEST((SELECT COALESCE(MAX(seq), 0) FROM {Schema}.entries) + 1, nextval(pg_get_serial_sequence('{Schema}.entries', 'seq'))), false); NOTIFY {NewEntries}", cancel);
        await transaction.CommitAsync(cancel);
        return true;
    });

    public override ValueTask DisposeAsync() => _source.DisposeAsync();

    private static async Task<List<string>> RanAsync(NpgsqlConnection connection, CancellationToken cancel)
    {
        await using NpgsqlCommand there = new($"SELECT to_regclass('{Schema}.{Journal}') IS NOT NULL", connection);
        if (!(bool)(await there.ExecuteScalarAsync(cancel))!) return [];
        await using NpgsqlCommand command = new($"SELECT scriptname FROM {Schema}.{Journal}", connection);
        await using NpgsqlDataReader reader = await command.ExecuteReaderAsync(cancel);
        List<string> names = [];
        while (await reader.ReadAsync(cancel)) names.Add(reader.GetString(0));
        return names;
    }

    private async Task<T> Guarded<T>(Func<Task<T>> work)
    {
        try
        {
            return await work();
        }
        catch (NpgsqlException failure)
        {
            throw PostgresFaults.Of(Says, failure);
        }
    }
}
