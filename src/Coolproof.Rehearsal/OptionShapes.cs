using Coolproof.Thermal.FullModel;

namespace Coolproof.Rehearsal;

/// <summary>Turns "so many watts per degree while driving" into a whole cooling option.</summary>
internal static class OptionShapes
{
    /// <summary>An option with a fan and the day's shares as they are.</summary>
    internal static CoolingOption Ordinary(World world, double wPerK) =>
        Shaped(world, wPerK, hasFan: true, world.PassiveShare, world.MotionShareWithFan, Middle(TruthRanges.EndbellShare),
            Middle(TruthRanges.ShellStillWPerK), Middle(TruthRanges.ShellMotionWPerK));

    /// <summary>An option whose shares differ from the day's as options do.</summary>
    internal static CoolingOption Drawn(World world, double wPerK, bool hasFan, RandomStream chance)
    {
        double passive = TruthRanges.PassiveShare.Clamp(chance.About(world.PassiveShare, TruthRanges.OptionShareLogSd));
        double motion = TruthRanges.MotionShareWithFan.Clamp(chance.About(world.MotionShareWithFan, TruthRanges.OptionShareLogSd));
        return Shaped(world, wPerK, hasFan, passive, motion, chance.In(TruthRanges.EndbellShare),
            chance.In(TruthRanges.ShellStillWPerK), chance.In(TruthRanges.ShellMotionWPerK));
    }

    static CoolingOption Shaped(
        World world, double wPerK, bool hasFan, double passive, double motionWithFan, double endbell, double shellStill, double shellMotion)
    {
        double motion = hasFan ? motionWithFan : 1 - passive;
        double radiatedPerM2 = HeatFlows.RadiatedW(1, World.NominalAirC + World.NominalRiseK, World.NominalAirC) / World.NominalRiseK;
        CoolingOption unit = new(
            FanWPerK: hasFan ? 1 - passive - motion : 0,
            MotionWPerK: motion / world.Lap.MeanSpeedPower,
            NaturalWPerK125: passive / 2 / Math.Pow(World.NominalRiseK, CoolingOption.NaturalExponent - 1),
            RadiatingAreaM2: passive / 2 / radiatedPerM2,
            EndbellShare: endbell,
            ShellStillWPerK: world.MassScale * shellStill,
            ShellMotionWPerK: world.MassScale * shellMotion);
        return unit.Times(FactorFor(unit, world.Lap.Averaged(world.Body, World.NominalAirC, 0, 0, 1), wPerK));
    }

    // The shell's air lies in series, so the factor is found by halving: overall watts per degree grow with it.
    static double FactorFor(CoolingOption unit, in Phase driving, double wPerK)
    {
        double exchange = unit.ShellStillWPerK + driving.SpeedMS * unit.ShellMotionWPerK;
        if (!(wPerK > 0 && wPerK < 0.9 * exchange))
        {
            throw new ArgumentOutOfRangeException(
                nameof(wPerK), wPerK, $"The shell's air can't carry off so much, nor so little: 0 to {0.9 * exchange:f1} W/K.");
        }
        double low = 0, high = 20 * wPerK;
        for (int i = 0; i < 60; i++)
        {
            double middle = (low + high) / 2;
            (low, high) = unit.Times(middle).OverallWPerK(driving, World.NominalRiseK) < wPerK ? (middle, high) : (low, middle);
        }
        return (low + high) / 2;
    }

    static double Middle(Between range) => (range.Low + range.High) / 2;
}
