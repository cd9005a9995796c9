using Coolproof.Sampling.Diagnostics;

namespace Coolproof.Sampling.Hamiltonian;

/// <summary>Draws with the judgement they come with; draws of a failed gate are for looking at only.</summary>
/// <param name="Sample">The chains.</param>
/// <param name="Gate">Whether they may be used, and if not, why.</param>
/// <param name="Quantities">The named quantities: quantity × (chain after chain, draw after draw).</param>
/// <param name="TargetAcceptance">The target acceptance the draws were made with.</param>
/// <param name="Gradients">Gradient evaluations over all attempts.</param>
public sealed record GatedResult(NutsResult Sample, GateResult Gate, double[][] Quantities, double TargetAcceptance, long Gradients);
