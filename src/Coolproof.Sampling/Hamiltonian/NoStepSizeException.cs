namespace Coolproof.Sampling.Hamiltonian;

/// <summary>A chain stands where no step size keeps the energy: far out in a tail, or on a density without slope.</summary>
public sealed class NoStepSizeException(string message) : InvalidOperationException(message);
