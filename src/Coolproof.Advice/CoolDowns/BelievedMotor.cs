using Coolproof.Evidence;
using Coolproof.Sampling;
using Coolproof.Thermal.FullModel;

namespace Coolproof.Advice.CoolDowns;

/// <summary>One motor as it may be, in the full model, with the ways that it can be cooled: what the readings tell from a draw, the rest from priors.</summary>
/// <param name="Body">The motor, at 165 g: a scale common to heat and capacity changes no temperature.</param>
/// <param name="Cooling">What sheds heat by itself: natural convection and radiation.</param>
/// <param name="DrivingWPerK">Forced while driving, W/K.</param>
/// <param name="StandingWPerK">Forced standing in the shade, W/K.</param>
/// <param name="OwnFanWPerK">Forced standing with the own fan on, W/K.</param>
/// <param name="PitFanWPerK">Further by a pit fan, W/K.</param>
/// <param name="HeatW">Heat while driving with the winding at 25 °C, W.</param>
/// <param name="CopperShare">Copper's share of it.</param>
/// <param name="GunOffsetK">What the gun is off by, K.</param>
/// <param name="BreezeLogFactor">Log of a factor on the minutes in the shade: what breeze and handling change from one cool-down to the next, and the model misses.</param>
internal sealed record BelievedMotor(
    MotorBody Body, CoolingOption Cooling, double DrivingWPerK, double StandingWPerK, double OwnFanWPerK, double PitFanWPerK, double HeatW, double CopperShare,
    double GunOffsetK, double BreezeLogFactor)
{
    // Common practice, no source, beside what CoolingPriors has; the rotor's log-sd as docs/planning.md says.
    private const double NominalRiseK = 40, NominalAirC = 25, RotorLogSd = 0.45;
    private const double FanOffShare = 0.25, FanOffLogSd = 0.3, EndbellShare = 0.15, ShellWPerK = 3, GunOffsetSdK = 1.5;

    // Promises without it were kept on 82 in 100 days of the full model (docs/planning.md).
    private const double BreezeLogSd = 0.12;

    /// <summary>Draws what the motor's draw leaves open.</summary>
    public static BelievedMotor Of(MotorDraw draw, int option, RandomStream chance)
    {
        MotorBody ordinary = MotorBody.OfMass(MotorBody.ReferenceMassKg);
        double core = MotorScale.CoreJPerK, winding = Math.Min(draw.WindingShare, 0.8) * core, can = core / draw.CoreOverCan;
        double canOfShell = ordinary.CanJPerK / (ordinary.CanJPerK + ordinary.EndbellJPerK);
        MotorBody body = ordinary with
        {
            WindingJPerK = winding,
            LaminationsJPerK = core - winding,
            RotorJPerK = ordinary.RotorJPerK * About(chance, CoolingPriors.RotorCapacityLogSd),
            CanJPerK = can * canOfShell,
            EndbellJPerK = can * (1 - canOfShell),
            SlotWPerK = core / draw.SlotS,
            CoreToCanWPerK = core * draw.CoreToCanPerS,
            RotorToLaminationsWPerK = CoolingPriors.RotorWPerK * About(chance, RotorLogSd),
        };
        double driving = core * draw.ConductancePerS[option], passive = driving * (CoolingPriors.PassiveLow + (CoolingPriors.PassiveHigh - CoolingPriors.PassiveLow) * chance.NextUniform());
        double radiatedPerM2 = HeatFlows.RadiatedW(1, NominalAirC + NominalRiseK, NominalAirC) / NominalRiseK;
        CoolingOption cooling = new(
            0, 0, passive / 2 / Math.Pow(NominalRiseK, CoolingOption.NaturalExponent - 1), passive / 2 / radiatedPerM2, EndbellShare, ShellWPerK, 0);
        double standing = driving * FanOffShare * About(chance, FanOffLogSd);
        return new(
            body, cooling, driving - passive, Math.Max(standing - passive, 0), Math.Max(driving * draw.StoppedFanOn - passive, 0), CoolingPriors.PitFanWPerK * About(chance, CoolingPriors.PitFanLogSd),
            core * draw.HeatKPerS, draw.CopperShare, GunOffsetSdK * chance.NextNormal(), BreezeLogSd * chance.NextNormal());
    }

    /// <summary>Forced cooling by a way, W/K.</summary>
    public double ForcedWPerK(CoolingBy by, bool hasFan) => by switch
    {
        CoolingBy.Shade => StandingWPerK,
        CoolingBy.OwnFan => hasFan ? OwnFanWPerK : StandingWPerK,
        _ => StandingWPerK + PitFanWPerK,
    };

    /// <summary>Factor on the minutes by a way: a fan leaves the breeze only the share that it carries in the shade.</summary>
    public double Longer(CoolingBy by, bool hasFan)
    {
        double shade = ForcedWPerK(CoolingBy.Shade, hasFan) + PassiveWPerK;
        return Math.Exp(BreezeLogFactor * Math.Min(shade / (ForcedWPerK(by, hasFan) + PassiveWPerK), 1));
    }

    private double PassiveWPerK => Cooling.OverallWPerK(new Phase(NominalAirC, 0, 0, 0, 0, 0, 0, ShellOff: true), NominalRiseK);

    /// <summary>Drives from a state: hard driving at one even load.</summary>
    public void Drive(double heatW, double airC, double seconds, Span<double> t) => FastPath.Advance(
        Body, Cooling, new Phase(airC, CopperShare * heatW, (1 - CopperShare) * heatW, 0, 0, 0, DrivingWPerK, ShellOff: true), seconds, t);

    /// <summary>Stands and cools.</summary>
    public void Stand(double forcedWPerK, double airC, double seconds, Span<double> t, bool afterEvent) => FastPath.Advance(
        Body, Cooling, new Phase(airC, 0, 0, 0, 0, 0, forcedWPerK, ShellOff: true), seconds, t, afterEvent: afterEvent);

    private static double About(RandomStream chance, double logSd) => Math.Exp(logSd * chance.NextNormal());
}
