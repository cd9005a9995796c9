namespace Coolproof.Thermal;

/// <summary>How fast temperatures change: any law, with radiation, natural convection, measured loads.</summary>
/// <param name="seconds">Time, s.</param>
/// <param name="temperatures">Temperatures, one per node, °C.</param>
/// <param name="ratesKPerS">Receives dT/dt of each node, K/s.</param>
public delegate void HeatFlow(double seconds, ReadOnlySpan<double> temperatures, Span<double> ratesKPerS);
