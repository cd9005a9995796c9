namespace Coolproof.Sampling;

/// <summary>
/// Log of an unnormalised density on Rⁿ, with its gradient. One instance per chain: an instance may keep a workspace and need not be thread-safe.
/// </summary>
/// <param name="position">Point, n numbers.</param>
/// <param name="gradient">Receives the gradient, n numbers.</param>
/// <returns>The log density; −∞ (gradient then unspecified) outside the support, never NaN for a finite point.</returns>
public delegate double LogDensity(ReadOnlySpan<double> position, Span<double> gradient);
