namespace Coolproof.Traces;

/// <summary>One value of a channel at its time. A channel is told by its source, its name and its unit.</summary>
/// <param name="AtMs">When: milliseconds since 1970-01-01 UTC by the server's clock.</param>
/// <param name="Value">The value in the channel's unit; NaN where the mark is not <see cref="SampleMark.Good"/>.</param>
/// <param name="Mark">What it is worth.</param>
public readonly record struct Sample(long AtMs, double Value, SampleMark Mark);

/// <summary>What a sample is worth.</summary>
public enum SampleMark : byte
{
    /// <summary>A value.</summary>
    Good,

    /// <summary>Something was sent that can't be right: no number, or past what its unit allows.</summary>
    Nonsense,

    /// <summary>Nothing came: the source was silent, or its cell is blank.</summary>
    Gap,
}
