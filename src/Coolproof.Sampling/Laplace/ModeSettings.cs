namespace Coolproof.Sampling.Laplace;

/// <summary>How the search for a mode is steered.</summary>
/// <param name="Tolerance">
/// Done when a Newton step would raise the log density by less than this; 1e-9 leaves the mode within about 5e-5 standard deviations.
/// </param>
/// <param name="MaxHessians">Matrices measured before giving up.</param>
/// <param name="StepsPerHessian">Quasi-Newton steps tried with one matrix while they go well.</param>
public sealed record ModeSettings(double Tolerance = 1e-9, int MaxHessians = 60, int StepsPerHessian = 12)
{
    /// <summary>Precision of the prior for each coordinate: the floor of the curvature (see <see cref="ArrowFactor.Of"/>). Null: none.</summary>
    public double[]? PriorPrecision { get; init; }

    /// <summary>First length for each coordinate over which to take differences (see <see cref="ArrowHessian.At"/>). Null: found by trial.</summary>
    public double[]? Scales { get; init; }

    /// <summary>
    /// Another curvature than the second derivatives, as a function of the position: expected information, say, which never bends upwards. Null: second derivatives.
    /// </summary>
    public Func<double[], ArrowHessian>? Curvature { get; init; }

    /// <summary>Another instance of the density, for a second thread that measures curvature with the first; the figures are the same. Null: one thread does it all.</summary>
    public LogDensity? Second { get; init; }

    /// <summary>Curvature near the start where it is known already: saves measuring it there. Null: it isn't.</summary>
    public ArrowHessian? Known { get; init; }

    /// <summary>Whether to make as many steps with one matrix as go well, even where it is still changing: for gradients that are cheap beside a matrix.</summary>
    public bool Patient { get; init; }
}
