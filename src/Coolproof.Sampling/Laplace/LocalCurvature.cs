namespace Coolproof.Sampling.Laplace;

/// <summary>Where the curvature of what is integrated out comes from, for each draw of the sampled globals.</summary>
public enum LocalCurvature
{
    /// <summary>
    /// Measured for each draw by one-sided differences: one gradient for each global that isn't sampled and two for each local of the largest block.
    /// </summary>
    Measured,

    /// <summary>
    /// Interpolated between points up to 2.5 standard deviations to either side along each sampled global, and measured only for draws further out that have some
    /// weight or where Newton steps don't arrive: few gradients for a draw beyond those steps.
    /// </summary>
    Interpolated,

    /// <summary>As at the mode. Right only where it hardly depends on the sampled globals.</summary>
    AtMode,
}
