using Coolproof.Notebook;
using Coolproof.Thermal;

namespace Coolproof.Advice.Mounts;

/// <summary>A loss on the air's way.</summary>
/// <param name="Where">What takes it.</param>
/// <param name="Resistance">r, 1/m⁴: the loss is ρ r Q².</param>
public readonly record struct WayLoss(MountLoss Where, double Resistance);

/// <summary>The air's way through a mount at its operating point.</summary>
/// <param name="FlowM3S">Flow through fans and duct, m³/s.</param>
/// <param name="FreeM3S">Flow with nothing in the way, m³/s; 0 without a fan.</param>
/// <param name="PressurePa">Pressure that the way takes, Pa.</param>
/// <param name="Losses">Losses, in the order of the way.</param>
/// <param name="ReachesCan">Share of the flow that passes the can, the rest leaks.</param>
/// <param name="LeavesMS">Speed where the air leaves fan, duct or, in a shroud, at which it passes the can, m/s.</param>
/// <param name="AtCanMS">Mean speed at the can, m/s.</param>
/// <param name="Covered">Share of the can's side within the stream.</param>
/// <param name="CarriedKgS">Air that the stream brings to the can, with what it draws in on its way, kg/s.</param>
/// <param name="NozzleM">Diameter of a round opening of the area that the stream leaves by, m; 0 in a shroud.</param>
public sealed record MountFlow(
    double FlowM3S, double FreeM3S, double PressurePa, IReadOnlyList<WayLoss> Losses, double ReachesCan, double LeavesMS, double AtCanMS, double Covered, double CarriedKgS, double NozzleM)
{
    /// <summary>Turn into a shroud's passage and leaving it.</summary>
    private const double IntoShroud = 1.5;

    /// <summary>The operating point.</summary>
    /// <param name="sheet">The car, the motor, the air.</param>
    /// <param name="mount">The mount.</param>
    /// <param name="air">Air that comes in.</param>
    /// <param name="c">What is drawn of the unknown.</param>
    /// <param name="without">A loss that is taken away, to see what it costs; null: none.</param>
    internal static MountFlow Of(MountSheet sheet, Mount mount, Air air, in MountChance c, MountLoss? without = null)
    {
        if (mount.Fans.Count == 0 && mount.Duct is null) return new(0, 0, 0, [], 1, 0, 0, 0, 0, 0);
        Fan[] fans = Fans(mount, air, c);
        WayLoss[] losses = [.. Ways(sheet, mount, c).Where(w => w.Resistance > 0 && w.Where != without)];
        double r = losses.Sum(w => w.Resistance), speed = sheet.CarSpeedMS * Math.Exp(MountPriors.SpeedLogSd * c.Speed);
        double ram = mount.Duct is { FacesForward: true } ? Math.Min(MountPriors.RamShare * Math.Exp(MountPriors.RamLogSd * c.Ram), 1) * air.Density / 2 * speed * speed : 0;
        double flow = Fan.FlowM3S(fans, ram, r, air.Density);
        double reaches = mount.Shroud is { LeakM2: > 0 } shroud && without != MountLoss.Leak ? Openings.ShareOfFirst(Passage(sheet, shroud, c), Leak(shroud, c)) : 1;
        return Streamed(sheet, mount, air, c, new(flow, fans.Length == 0 ? 0 : Fan.FlowM3S(fans, 0, 0, air.Density), air.Density * r * flow * flow, losses, reaches, 0, 0, 0, 0, 0));
    }

    private static MountFlow Streamed(MountSheet sheet, Mount mount, Air air, in MountChance c, MountFlow flow)
    {
        double passing = flow.FlowM3S * flow.ReachesCan;
        if (mount.Shroud is { } shroud)
        {
            double speed = passing / PassageM2(sheet, shroud, c);
            return flow with { LeavesMS = speed, AtCanMS = speed, Covered = shroud.Covers, CarriedKgS = air.Density * passing };
        }
        double gap = mount.GapM * Math.Exp(MountPriors.RulerLogSd * c.Gap), angle = mount.AngleDeg * Math.PI / 180, radius = sheet.Can.DiameterM / 2;
        FreeJet jet = Leaving(mount, c), at = jet.After(gap / Math.Cos(angle), FreeJet.HalfAngleDeg * Math.Exp(MountPriors.SpreadLogSd * c.Spread));
        double along = FreeJet.Covered(at.WidthM, mount.AsideM, sheet.Can.LengthM), across = FreeJet.Covered(at.DepthM, (gap + radius) * Math.Tan(angle), sheet.Can.DiameterM);
        double leaves = flow.FlowM3S / jet.AreaM2, atCan = leaves * jet.SpeedShare(at), hits = along * sheet.Can.LengthM * across * sheet.Can.DiameterM / (at.WidthM * at.DepthM);
        return flow with
        {
            LeavesMS = leaves,
            AtCanMS = atCan,
            Covered = along * across,
            CarriedKgS = air.Density * at.AreaM2 * atCan * Math.Min(hits, 1),
            NozzleM = Math.Sqrt(4 * jet.AreaM2 / Math.PI),
        };
    }

    /// <summary>The stream where it leaves a duct's outlet or the blades.</summary>
    internal static FreeJet Leaving(Mount mount, in MountChance c = default)
    {
        if (mount.Duct is { } duct)
        {
            double area = duct.OutletM2 * Math.Exp(MountPriors.RulerLogSd * c.Outlet), wide = Math.Sqrt(4 * area / Math.PI);
            return new(wide, wide, area);
        }
        double blades = mount.Fans.Max(f => f.BladesM);
        int beside = mount.InRow ? 1 : mount.Fans.Count;
        return new(beside * blades, blades, mount.InRow ? mount.Fans[^1].SweptM2 : mount.Fans.Sum(f => f.SweptM2));
    }

    private static Fan[] Fans(Mount mount, Air air, in MountChance c)
    {
        if (mount.Fans.Count == 0) return [];
        (double flow, double stall) = (c.Flow, c.Stall);
        Fan[] each = [.. mount.Fans.Select(f => new Fan(
            f.FreeM3S * Math.Exp(MountPriors.PrintedLogSd * flow),
            f.StallPa is { } printed ? printed * Math.Exp(MountPriors.PrintedLogSd * stall) : Fan.TypicalStallPa(f.FreeM3S, f.SweptM2) * Math.Exp(MountPriors.UnprintedStallLogSd * stall)).AtSpeed(f.SpeedRatio).In(air.Density))];
        return mount.InRow ? each : [Fan.SideBySide(each)];
    }

    // In the order of the way; a resistance without end closes it.
    private static IEnumerable<WayLoss> Ways(MountSheet sheet, Mount mount, MountChance c)
    {
        double inlet = Math.Exp(MountPriors.RulerLogSd * c.Inlet), outlet = Math.Exp(MountPriors.RulerLogSd * c.Outlet), factor = Math.Exp(MountPriors.LossLogSd * c.Losses);
        if (mount.ShellGapM is { } shellGap && mount.Fans.Count > 0)
        {
            double rim = InletRim(mount).Sum(f => Openings.CurtainM2(f.BladesM, shellGap)) * mount.RimOpen * inlet;
            double hole = mount.ShellHoleM2 > 0 ? Openings.Of(Openings.SharpHole, mount.ShellHoleM2 * inlet) : double.PositiveInfinity;
            yield return new(MountLoss.ShellOverInlet, factor * Openings.SideBySide(Openings.Of(Openings.Curtain, rim), hole));
        }
        if (mount.GrilleOpen < 1)
            yield return new(MountLoss.Grille, factor * Openings.Of(Openings.Grille(mount.GrilleOpen), (mount.Fans.Count > 0 ? InletRim(mount).Sum(f => Math.PI / 4 * f.BladesM * f.BladesM) : mount.Duct!.MouthM2) * inlet));
        if (mount.Duct is { } duct)
        {
            double area = Math.Sqrt(duct.MouthM2 * duct.OutletM2), wide = Math.Sqrt(4 * area / Math.PI);
            yield return new(MountLoss.Duct, factor * (Openings.Of(Openings.Mouth, duct.MouthM2 * inlet) + Openings.Of(Openings.Bend * duct.Bends + Openings.Friction * duct.LengthM / wide, area * inlet)));
            if (mount.Shroud is null) yield return new(MountLoss.DuctOutlet, Openings.Of(Openings.Leaving, duct.OutletM2 * outlet));
        }
        if (mount.Shroud is { } shroud)
            yield return new(MountLoss.Shroud, Openings.SideBySide(Passage(sheet, shroud, c), Leak(shroud, c)));
        else if (mount.Duct is null)
            yield return new(MountLoss.CanBeforeOutlet, factor * BetweenFanAndCan(sheet, mount, outlet));
        if (mount.VentsM2 is { } vents && !mount.AirFromShell)
            yield return new(MountLoss.ShellVents, factor * Openings.Of(Openings.SharpHole, vents * outlet));
    }

    // The fans that the air enters by: of those in a row the first.
    private static IEnumerable<MountFan> InletRim(Mount mount) => mount.InRow ? mount.Fans.Take(1) : mount.Fans;

    // Out between rim and can, and past the can where the fan is wider than it.
    private static double BetweenFanAndCan(MountSheet sheet, Mount mount, double outlet)
    {
        FreeJet jet = Leaving(mount);
        double past = Math.Max(jet.DepthM - sheet.Can.DiameterM, 0) * jet.WidthM + Math.Max(jet.WidthM - sheet.Can.LengthM, 0) * jet.DepthM;
        return Openings.Of(Openings.Curtain, ((mount.InRow ? 1 : mount.Fans.Count) * Openings.CurtainM2(jet.DepthM, mount.GapM) + past) * outlet);
    }

    // Two ways round the can, each as wide as the clearance and as long as the shroud.
    private static double PassageM2(MountSheet sheet, MountShroud shroud, in MountChance c) =>
        2 * shroud.ClearanceM * shroud.Covers * sheet.Can.LengthM * Math.Exp(MountPriors.RulerLogSd * c.Outlet);

    private static double Passage(MountSheet sheet, MountShroud shroud, in MountChance c) => Math.Exp(MountPriors.LossLogSd * c.Losses) * Openings.Of(
        IntoShroud + Openings.Leaving + Openings.Friction * Math.PI / 2 * sheet.Can.DiameterM / (2 * shroud.ClearanceM), PassageM2(sheet, shroud, c));

    private static double Leak(MountShroud shroud, in MountChance c) => shroud.LeakM2 > 0 ? Openings.Of(Openings.SharpHole, shroud.LeakM2 * Math.Exp(MountPriors.RulerLogSd * c.Outlet)) : double.PositiveInfinity;
}

/// <summary>What stands in the air's way.</summary>
public enum MountLoss
{
    /// <summary>The shell over the inlet.</summary>
    ShellOverInlet,
    /// <summary>A grille.</summary>
    Grille,
    /// <summary>Mouth, bends and walls of a duct.</summary>
    Duct,
    /// <summary>A duct's outlet.</summary>
    DuctOutlet,
    /// <summary>The can before the fan.</summary>
    CanBeforeOutlet,
    /// <summary>The passage between shroud and can.</summary>
    Shroud,
    /// <summary>Gaps of the shroud.</summary>
    Leak,
    /// <summary>Openings by which the air leaves the shell.</summary>
    ShellVents,
}
