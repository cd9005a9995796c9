using Npgsql;

namespace Coolproof.Store.Engines;

/// <summary>Listens for what other servers commit (LISTEN); comes back after the connection broke, and rings then, since something may have been missed.</summary>
internal sealed class PostgresEar : IAsyncDisposable
{
    private static readonly TimeSpan ComeBackAfter = TimeSpan.FromSeconds(1);
    private readonly CancellationTokenSource _end = new();
    private Task _loop = Task.CompletedTask;

    public static async Task<PostgresEar> OpenAsync(NpgsqlDataSource source, CommitBell bell, TimeProvider clock, CancellationToken cancel)
    {
        PostgresEar ear = new();
        NpgsqlConnection first = await ListenAsync(source, bell, cancel);
        ear._loop = Task.Run(() => ear.LoopAsync(first, source, bell, clock), CancellationToken.None);
        return ear;
    }

    private static async Task<NpgsqlConnection> ListenAsync(NpgsqlDataSource source, CommitBell bell, CancellationToken cancel)
    {
        NpgsqlConnection connection = await source.OpenConnectionAsync(cancel);
        connection.Notification += (_, _) => bell.Ring();
        await PostgresRows.DoAsync(connection, $"LISTEN {PostgresEngine.NewEntries}", cancel);
        return connection;
    }

    private async Task LoopAsync(NpgsqlConnection? connection, NpgsqlDataSource source, CommitBell bell, TimeProvider clock)
    {
        while (!_end.IsCancellationRequested)
        {
            try
            {
                if (connection is null)
                {
                    connection = await ListenAsync(source, bell, _end.Token);
                    bell.Ring();
                }

                while (true) await connection.WaitAsync(_end.Token);
            }
            catch (OperationCanceledException) when (_end.IsCancellationRequested)
            {
                break;
            }
            catch (Exception failure) when (failure is NpgsqlException or IOException or InvalidOperationException)
            {
                if (connection is not null) await connection.DisposeAsync();
                connection = null;
                await Task.Delay(ComeBackAfter, clock, _end.Token).ContinueWith(_ => { }, CancellationToken.None);
            }
        }

        if (connection is not null) await connection.DisposeAsync();
    }

    public async ValueTask DisposeAsync()
    {
        await _end.CancelAsync();
        await _loop;
        _end.Dispose();
    }
}
