namespace Coolproof.Evidence;

/// <summary>What cool-downs and races to come believe of a motor of 165 g beyond the joint model. Common practice, no source.</summary>
public static class CoolingPriors
{
    /// <summary>Share of radiation and natural convection in the conductance while driving, about 40 K over the air.</summary>
    public const double PassiveLow = 0.05, PassiveHigh = 0.20;

    /// <summary>A small pit fan on a 1:10 motor, W/K, and its log-sd.</summary>
    public const double PitFanWPerK = 2.5, PitFanLogSd = 0.3;

    /// <summary>Laminations to rotor, W/K.</summary>
    public const double RotorWPerK = 0.3;

    /// <summary>Log-sd of the rotor's heat capacity about its share of the mass.</summary>
    public const double RotorCapacityLogSd = 0.15;
}
