namespace Coolproof.Thermal;

/// <summary>A stretch of time over which the heat into a network is constant.</summary>
/// <param name="Seconds">Its length, s.</param>
/// <param name="HeatW">b = G_air T_air + P of each node, W (<see cref="Network.Heat"/>).</param>
public sealed record HeatInterval(double Seconds, double[] HeatW);
