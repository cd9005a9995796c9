namespace Coolproof.Sampling.Hamiltonian;

/// <summary>
/// A move beside the sampler's own, made after each transition: it must leave the target distribution as it is, as a draw of some coordinates given all
/// others does. It may use other coordinates of the same quantities, in which it mixes where the sampler's do not (interweaving; Yu and Meng 2011,
/// JCGS 20:531). One instance per chain.
/// </summary>
/// <param name="position">The chain's place, moved in place.</param>
/// <param name="random">The chain's chance.</param>
public delegate void SideStep(Span<double> position, RandomStream random);
