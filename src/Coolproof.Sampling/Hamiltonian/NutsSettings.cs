namespace Coolproof.Sampling.Hamiltonian;

/// <summary>How a No-U-Turn run is done. The defaults follow common practice in the literature named at each.</summary>
/// <param name="Chains">Independent chains; four let R-hat see a stranded one (Vehtari et al. 2021).</param>
/// <param name="WarmUp">Iterations per chain that adapt step size and metric and are thrown away.</param>
/// <param name="Draws">Iterations per chain that are kept.</param>
/// <param name="TargetAcceptance">Mean acceptance the step size aims at, in (0, 1); 0.8 after Betancourt, Byrne and Girolami (2014).</param>
/// <param name="MaxTreeDepth">Doublings per trajectory at most: no more than 2^depth − 1 gradients a draw.</param>
/// <param name="Metric">What the warm-up learns of the covariance.</param>
/// <param name="LeadingBlock">Size of the dense block when <paramref name="Metric"/> is <see cref="MetricKind.LeadingBlock"/>.</param>
/// <param name="AdaptMetric">False keeps the metric given at the start: right when the target is already whitened.</param>
/// <param name="FastStart">Warm-up iterations before the first metric window.</param>
/// <param name="FirstWindow">Length of the first metric window; each next is twice as long.</param>
/// <param name="FastEnd">Warm-up iterations after the last metric window, for the step size alone.</param>
/// <param name="MaxEnergyError">A trajectory whose energy rises by more than this has diverged (1000, Betancourt 2017).</param>
public sealed record NutsSettings(
    int Chains = 4,
    int WarmUp = 500,
    int Draws = 500,
    double TargetAcceptance = 0.8,
    int MaxTreeDepth = 10,
    MetricKind Metric = MetricKind.Diagonal,
    int LeadingBlock = 0,
    bool AdaptMetric = true,
    int FastStart = 75,
    int FirstWindow = 25,
    int FastEnd = 50,
    double MaxEnergyError = 1000)
{
    /// <summary>How many of the leading coordinates of an n-dimensional target share a dense block.</summary>
    internal int DenseSize(int dimension) => Metric switch
    {
        MetricKind.Dense => dimension,
        MetricKind.LeadingBlock => Math.Min(LeadingBlock, dimension),
        _ => 0,
    };

    internal void Check()
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(Chains);
        ArgumentOutOfRangeException.ThrowIfNegative(WarmUp);
        ArgumentOutOfRangeException.ThrowIfNegative(Draws);
        ArgumentOutOfRangeException.ThrowIfNegative(LeadingBlock);
        ArgumentOutOfRangeException.ThrowIfNegative(FastStart);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(FirstWindow);
        ArgumentOutOfRangeException.ThrowIfNegative(FastEnd);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(MaxTreeDepth);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(MaxTreeDepth, 20);
        if (TargetAcceptance is not (> 0 and < 1))
            throw new ArgumentOutOfRangeException(nameof(TargetAcceptance), TargetAcceptance, "The target acceptance lies between 0 and 1.");
        if (!(MaxEnergyError > 0))
            throw new ArgumentOutOfRangeException(nameof(MaxEnergyError), MaxEnergyError, "The largest energy error is positive.");
    }
}
