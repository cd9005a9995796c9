namespace Coolproof.Sampling.Calibration;

/// <summary>How the true values of one quantity fell among its posterior draws.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Ranks">Rank of the truth in each replicate.</param>
/// <param name="LeavesAt">The first rank at which the cumulative counts leave the band; null when they stay inside.</param>
public sealed record QuantityCalibration(string Name, int[] Ranks, int? LeavesAt);
