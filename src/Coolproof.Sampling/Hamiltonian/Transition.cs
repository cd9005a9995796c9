namespace Coolproof.Sampling.Hamiltonian;

/// <summary>What one transition did.</summary>
/// <param name="Acceptance">Mean Metropolis acceptance over the trajectory, 0 to 1.</param>
/// <param name="Depth">Completed doublings.</param>
/// <param name="Steps">Leapfrog steps.</param>
/// <param name="Diverged">Whether the energy error passed its limit.</param>
readonly record struct Transition(double Acceptance, int Depth, int Steps, bool Diverged);
