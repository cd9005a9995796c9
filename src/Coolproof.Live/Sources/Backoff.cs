namespace Coolproof.Live.Sources;

/// <summary>How long to wait before the next attempt: half a second, and twice as long each time, up to eight seconds.</summary>
public sealed class Backoff
{
    static readonly TimeSpan First = TimeSpan.FromSeconds(0.5);
    static readonly TimeSpan Longest = TimeSpan.FromSeconds(8);

    TimeSpan next = First;

    /// <summary>The next wait.</summary>
    public TimeSpan Next()
    {
        var wait = next;
        next = next * 2 < Longest ? next * 2 : Longest;
        return wait;
    }

    /// <summary>It worked: begin anew.</summary>
    public void Reset() => next = First;
}
