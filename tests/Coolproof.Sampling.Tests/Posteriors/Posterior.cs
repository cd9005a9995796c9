using Coolproof.Sampling.Hamiltonian;

namespace Coolproof.Sampling.Tests.Posteriors;

/// <summary>A published posterior on an unconstrained space, and the way back to its own parameters.</summary>
/// <param name="Dimension">Unconstrained coordinates.</param>
/// <param name="Names">The published parameter names.</param>
/// <param name="Density">Log density with the Jacobian of the transformation.</param>
/// <param name="Parameters">From a position to the published parameters.</param>
/// <param name="Start">A sensible scattered start.</param>
/// <param name="Metric">A metric to begin with, or none.</param>
sealed record Posterior(
    int Dimension,
    string[] Names,
    LogDensity Density,
    DerivedQuantities Parameters,
    Func<RandomStream, double[]> Start,
    InverseMetric? Metric = null);
