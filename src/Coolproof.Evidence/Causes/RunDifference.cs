namespace Coolproof.Evidence.Causes;

/// <summary>One part of a difference.</summary>
/// <param name="Cause">Where it comes from.</param>
/// <param name="DifferenceK">First less second that comes from it, K.</param>
public sealed record CausePart(Cause Cause, Summary DifferenceK);

/// <summary>Why one run, or the mean of some runs, read other than another: first less second.</summary>
/// <param name="ReadA">First reading of the can in the first, mean over its runs, °C.</param>
/// <param name="ReadB">Likewise of the second, °C.</param>
/// <param name="Parts">Parts in the order of <see cref="Cause"/>, the rest last; their means sum to <see cref="ReadK"/>.</param>
public sealed record RunDifference(double ReadA, double ReadB, IReadOnlyList<CausePart> Parts)
{
    /// <summary>Difference read, K.</summary>
    public double ReadK => ReadA - ReadB;
}
