namespace Coolproof.Sampling.Calibration;

/// <summary>What simulation-based calibration found.</summary>
/// <param name="Quantities">Each quantity.</param>
/// <param name="Band">The band all were held against, simultaneous over ranks and quantities.</param>
/// <param name="ShortReplicates">Replicates in which some quantity had fewer effective draws than ranks need: their ranks are not trustworthy.</param>
public sealed record CalibrationResult(IReadOnlyList<QuantityCalibration> Quantities, EcdfBand Band, int ShortReplicates)
{
    /// <summary>Whether every quantity stays inside its band.</summary>
    public bool Calibrated => Quantities.All(quantity => quantity.LeavesAt is null);
}
