using Coolproof.Sampling.Hamiltonian;

namespace Coolproof.Sampling.Laplace;

/// <summary>A log density seen in whitened coordinates, where it is near a standard normal.</summary>
public static class WhitenedDensity
{
    /// <summary>
    /// The log density by z, with its gradient by z. The constant <see cref="ArrowWhitening.LogJacobian"/> is left out. No allocation per call; one instance
    /// per chain.
    /// </summary>
    /// <param name="density">Log density by θ.</param>
    /// <param name="whitening">The map; a copy of it is kept.</param>
    public static LogDensity Over(LogDensity density, ArrowWhitening whitening)
    {
        ArrowWhitening own = whitening.Copy();
        double[] position = new double[own.Layout.Dimension], gradient = new double[own.Layout.Dimension];
        return (whitened, gradientByWhitened) =>
        {
            own.ToPosition(whitened, position);
            double height = density(position, gradient);
            own.PullBack(gradient, gradientByWhitened);
            return height;
        };
    }

    /// <summary>A move of θ seen in whitened coordinates. One instance per chain.</summary>
    /// <param name="step">The move of θ.</param>
    /// <param name="whitening">The map; a copy of it is kept.</param>
    public static SideStep Over(SideStep step, ArrowWhitening whitening)
    {
        ArrowWhitening own = whitening.Copy();
        double[] position = new double[own.Layout.Dimension];
        return (whitened, random) =>
        {
            own.ToPosition(whitened, position);
            step(position, random);
            own.FromPosition(position, whitened);
        };
    }
}
