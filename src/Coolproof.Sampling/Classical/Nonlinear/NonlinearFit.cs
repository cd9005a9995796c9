namespace Coolproof.Sampling.Classical;

/// <summary>Result of a nonlinear least-squares search.</summary>
/// <param name="Outcome">How it ended.</param>
/// <param name="Reason">The same in a sentence, with the numbers.</param>
/// <param name="Parameters">Best parameters found; the start if nothing could be done.</param>
/// <param name="StandardDeviations">Of the parameters, from the linearised model and the residual standard deviation; NaN where not determined.</param>
/// <param name="Covariance">p × p, of the parameters; NaN where not determined.</param>
/// <param name="ResidualSumOfSquares">At the parameters.</param>
/// <param name="ResidualSd">√(sum of squares / degrees of freedom); NaN without degrees of freedom.</param>
/// <param name="DegreesOfFreedom">n − p.</param>
/// <param name="Iterations">Jacobians used.</param>
/// <param name="Evaluations">Residual evaluations of the search, those for difference Jacobians not counted.</param>
public sealed record NonlinearFit(FitOutcome Outcome, string Reason, IReadOnlyList<double> Parameters, IReadOnlyList<double> StandardDeviations,
    double[,] Covariance, double ResidualSumOfSquares, double ResidualSd, int DegreesOfFreedom, int Iterations, int Evaluations)
{
    /// <summary>Whether the parameters are a minimum with standard deviations.</summary>
    public bool Succeeded => Outcome == FitOutcome.Converged;
}
