namespace Coolproof.Rehearsal;

/// <summary>The air of one evening: where it starts, a drift, a slow wobble.</summary>
/// <param name="StartC">At the first go, °C.</param>
/// <param name="DriftKPerS">Drift, K/s.</param>
/// <param name="WobbleK">Half the wobble's swing, K.</param>
/// <param name="WobbleS">Its period, s.</param>
/// <param name="Turn">Where in the wobble the evening starts, rad.</param>
internal sealed record AirOfEvening(double StartC, double DriftKPerS, double WobbleK, double WobbleS, double Turn)
{
    internal static AirOfEvening Drawn(RehearsalSettings settings, int evening, double lengthS)
    {
        RandomStream chance = new(settings.Seed, "air", evening);
        double start = chance.In(TruthRanges.AirC), drift = chance.Normal(TruthRanges.AirDriftSdK);
        return new(
            settings.AirFromC?[evening] ?? start,
            (settings.AirDriftK ?? drift) / Math.Max(lengthS, 1),
            chance.In(TruthRanges.AirWobbleK),
            3600 * chance.In(TruthRanges.AirWobbleH),
            2 * Math.PI * chance.Unit());
    }

    /// <summary>Air at a time after the first go, °C.</summary>
    internal double AtC(double seconds) =>
        StartC + DriftKPerS * seconds + WobbleK * (Math.Sin(2 * Math.PI * seconds / WobbleS + Turn) - Math.Sin(Turn));
}
