using Coolproof.Evidence.Model;
using Coolproof.Evidence.Words;
using Coolproof.Sampling.Laplace;

namespace Coolproof.Evidence.Doubts;

/// <summary>
/// Where the variance of a difference comes from. With c the gradient of the difference and A the whitened rows (each prior and each reading one) at a
/// typical point, Var = c'H⁻¹c = ‖A H⁻¹ c‖², so that a source's share is the sum of its rows' squares over the sum of all. Linear in runs and readings.
/// </summary>
internal static class DoubtShares
{
    private const double GradientStep = 1e-4;

    // No direction is less certain than five times the prior's variance: where a wild reading bends the curvature the wrong way.
    private const double LeastPrecision = 0.2;

    /// <summary>Shares of the doubt about fair can peak (a) − fair can peak (b), largest first; only those that are exactly 0 are left out.</summary>
    /// <param name="posterior">What is left to believe.</param>
    /// <param name="optionA">First option, a place in <see cref="Posterior.Options"/>.</param>
    /// <param name="optionB">Second option, a place in <see cref="Posterior.Options"/>.</param>
    /// <returns>Shares that sum to 1; none where nothing is in doubt (an option against itself).</returns>
    /// <exception cref="ArgumentOutOfRangeException">No such option.</exception>
    public static IReadOnlyList<DoubtShare> Of(Posterior posterior, int optionA, int optionB)
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual((uint)optionA, (uint)posterior.Options.Count, nameof(optionA));
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual((uint)optionB, (uint)posterior.Options.Count, nameof(optionB));
        DayFit fit = posterior.Fit;
        DayDensity density = new(HoldingSpreads(fit));
        double[] gradient = Gradient(fit, new FairPeaks(fit.Model, [posterior.Options[optionA], posterior.Options[optionB]], posterior.Fair));
        double[] along = Against(density, fit.Typical, gradient);
        double[] squares = DoubtRows.Squares(density, fit.Typical, along);
        double sum = squares.Sum();
        return sum > 0 && double.IsFinite(sum)
            ? [.. squares.Select((s, i) => new DoubtShare(SourceOfDoubt.All[i].Name, s / sum)).Where(d => d.Share > 0).OrderByDescending(d => d.Share)]
            : [];
    }

    /// <summary>
    /// The model with all spreads and scatters as good as known at their typical values. Not knowing them makes tails longer, but it shifts no difference:
    /// their own curvature at one point is far from what is expected, and would only blur whose doubt it is.
    /// </summary>
    internal static DayModel HoldingSpreads(DayFit fit) => fit.Model.Holding(Enumerable.Range(0, fit.Model.Layout.Globals)
        .Where(i => fit.Model.Parameters[i].Prior == PriorKind.HalfNormal).ToDictionary(i => i, i => HalfNormal.At(fit.Typical[i]).X));

    /// <summary>v = H⁻¹c.</summary>
    internal static double[] Against(DayDensity density, double[] centre, double[] gradient)
    {
        double[] along = new double[gradient.Length], precision = new double[gradient.Length];
        Array.Fill(precision, 1.0);
        ArrowFactor.Of(ArrowHessian.At(density.Evaluate, density.Model.Layout, centre), precision, LeastPrecision).Solve(gradient, along);
        return along;
    }

    // Fair conditions know globals alone.
    private static double[] Gradient(DayFit fit, FairPeaks peaks)
    {
        double[] gradient = new double[fit.Typical.Length], u = [.. fit.Typical], can = new double[2], winding = new double[2];
        for (int i = 0; i < fit.Model.Layout.Globals; i++)
        {
            u[i] = fit.Typical[i] + GradientStep;
            double up = Difference();
            u[i] = fit.Typical[i] - GradientStep;
            gradient[i] = (up - Difference()) / (2 * GradientStep);
            u[i] = fit.Typical[i];
        }
        return gradient;

        double Difference()
        {
            peaks.Fill(u, can, winding, []);
            return can[0] - can[1];
        }
    }
}
