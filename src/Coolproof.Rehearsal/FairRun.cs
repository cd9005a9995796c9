using Coolproof.Thermal.FullModel;

namespace Coolproof.Rehearsal;

/// <summary>A run as nobody drives it: everything starts at air, even load, no roll-in.</summary>
internal static class FairRun
{
    /// <summary>All six temperatures at the end of hard driving, °C.</summary>
    /// <param name="world">Motor and lap.</param>
    /// <param name="cooling">The option fitted.</param>
    /// <param name="logHeat">Log of the heat in W with the winding at 25 °C.</param>
    /// <param name="airC">Air, °C.</param>
    /// <param name="driveS">Hard driving, s.</param>
    /// <param name="pace">Speed over the lap's.</param>
    internal static double[] Peak(World world, CoolingOption cooling, double logHeat, double airC, double driveS, double pace = 1)
    {
        double[] t = [airC, airC, airC, airC, airC, airC];
        FastPath.Advance(world.Body, cooling, Driving(world, logHeat, airC, pace), driveS, t);
        return t;
    }

    /// <summary>Hard driving with the laps averaged. Fans run while the car is driven; an option without one has none to run.</summary>
    internal static Phase Driving(World world, double logHeat, double airC, double pace)
    {
        double heat = Math.Exp(logHeat);
        return world.Lap.Averaged(world.Body, airC, world.CopperShare * heat, (1 - world.CopperShare) * heat, fan: 1, pace);
    }

    /// <summary>Rolling in after it: no copper heat, little iron heat, half the pace.</summary>
    /// <param name="world">Motor and lap.</param>
    /// <param name="logHeat">Log of the heat of the drive.</param>
    /// <param name="airC">Air, °C.</param>
    /// <param name="pace">Speed of the drive over the lap's.</param>
    internal static Phase RollingIn(World world, double logHeat, double airC, double pace)
    {
        Phase driving = Driving(world, logHeat, airC, TruthRanges.RollInPace * pace);
        return driving with { CopperW25 = 0, IronW = TruthRanges.RollInIron * driving.IronW };
    }
}
