namespace Coolproof.Store.Engines;

/// <summary>Looks at a figure again and again, and rings when it has changed.</summary>
internal sealed class Poll : IAsyncDisposable
{
    private readonly CancellationTokenSource _end = new();
    private readonly Task _loop;
    private readonly IDisposable _owned;

    public Poll(TimeProvider clock, TimeSpan every, Func<long> look, CommitBell bell, IDisposable owned)
    {
        _owned = owned;
        long seen = look();
        _loop = Task.Run(async () =>
        {
            using PeriodicTimer timer = new(every, clock);
            while (await timer.WaitForNextTickAsync(_end.Token))
            {
                long now = look();
                if (now == seen) continue;
                seen = now;
                bell.Ring();
            }
        });
    }

    public async ValueTask DisposeAsync()
    {
        await _end.CancelAsync();
        try
        {
            await _loop;
        }
        catch (OperationCanceledException)
        {
            // That is how it ends.
        }
        finally
        {
            _owned.Dispose();
            _end.Dispose();
        }
    }
}
