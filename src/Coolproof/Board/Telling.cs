namespace Coolproof.Board;

/// <summary>Passes progress on to people: at once, then at most so often. Several threads may report.</summary>
/// <typeparam name="T">What is reported.</typeparam>
/// <param name="clock">The clock.</param>
/// <param name="every">Shortest time between two.</param>
/// <param name="tell">Told; one at a time is up to it.</param>
internal sealed class Telling<T>(TimeProvider clock, TimeSpan every, Action<T> tell) : IProgress<T>
{
    readonly Lock turn = new();
    long? told;

    /// <inheritdoc/>
    public void Report(T value)
    {
        lock (turn)
        {
            var now = clock.GetTimestamp();
            if (told is { } last && clock.GetElapsedTime(last, now) < every) return;
            told = now;
        }
        tell(value);
    }
}
