using Coolproof.Traces.Live;

namespace Coolproof.Live;

/// <summary>How lines come.</summary>
public enum SourceKind
{
    /// <summary>A serial port.</summary>
    Serial,

    /// <summary>Topics of a broker.</summary>
    Mqtt,

    /// <summary>The pit table's own broker.</summary>
    Broker,

    /// <summary>Lines posted over HTTP.</summary>
    Http,
}

/// <summary>How a source does.</summary>
/// <param name="Name">Its name, such as "serial ttyUSB0".</param>
/// <param name="Kind">How lines come from it.</param>
/// <param name="Alive">Whether it is connected; one that posts is while it was heard within the last ten seconds.</param>
/// <param name="Since">Since when that is so.</param>
/// <param name="Trouble">Why it is not connected, and what helps; null where it is.</param>
public sealed record SourceState(string Name, SourceKind Kind, bool Alive, DateTimeOffset Since, string? Trouble)
{
    /// <summary>When a line last came; null before the first.</summary>
    public DateTimeOffset? Heard { get; init; }

    /// <summary>How many lines came; empty ones and remarks don't count.</summary>
    public long Lines { get; init; }

    /// <summary>How many of them held a value that can't be right.</summary>
    public long Nonsense { get; init; }

    /// <summary>How many were not understood.</summary>
    public long NotUnderstood { get; init; }

    /// <summary>The last one that was not understood.</summary>
    public string? LastBad { get; init; }

    /// <summary>Why not.</summary>
    public LineProblem? LastProblem { get; init; }

    /// <summary>How often the connection was lost.</summary>
    public int Losses { get; init; }
}
