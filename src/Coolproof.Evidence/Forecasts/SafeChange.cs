namespace Coolproof.Evidence.Forecasts;

/// <summary>What, changed alone, would bring the odds down to those accepted; null where no such change does within reason.</summary>
/// <param name="RaceS">Longest race, s, at least a minute.</param>
/// <param name="AirC">Warmest air, °C, at least −10.</param>
/// <param name="HeatFactor">Largest heat over that of the tests, at least 0.5: gearing, pace, timing within the class rules.</param>
public sealed record SafeChange(double? RaceS, double? AirC, double? HeatFactor)
{
    private const double ShortestS = 60, ColdestC = -10, LeastHeat = 0.5;
    private const int Halvings = 9;

    internal static SafeChange Of(RaceEvidence evidence, RaceScenario scenario, RaceDemand demand, RaceChance[] chances, int option)
    {
        bool Safe(RaceScenario changed) => Forecast.Odds(evidence, changed, demand, chances, option) <= demand.AcceptedOdds;
        return new(
            Largest(ShortestS, scenario.RaceS, s => Safe(scenario with { RaceS = s })),
            Largest(ColdestC, scenario.AirC, c => Safe(scenario with { AirC = c })),
            Largest(LeastHeat * scenario.HeatFactor, scenario.HeatFactor, f => Safe(scenario with { HeatFactor = f })));
    }

    // The largest value between one that should be safe and one that is not.
    private static double? Largest(double safe, double unsafeOne, Func<double, bool> isSafe)
    {
        if (safe >= unsafeOne || !isSafe(safe))
            return null;
        for (int i = 0; i < Halvings; i++)
        {
            double middle = 0.5 * (safe + unsafeOne);
            if (isSafe(middle))
                safe = middle;
            else
                unsafeOne = middle;
        }
        return safe;
    }
}
