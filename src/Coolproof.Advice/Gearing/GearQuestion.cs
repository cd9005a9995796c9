using Coolproof.Evidence.Forecasts;

namespace Coolproof.Advice.Gearing;

/// <summary>What is asked of pinion and timing.</summary>
/// <param name="Rig">Car, motor, pack, lap, and how the notebook's runs were driven.</param>
/// <param name="Card">What class, car and box of pinions allow.</param>
/// <param name="Scenario">The race.</param>
/// <param name="Demand">Limits, and the odds accepted.</param>
public sealed record GearQuestion(GearRig Rig, GearCard Card, RaceScenario Scenario, RaceDemand Demand)
{
    /// <summary>How much hotter the day is whose price in teeth is told, K.</summary>
    public double HotterK { get; init; } = 5;

    /// <summary>Draws of what is left open: odds to some two points.</summary>
    public int Draws { get; init; } = 400;

    /// <summary>Seed of what is left open.</summary>
    public long Seed { get; init; } = 1;
}
