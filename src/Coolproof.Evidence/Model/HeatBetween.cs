namespace Coolproof.Evidence.Model;

/// <summary>Variance of log heat that stands between a member of a group and what the readings say of it.</summary>
/// <param name="Variance">All of it at the typical point.</param>
/// <param name="OtherVariance">What of it is no heat: scatter, delays, roll-in.</param>
/// <param name="ChargePrecision">Precision of a run's log heat by its charge.</param>
/// <param name="Share">1 where the heat of a run stands between, 0 where it doesn't.</param>
internal readonly record struct HeatBetween(double Variance, double OtherVariance, double ChargePrecision, double Share)
{
    /// <summary>Nothing stands between.</summary>
    public static HeatBetween None => new(1, 1, 0, 0);
}
