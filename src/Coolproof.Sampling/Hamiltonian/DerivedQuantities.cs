namespace Coolproof.Sampling.Hamiltonian;

/// <summary>What is reported of a draw.</summary>
/// <param name="position">A draw, n numbers.</param>
/// <param name="values">Receives the reported quantities.</param>
public delegate void DerivedQuantities(ReadOnlySpan<double> position, Span<double> values);
