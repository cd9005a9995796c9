namespace Coolproof.Sampling.Calibration;

/// <summary>One simulated data set, analysed.</summary>
/// <param name="Truth">The quantities that made the data, drawn from the prior.</param>
/// <param name="Values">Their posterior draws: quantity × (chain after chain, draw after draw).</param>
/// <param name="Chains">Chains of the draws.</param>
public sealed record CalibrationReplicate(double[] Truth, double[][] Values, int Chains);
