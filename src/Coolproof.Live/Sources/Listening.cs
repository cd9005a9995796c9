namespace Coolproof.Live.Sources;

/// <summary>Listening that goes on: what fails is said, and tried again after a while.</summary>
static class Listening
{
    /// <summary>Listens again and again until it is cancelled.</summary>
    /// <param name="board">Told why it listens no more.</param>
    /// <param name="name">The source's name.</param>
    /// <param name="kind">Its kind.</param>
    /// <param name="clock">The clock.</param>
    /// <param name="once">Listens for as long as it can; gives why it listens no more, or null where that needs no word. The waits begin anew when it resets them.</param>
    /// <param name="cancel">Ends it.</param>
    public static async Task AgainAndAgainAsync(SensorBoard board, string name, SourceKind kind, TimeProvider clock, Func<Backoff, Task<string?>> once, CancellationToken cancel)
    {
        var backoff = new Backoff();
        while (!cancel.IsCancellationRequested)
        {
            if (await once(backoff) is { } trouble) board.Tell(name, kind, trouble);
            await Task.Delay(backoff.Next(), clock, cancel).ContinueWith(_ => { }, TaskScheduler.Default);
        }
    }
}
