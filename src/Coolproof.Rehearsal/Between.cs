namespace Coolproof.Rehearsal;

/// <summary>Two ends that a true value lies between.</summary>
/// <param name="Low">Lower end.</param>
/// <param name="High">Upper end.</param>
public readonly record struct Between(double Low, double High)
{
    /// <summary>Whether a value lies within, ends included.</summary>
    /// <param name="value">The value.</param>
    public bool Holds(double value) => value >= Low && value <= High;

    /// <summary>The nearest value within.</summary>
    /// <param name="value">Any value.</param>
    public double Clamp(double value) => Math.Clamp(value, Low, High);
}
