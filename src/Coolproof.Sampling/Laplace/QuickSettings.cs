namespace Coolproof.Sampling.Laplace;

/// <summary>How the quick path draws.</summary>
/// <param name="Draws">Importance draws, and as many equally weighted ones; 2 or more.</param>
/// <param name="DegreesOfFreedom">Of the multivariate t that proposes the sampled globals; 7 has tails heavy enough for most hyperparameters.</param>
/// <param name="Curvature">Where the curvature of the rest comes from.</param>
/// <param name="NewtonSteps">Most Newton steps of the rest for each draw.</param>
/// <param name="RestDraws">Draws of the rest kept for each draw of the sampled globals, used in turn when it is resampled more than once.</param>
public sealed record QuickSettings(
    int Draws = 200, double DegreesOfFreedom = 7, LocalCurvature Curvature = LocalCurvature.Measured, int NewtonSteps = 4, int RestDraws = 2)
{
    /// <summary>Globals to sample by importance; the other globals are integrated out with the locals. Null: all of them.</summary>
    public IReadOnlyList<int>? Sampled { get; init; }

    /// <summary>Precision of the prior for each coordinate (see <see cref="ArrowFactor.Of"/>). Null: none.</summary>
    public double[]? PriorPrecision { get; init; }
}
