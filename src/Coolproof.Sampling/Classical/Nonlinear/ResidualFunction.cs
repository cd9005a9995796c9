namespace Coolproof.Sampling.Classical;

/// <summary>Residuals of a model at some parameters (reading minus model or model minus reading, divided by its standard deviation if known).</summary>
/// <param name="parameters">Parameters, p numbers.</param>
/// <param name="residuals">Receives the residuals, n numbers. A value that is not finite marks parameters where the model has no meaning.</param>
public delegate void ResidualFunction(ReadOnlySpan<double> parameters, Span<double> residuals);
