namespace Coolproof.Sampling.Diagnostics;

/// <summary>Whether draws may be used, and if not, why.</summary>
/// <param name="Passed">True when every limit is kept.</param>
/// <param name="Quantity">The worst quantity of a failed gate; null when it passed or the failure concerns no single quantity.</param>
/// <param name="Reason">Why it failed, with figures; empty when it passed.</param>
/// <param name="Remedy">What to do about it; empty when it passed.</param>
/// <param name="LargestRHat">Largest R-hat of all quantities; NaN when one has none.</param>
/// <param name="SmallestSampleSize">Smallest bulk or tail effective sample size of all quantities; NaN when one has none.</param>
/// <param name="DivergentShare">Divergent draws over all draws.</param>
/// <param name="Figures">Diagnostics of each quantity, in the order of their names.</param>
public sealed record GateResult(
    bool Passed,
    string? Quantity,
    string Reason,
    string Remedy,
    double LargestRHat,
    double SmallestSampleSize,
    double DivergentShare,
    IReadOnlyList<QuantityDiagnostics> Figures);
