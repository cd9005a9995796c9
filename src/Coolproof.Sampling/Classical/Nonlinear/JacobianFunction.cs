namespace Coolproof.Sampling.Classical;

/// <summary>Derivatives of the residuals.</summary>
/// <param name="parameters">Parameters, p numbers.</param>
/// <param name="jacobian">Receives ∂residualᵢ/∂parameterⱼ at [i·p + j], n·p numbers.</param>
public delegate void JacobianFunction(ReadOnlySpan<double> parameters, Span<double> jacobian);
