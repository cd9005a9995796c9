namespace Coolproof.Sampling.Laplace;

/// <summary>The rest ψ at one value of the sampled globals φ.</summary>
/// <param name="Sampled">φ.</param>
/// <param name="LogIntegral">Log of the integral over ψ by Laplace's method.</param>
/// <param name="Rest">Mode of ψ given φ.</param>
/// <param name="Factor">Factor of the curvature of ψ there.</param>
sealed record InnerNode(double[] Sampled, double LogIntegral, double[] Rest, ArrowFactor Factor);
