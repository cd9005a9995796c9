namespace Coolproof.Sampling.Hamiltonian;

/// <summary>Which part of the posterior covariance the warm-up learns.</summary>
public enum MetricKind
{
    /// <summary>Variances only.</summary>
    Diagonal,

    /// <summary>The whole covariance; worth its n² only where coordinates are strongly correlated.</summary>
    Dense,

    /// <summary>The covariance of the first <see cref="NutsSettings.LeadingBlock"/> coordinates and the variances of the others.</summary>
    LeadingBlock,
}
