namespace Coolproof.Sampling.Classical;

/// <summary>How a nonlinear least-squares search ended.</summary>
public enum FitOutcome
{
    /// <summary>A minimum was found and every parameter is determined.</summary>
    Converged,

    /// <summary>A minimum was found, but some parameters (or combinations) can change without changing the fit: no standard deviations.</summary>
    Unidentified,

    /// <summary>Fewer residuals than parameters.</summary>
    TooFewResiduals,

    /// <summary>A residual at the start is not finite.</summary>
    StartNotFinite,

    /// <summary>A derivative met on the way is not finite.</summary>
    JacobianNotFinite,

    /// <summary>The limit of iterations was reached.</summary>
    IterationLimit,

    /// <summary>No step, however short, lowers the sum of squares although the gradient is not zero: derivatives and residuals disagree.</summary>
    NoDescent,
}
