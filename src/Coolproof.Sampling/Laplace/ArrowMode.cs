namespace Coolproof.Sampling.Laplace;

/// <summary>The mode of a hierarchical log density, with its curvature there.</summary>
/// <param name="Position">The mode, or the highest point reached.</param>
/// <param name="LogDensity">Log density there.</param>
/// <param name="Hessian">Minus the second derivatives there, without what couples blocks.</param>
/// <param name="Factor">Their factor, repaired where need be.</param>
/// <param name="Shortfall">What a further Newton step would gain in log density; NaN when that can't be told.</param>
/// <param name="Gradients">Gradients evaluated in all.</param>
/// <param name="Hessians">Matrices measured in all.</param>
/// <param name="Converged">Whether <paramref name="Shortfall"/> fell below the tolerance.</param>
/// <param name="Reason">Why not, in plain words; null when converged.</param>
public sealed record ArrowMode(
    double[] Position, double LogDensity, ArrowHessian Hessian, ArrowFactor Factor, double Shortfall, int Gradients, int Hessians,
    bool Converged, string? Reason)
{
    /// <summary>Log of the integral of the density by Laplace's method: log density + ½ n log 2π − ½ log det H.</summary>
    public double LogIntegral => LogDensity + 0.5 * Position.Length * Math.Log(Math.Tau) - 0.5 * Factor.LogDeterminant;

    /// <summary>
    /// Damped Newton steps with the arrow-shaped curvature, quasi-Newton steps (limited-memory BFGS preconditioned by the arrow factor, Nocedal and
    /// Wright 2006, algorithm 7.4) while they go well between two measurements of the curvature. Where the density isn't log-concave the curvature is turned
    /// round, and a stationary point with a way up is left along it.
    /// </summary>
    /// <param name="density">Log density, smooth; −∞ outside its support.</param>
    /// <param name="layout">Order of the coordinates.</param>
    /// <param name="start">Where to start, inside the support.</param>
    /// <param name="settings">Null: the defaults.</param>
    /// <exception cref="ArgumentException">Length of <paramref name="start"/>, or a start outside the support.</exception>
    public static ArrowMode Find(LogDensity density, ArrowLayout layout, ReadOnlySpan<double> start, ModeSettings? settings = null) =>
        new ModeSearch(density, layout, start, settings ?? new ModeSettings()).Run();
}
