using Coolproof.Sampling;

namespace Coolproof.Evidence.Forecasts;

/// <summary>
/// What the draws of a table leave open of another day, one set for each draw: standard normals, so that a scenario moved a little moves the answer a little.
/// Sizes are those of <see cref="RacePriors"/> and <see cref="CoolingPriors"/>.
/// </summary>
internal sealed record RaceChance(
    double DayHeat, double Mounting, double DayConductance, double Air, double DensityExponent, double Sun, double Passive, double Length, double Load, double Wind,
    double RotorPath, double RotorCapacity, double RollIn, double PitFan, IReadOnlyList<double> RunHeats)
{
    public static RaceChance[] Of(int draws, long seed) => [.. Enumerable.Range(0, draws).Select(i =>
    {
        RandomStream chance = new(seed, i);
        double[] z = new double[14 + RaceScenario.MostRaces];
        chance.FillNormal(z);
        return new RaceChance(z[0], z[1], z[2], z[3], z[4], Math.Abs(z[5]), chance.NextUniform(), z[6], z[7], z[8], z[9], z[10], z[11], z[12], z[14..]);
    })];
}

/// <summary>Sizes of what another day changes. Common practice, no source, where a line names none.</summary>
internal static class RacePriors
{
    /// <summary>Conductance goes with air density to this power, and its sd: between still air and a turbulent stream.</summary>
    public const double DensityExponent = 0.6, DensityExponentSd = 0.1;

    /// <summary>Scale of the half-normal of the sun's heat on the shell, W for a core of <see cref="Model.Priors.CoreCapacity"/>.</summary>
    public const double SunW = 5;

    /// <summary>Log-sd of the conductance more for each doubling of length, and of heat, beyond the data.</summary>
    public const double BeyondLogSd = 0.1;

    /// <summary>Log-sd of the conductance more in a wind that no test had.</summary>
    public const double OtherWindLogSd = 0.05;

    /// <summary>Laminations to rotor over core capacity, 1/s, and its log-sd.</summary>
    public const double RotorPerS = CoolingPriors.RotorWPerK / Model.Priors.CoreCapacity, RotorPathLogSd = 0.5;

    /// <summary>Rotor capacity over core capacity for the mass breakdown of <see cref="Thermal.MotorMass"/>.</summary>
    public static readonly double RotorShare = new Thermal.MotorMass(Thermal.MotorMass.ReferenceKg).RotorJK / Model.Priors.CoreCapacity;

    /// <summary>Log of the roll-in's length about its prior mean.</summary>
    public const double RollInLogSd = 0.5;

    /// <summary>A pit fan over core capacity, 1/s.</summary>
    public const double PitFanPerS = CoolingPriors.PitFanWPerK / Model.Priors.CoreCapacity;
}
