namespace Coolproof.Sampling.Hamiltonian;

/// <summary>One point of phase space. Momentum and gradient are in the metric's own units (Fᵀ-transformed), position in the target's.</summary>
sealed class PhasePoint(int dimension)
{
    public readonly double[] Position = new double[dimension];
    public readonly double[] Momentum = new double[dimension];
    public readonly double[] Gradient = new double[dimension];
    public double LogDensity;

    /// <summary>Kinetic minus log density.</summary>
    public double Energy;

    /// <summary>How many branches still point here; the pool takes the point back at zero.</summary>
    public int Holders;
}
