namespace Coolproof.Live;

/// <summary>How often a channel is heard, and whether it has fallen silent. It knows no clock: all times are given, in ms.</summary>
public sealed class ChannelPulse
{
    /// <summary>Shortest silence that counts as a gap, ms.</summary>
    public const long LeastMs = Traces.Live.Timeline.ShortestGapMs;

    /// <summary>How long a channel may be silent that was heard but once, ms.</summary>
    public const long UnknownMs = 10_000;

    /// <summary>How many times its usual interval it may be silent.</summary>
    public const int Times = 3;

    const int Remembered = 20;
    const long Together = 50; // what comes in one piece was not measured in one moment: lines within this time count as one, ms

    readonly Queue<long> intervals = new(Remembered);
    long? counted;
    long? heard;
    bool silent;

    /// <summary>When it was last heard; null before it ever was.</summary>
    public long? HeardMs => heard;

    /// <summary>Whether it is silent for longer than it may be.</summary>
    public bool Silent => silent;

    /// <summary>Median of the last twenty intervals between lines, ms; null before there were two.</summary>
    public long? UsualMs => intervals.Count == 0 ? null : intervals.Order().ElementAt((intervals.Count - 1) / 2);

    /// <summary>How long it may be silent, ms.</summary>
    public long LimitMs => UsualMs is { } usual ? Math.Max(LeastMs, Times * usual) : UnknownMs;

    /// <summary>A line has come.</summary>
    public void Hear(long nowMs)
    {
        (silent, heard) = (false, nowMs);
        if (counted is { } last && nowMs - last < Together) return;
        if (counted is { } before)
        {
            if (intervals.Count == Remembered) intervals.Dequeue();
            intervals.Enqueue(nowMs - before);
        }
        counted = nowMs;
    }

    /// <summary>Looks whether it has fallen silent.</summary>
    /// <returns>From when on it counts as silent, told once; null where it is heard, or this was told already.</returns>
    public long? Look(long nowMs)
    {
        if (silent || heard is not { } last || nowMs - last <= LimitMs) return null;
        silent = true;
        return last + LimitMs;
    }
}
