namespace Coolproof.Sampling.Classical;

/// <summary>
/// Nonlinear least squares: a Levenberg-Marquardt search in a scaled trust region, steps by QR factors with column pivoting, after J. J. Moré,
/// Lecture Notes in Mathematics 630 (1978) 105-116. Where sums of squares no longer tell two points apart, undamped Gauss-Newton steps
/// go on for as long as they contract, which wins the digits that the sum of squares cannot see.
/// </summary>
public static class LevenbergMarquardt
{
    /// <summary>Minimises Σ residualᵢ².</summary>
    /// <param name="residuals">The residuals.</param>
    /// <param name="residualCount">n, at least the number of parameters.</param>
    /// <param name="start">Start of the search, p finite numbers.</param>
    /// <param name="jacobian">Their derivatives; by differences of the residuals if null.</param>
    /// <param name="options">Settings; the defaults if null.</param>
    /// <returns>The best parameters found; its outcome names what went wrong, if anything did.</returns>
    /// <exception cref="ArgumentException">No parameters or a start that is not finite.</exception>
    public static NonlinearFit Minimise(ResidualFunction residuals, int residualCount, ReadOnlySpan<double> start,
        JacobianFunction? jacobian = null, LevenbergMarquardtOptions? options = null)
    {
        if (start.IsEmpty) throw new ArgumentException("No parameters.", nameof(start));
        foreach (var value in start)
        {
            if (!double.IsFinite(value)) throw new ArgumentException($"The start holds {value}.", nameof(start));
        }
        options ??= new();
        jacobian ??= DifferenceJacobian.Of(residuals, residualCount, options.Scales);
        var best = Search(options.RadiusFactor, start);
        // A long first step can land where the model is flat (an exponential that has run out). Shorter ones then get their turn, down to
        // the least that Moré recommends.
        for (var factor = options.RadiusFactor / 10; Lost(best.Outcome) && factor >= 0.1; factor /= 10)
        {
            var again = Search(factor, start);
            if (!Lost(again.Outcome)) return again;
        }
        return best;

        NonlinearFit Search(double factor, ReadOnlySpan<double> from) =>
            new LevenbergMarquardtSearch(residuals, jacobian, residualCount, from.ToArray(), options with { RadiusFactor = factor }).Run();
    }

    static bool Lost(FitOutcome outcome) => outcome is FitOutcome.Unidentified or FitOutcome.JacobianNotFinite or FitOutcome.NoDescent;
}
