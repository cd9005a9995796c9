namespace Coolproof.Sampling.Classical;

/// <summary>Estimated covariance of the effects of one random term.</summary>
/// <param name="Term">Name of the grouping factor.</param>
/// <param name="Covariance">Width × width (1 × 1 for an intercept alone); the diagonal holds variances, exactly 0 where none was found.</param>
public sealed record VarianceComponent(string Term, double[,] Covariance);
