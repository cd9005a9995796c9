namespace Coolproof.Sampling.Diagnostics;

/// <summary>What draws must show before anything is concluded from them.</summary>
/// <param name="RHat">R-hat stays below this (1.01, Vehtari et al. 2021).</param>
/// <param name="SampleSize">Bulk and tail effective sample sizes exceed this (400 over four chains, Vehtari et al. 2021).</param>
/// <param name="DivergentShare">Share of divergent draws tolerated in the end; a choice of this project.</param>
public sealed record GateLimits(double RHat = 1.01, double SampleSize = 400, double DivergentShare = 0.001);
