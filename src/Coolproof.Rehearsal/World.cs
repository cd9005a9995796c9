using Coolproof.Thermal.FullModel;

namespace Coolproof.Rehearsal;

/// <summary>What is true of the whole rehearsal: motor, lap, load, gun.</summary>
/// <param name="Body">The motor.</param>
/// <param name="MassScale">Mass of the motor over 165 g.</param>
/// <param name="Lap">The lap driven.</param>
/// <param name="MeanLogHeat">Mean of log heat, heat in W with the winding at 25 °C.</param>
/// <param name="CopperShare">Copper's share of it.</param>
/// <param name="BaseWPerK">Watts shed per degree while driving before options differ, W/K.</param>
/// <param name="PassiveShare">Share of radiation and natural convection.</param>
/// <param name="MotionShareWithFan">Share of the car's motion with a fan fitted.</param>
/// <param name="BreezeMS">Breeze at a car that stands, m/s.</param>
internal sealed record World(
    MotorBody Body, double MassScale, LapPattern Lap, double MeanLogHeat, double CopperShare, double BaseWPerK, double PassiveShare,
    double MotionShareWithFan, double BreezeMS)
{
    /// <summary>Air at which conductances and the spread of options are stated, °C.</summary>
    internal const double NominalAirC = 25;

    /// <summary>Rise of the can at which conductances are stated, K.</summary>
    internal const double NominalRiseK = 40;

    internal static World Drawn(RehearsalSettings settings)
    {
        RandomStream chance = new(settings.Seed, "motor");
        double massKg = settings.MotorMassKg ?? chance.In(TruthRanges.MotorMassKg), scale = massKg / MotorBody.ReferenceMassKg;
        MotorBody body = DrawnBody(massKg, chance) with { MagnetLossPerK = settings.MagnetsWeaken ? new RandomStream(settings.Seed, "magnets").In(TruthRanges.MagnetLossPerK) : 0 };
        LapPattern lap = DrawnLap(new RandomStream(settings.Seed, "lap"));
        RandomStream cooling = new(settings.Seed, "cooling");
        double copperShare = chance.SymmetricBeta(TruthRanges.CopperShareShape);
        World world = new(
            body, scale, lap, 0, copperShare, 0, cooling.In(TruthRanges.PassiveShare), cooling.In(TruthRanges.MotionShareWithFan),
            cooling.In(TruthRanges.BreezeMS));
        for (int tries = 0; tries < 10_000; tries++)
        {
            double heat = Within(TruthRanges.HeatW, () => chance.About(TruthRanges.HeatMedianW, TruthRanges.HeatLogSd));
            double base165 = Within(TruthRanges.BaseWPerK, () => cooling.About(TruthRanges.BaseMedianWPerK, TruthRanges.BaseLogSd));
            World candidate = world with { MeanLogHeat = Math.Log(settings.HeatW ?? scale * heat), BaseWPerK = scale * base165 };
            double rise = candidate.NominalCanC(candidate.BaseWPerK) - NominalAirC;
            if (TruthRanges.BaseRiseK.Holds(rise))
                return candidate;
        }
        throw new ArgumentException($"No motor of {massKg} kg with {settings.HeatW} W of heat can be tested between "
            + $"{TruthRanges.BaseRiseK.Low} and {TruthRanges.BaseRiseK.High} K over the air.", nameof(settings));
    }

    /// <summary>Can after six minutes of fair driving in nominal air with an ordinary fan option of this conductance, °C.</summary>
    internal double NominalCanC(double wPerK)
    {
        double[] t = FairRun.Peak(this, OptionShapes.Ordinary(this, wPerK), MeanLogHeat, NominalAirC, 360);
        return t[(int)Node.Can];
    }

    static double Within(Between range, Func<double> draw)
    {
        while (true)
        {
            double value = draw();
            if (range.Holds(value))
                return value;
        }
    }

    static MotorBody DrawnBody(double massKg, RandomStream chance)
    {
        MotorBody ordinary = MotorBody.OfMass(massKg);
        double scale = chance.About(1, TruthRanges.CapacityScaleLogSd);
        double Capacity(double jPerK) => scale * chance.About(jPerK, TruthRanges.CapacityShareLogSd);
        double Lesser(double wPerK) => chance.About(wPerK, TruthRanges.LesserPathLogSd);
        return ordinary with
        {
            WindingJPerK = Capacity(ordinary.WindingJPerK),
            LaminationsJPerK = Capacity(ordinary.LaminationsJPerK),
            RotorJPerK = Capacity(ordinary.RotorJPerK),
            CanJPerK = Capacity(ordinary.CanJPerK),
            EndbellJPerK = Capacity(ordinary.EndbellJPerK),
            SlotWPerK = chance.About(ordinary.SlotWPerK, TruthRanges.SlotLogSd),
            CoreToCanWPerK = chance.About(ordinary.CoreToCanWPerK, TruthRanges.CoreToCanLogSd),
            RotorToLaminationsWPerK = Lesser(ordinary.RotorToLaminationsWPerK),
            CanToEndbellWPerK = Lesser(ordinary.CanToEndbellWPerK),
            WindingToEndbellWPerK = Lesser(ordinary.WindingToEndbellWPerK),
            WindingToCanWPerK = Lesser(ordinary.WindingToCanWPerK),
            RotorToEndbellWPerK = Lesser(ordinary.RotorToEndbellWPerK),
        };
    }

    static LapPattern DrawnLap(RandomStream chance)
    {
        double meanSpeed = chance.In(TruthRanges.LapSpeedMS), lapS = chance.In(TruthRanges.LapS);
        int bursts = (int)Math.Round(chance.In(TruthRanges.LapBursts));
        List<LapSection> sections = [];
        for (int b = 0; b < bursts; b++)
        {
            double burst = chance.In(new(0.4, 0.6)) * lapS / bursts, corner = lapS / bursts - burst;
            sections.Add(new(burst, chance.In(new(1.2, 2.4)), meanSpeed * chance.In(new(1.1, 1.4))));
            sections.Add(new(corner, chance.In(new(0.1, 0.5)), meanSpeed * chance.In(new(0.6, 0.9))));
        }
        return new LapPattern(sections);
    }
}
