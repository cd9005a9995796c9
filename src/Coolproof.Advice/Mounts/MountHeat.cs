using Coolproof.Notebook;
using Coolproof.Thermal;
using Coolproof.Thermal.FullModel;

namespace Coolproof.Advice.Mounts;

/// <summary>By what the heat transfer of a stream was reckoned.</summary>
public enum MountRule
{
    /// <summary>No stream of its own: the car's wind and the can's draught.</summary>
    NoStream,
    /// <summary>A round jet on a wall within its published range (Martin 1977).</summary>
    Jet,
    /// <summary>A cylinder wholly in a stream across it (Churchill and Bernstein 1977).</summary>
    CrossFlow,
    /// <summary>Outside any correlation's range: a cylinder in cross flow, times the share of the can in the stream.</summary>
    OutsideCorrelation,
}

/// <summary>Watts per kelvin between can and outside air, by the ways that they go.</summary>
/// <param name="Flow">The operating point.</param>
/// <param name="Rule">By what the stream's part was reckoned.</param>
/// <param name="Reynolds">Reynolds number of that.</param>
/// <param name="NusseltNumber">Nusselt number of that.</param>
/// <param name="StreamWPerK">What the stream takes, with the shell's air in series where it matters.</param>
/// <param name="ElsewhereWPerK">What the car's wind and the draught take where no stream is.</param>
/// <param name="RadiatedWPerK">By radiation.</param>
/// <param name="PlateWPerK">By motor plate, chassis and the endbell's windows.</param>
public sealed record MountHeat(
    MountFlow Flow, MountRule Rule, double Reynolds, double NusseltNumber, double StreamWPerK, double ElsewhereWPerK, double RadiatedWPerK, double PlateWPerK)
{
    /// <summary>All of it, W/K.</summary>
    public double TotalWPerK => StreamWPerK + ElsewhereWPerK + RadiatedWPerK + PlateWPerK;

    /// <summary>Heat of a mount.</summary>
    /// <param name="sheet">The car, the motor, the air.</param>
    /// <param name="mount">The mount.</param>
    /// <param name="c">What is drawn of the unknown.</param>
    /// <param name="without">A loss that is taken away; null: none.</param>
    internal static MountHeat Of(MountSheet sheet, Mount mount, in MountChance c, MountLoss? without = null)
    {
        double pascal = Air.PressureAtPa(sheet.AltitudeM), rise = sheet.Can.CanC - sheet.AirC;
        Air air = new(sheet.AirC, pascal, sheet.Humidity), film = new((sheet.AirC + sheet.Can.CanC) / 2, pascal, sheet.Humidity * FilmShare(sheet));
        MountFlow flow = MountFlow.Of(sheet, mount, air, c, without);
        double d = sheet.Can.DiameterM, side = Math.PI * d * sheet.Can.LengthM, end = Math.PI / 4 * d * d;
        double speed = sheet.CarSpeedMS * Math.Exp(MountPriors.SpeedLogSd * c.Speed);
        double draught = Nusselt.LyingCylinder(film.Rayleigh(rise, d), film.Prandtl) * Math.Exp(MountPriors.DraughtLogSd * c.Draught);
        double wind = CrossFlow(film, speed * MountPriors.WindShare * Math.Exp(MountPriors.WindLogSd * c.Wind), d) * Error(MountPriors.WithinLogSd, c.Correlation, 0);
        double still = Nusselt.Mixed(wind, draught) * film.Conductivity / d;
        double fins = mount.FinsM2 * MountPriors.FinShare * Math.Exp(MountPriors.FinLogSd * c.Fins), exchanging = side * (1 - mount.ClampCovers) + fins;

        (MountRule rule, double reynolds, double nusselt, double h, double covered) = Forced(sheet, mount, flow, film, draught, c);
        double stream = Carried(h * covered * exchanging, flow.CarriedKgS * air.SpecificHeat), elsewhere = still * ((1 - covered) * exchanging + end);
        (stream, elsewhere) = BehindShell(stream, elsewhere, mount, flow, air, speed, c);
        double emissivity = Math.Clamp(MountPriors.Emissivity + MountPriors.EmissivitySd * c.Emissivity, MountPriors.EmissivityLow, MountPriors.EmissivityHigh);
        double radiated = HeatFlows.RadiatedW(emissivity * (side + end), sheet.Can.CanC, sheet.AirC) / rise;
        double plate = MountPriors.PlateWPerK * sheet.Can.MassKg / ReferenceMassKg * Math.Exp(MountPriors.PlateLogSd * c.Plate);
        return new(flow, rule, reynolds, nusselt, stream, elsewhere, radiated, plate);
    }

    private const double ReferenceMassKg = 0.165;

    // The film holds the vapour of the air outside.
    private static double FilmShare(MountSheet sheet) => sheet.AirC <= 0 ? 0 : Water.SaturationPressurePa(sheet.AirC) / Water.SaturationPressurePa((sheet.AirC + sheet.Can.CanC) / 2);

    private static double CrossFlow(Air film, double speedMS, double diameterM) => speedMS <= 0 ? 0 : Nusselt.CylinderInCrossFlow(film.Reynolds(speedMS, diameterM), film.Prandtl);

    // The error of a correlation, part of it common to the mounts of a sheet.
    private static double Error(double logSd, double common, double own) =>
        Math.Exp(logSd * (Math.Sqrt(MountPriors.CommonShare) * common + Math.Sqrt(1 - MountPriors.CommonShare) * own));

    // The stream's rule, its numbers, W/(m² K) with the draught mixed in, and the share of the surface that it acts on.
    private static (MountRule Rule, double Reynolds, double Nusselt, double H, double Covered) Forced(
        MountSheet sheet, Mount mount, MountFlow flow, Air film, double draught, in MountChance c)
    {
        double d = sheet.Can.DiameterM;
        if (flow.FlowM3S <= 0 || flow.Covered <= 0) return (MountRule.NoStream, 0, 0, 0, 0);
        double radius = Math.Sqrt(sheet.Can.LengthM * d / Math.PI);
        if (mount.Shroud is null && mount.AngleDeg <= StraightDeg && Math.Abs(mount.AsideM) <= sheet.Can.LengthM * OffMiddle
            && Nusselt.ImpingingJetHolds(film.Reynolds(flow.LeavesMS, flow.NozzleM), mount.GapM / flow.NozzleM, radius / flow.NozzleM))
        {
            // The mean out to the radius of a disc as large as the half of the can that faces the jet; the other half lies in its lee.
            double re = film.Reynolds(flow.LeavesMS, flow.NozzleM), nu = Nusselt.ImpingingJet(re, film.Prandtl, mount.GapM / flow.NozzleM, radius / flow.NozzleM);
            double h = nu * film.Conductivity / flow.NozzleM * Error(MountPriors.WithinLogSd, c.Correlation, c.Own), still = draught * film.Conductivity / d;
            return (MountRule.Jet, re, nu, Nusselt.Mixed(h, still), 0.5);
        }
        bool within = mount.Shroud is null && flow.Covered >= WhollyCovered;
        double reynolds = film.Reynolds(flow.AtCanMS, d), crossed = Nusselt.CylinderInCrossFlow(reynolds, film.Prandtl);
        double forced = crossed * Error(within ? MountPriors.WithinLogSd : MountPriors.OutsideLogSd, c.Correlation, c.Own);
        return (within ? MountRule.CrossFlow : MountRule.OutsideCorrelation, reynolds, crossed, Nusselt.Mixed(forced, draught) * film.Conductivity / d, flow.Covered);
    }

    private const double StraightDeg = 10, OffMiddle = 0.15, WhollyCovered = 0.9;

    // Air that warms as it passes can't carry off more than it brings: ṁc(1 − exp(−hA/ṁc)).
    private static double Carried(double wPerK, double capacityWPerK) => capacityWPerK <= 0 ? 0 : capacityWPerK * (1 - Math.Exp(-wPerK / capacityWPerK));

    // What is given to the shell's air must leave with it: in series with its exchange, to which a fan that blows in from outside adds.
    private static (double Stream, double Elsewhere) BehindShell(double stream, double elsewhere, Mount mount, MountFlow flow, Air air, double speed, in MountChance c)
    {
        double still = MountPriors.ShellStillWPerK, perSpeed = mount.VentsM2 is { } vents
            ? air.Density * air.SpecificHeat * MountPriors.VentSpeedShare * vents
            : MountPriors.ShellMotionWPerK;
        double exchange = (still + perSpeed * speed) * Math.Exp(MountPriors.ShellLogSd * c.Shell) + (mount.AirFromShell ? 0 : air.Density * air.SpecificHeat * flow.FlowM3S);
        double inShell = elsewhere + (mount.AirFromShell ? stream : 0), share = exchange / (exchange + inShell);
        return (mount.AirFromShell ? stream * share : stream, elsewhere * share);
    }
}
