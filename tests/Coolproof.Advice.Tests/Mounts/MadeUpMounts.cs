using Coolproof.Notebook;
using Coolproof.Sampling;

namespace Coolproof.Advice.Tests.Mounts;

/// <summary>Mounts of the kinds that people fit, drawn over the sizes of 1:12 to 1:8 motors and of the fans that fit them; and the same with every measure off by up to a quarter.</summary>
static class MadeUpMounts
{
    const double Mm = 1e-3, Cm2 = 1e-4;

    /// <summary>A car with a motor and so many mounts.</summary>
    public static MountSheet Sheet(RandomStream chance, int mounts) => new(
        In(chance, 15, 38), In(chance, 0.2, 0.9), In(chance, 0, 1500), In(chance, 3, 9), new(In(chance, 24, 42) * Mm, In(chance, 38, 62) * Mm, In(chance, 0.1, 0.25), In(chance, 60, 90)),
        [.. Enumerable.Range(0, mounts).Select(i => Mount(chance, $"mount {i}"))]);

    static Mount Mount(RandomStream chance, string name)
    {
        bool ducted = Is(chance, 0.25), passive = ducted && Is(chance, 0.5), finned = Is(chance, 0.4), shell = Is(chance, 0.6) && !ducted;
        MountFan[] fans = passive ? [] : Fans(chance);
        Mount mount = new()
        {
            Name = name,
            Fans = fans,
            InRow = fans.Length == 2 && Is(chance, 0.25),
            GapM = In(chance, ducted ? 5 : 2, 25) * Mm,
            AngleDeg = Is(chance, 0.3) ? In(chance, 0, 40) : 0,
            AsideM = Is(chance, 0.3) ? In(chance, -12, 12) * Mm : 0,
            RimOpen = shell && Is(chance, 0.4) ? In(chance, 0.3, 1) : 1,
            ShellHoleM2 = shell && Is(chance, 0.3) ? In(chance, 1, 8) * Cm2 : 0,
            GrilleOpen = Is(chance, 0.3) ? In(chance, 0.35, 0.9) : 1,
            AirFromShell = !ducted && Is(chance, 0.5),
            VentsM2 = Is(chance, 0.5) ? In(chance, 8, 50) * Cm2 : null,
            Shroud = !passive && Is(chance, 0.25) ? new(In(chance, 1.5, 6) * Mm, In(chance, 0.5, 1), Is(chance, 0.5) ? In(chance, 0.2, 2) * Cm2 : 0) : null,
            Duct = ducted ? new(In(chance, 3, 12) * Cm2, In(chance, 0.4, 6) * Cm2, In(chance, 50, 250) * Mm, chance.NextIndex(3), passive || Is(chance, 0.5)) : null,
            FinsM2 = finned ? In(chance, 20, 100) * Cm2 : 0,
            ClampCovers = finned ? In(chance, 0.2, 0.6) : 0,
        };
        return shell ? mount with { ShellFromCanM = mount.FanEdgeM + In(chance, 2, 20) * Mm } : mount;
    }

    static MountFan[] Fans(RandomStream chance)
    {
        double size = In(chance, 20, 40) * Mm, hub = size * In(chance, 0.4, 0.6);
        MountFan bare = new(size, hub, In(chance, 6, 15) * Mm, 1, null, In(chance, 0.8, 1.3));
        double free = bare.SweptM2 * In(chance, 2, 8), head = 0.6 * free / bare.SweptM2 * free / bare.SweptM2;
        MountFan fan = bare with { FreeM3S = free, StallPa = Is(chance, 0.7) ? head * In(chance, 2, 8) : null };
        return Is(chance, 0.3) ? [fan, fan] : [fan];
    }

    /// <summary>The same car and mounts as they truly are: every measure up to a quarter off, each by itself.</summary>
    public static MountSheet Truly(MountSheet sheet, RandomStream chance) => sheet with
    {
        CarSpeedMS = Off(chance, sheet.CarSpeedMS),
        Mounts = [.. sheet.Mounts.Select(m =>
        {
            double? shellGap = m.ShellGapM;
            Mount off = m with
            {
                Fans = Fans(m, chance),
                GapM = Off(chance, m.GapM),
                AngleDeg = Off(chance, m.AngleDeg),
                AsideM = Off(chance, m.AsideM),
                RimOpen = Math.Min(1, Off(chance, m.RimOpen)),
                ShellHoleM2 = Off(chance, m.ShellHoleM2),
                GrilleOpen = m.GrilleOpen == 1 ? 1 : Math.Min(1, Off(chance, m.GrilleOpen)),
                VentsM2 = m.VentsM2 is { } v ? Off(chance, v) : null,
                Shroud = m.Shroud is { } s ? new(Off(chance, s.ClearanceM), Math.Min(1, Off(chance, s.Covers)), Off(chance, s.LeakM2)) : null,
                Duct = m.Duct is { } d ? d with { MouthM2 = Off(chance, d.MouthM2), OutletM2 = Off(chance, d.OutletM2), LengthM = Off(chance, d.LengthM) } : null,
                FinsM2 = Off(chance, m.FinsM2),
                ClampCovers = Off(chance, m.ClampCovers),
            };
            return off with { ShellFromCanM = off.FanEdgeM + (shellGap is { } gap ? Off(chance, gap) : null) };
        })],
    };

    static MountFan[] Fans(Mount mount, RandomStream chance)
    {
        double free = Off(chance, 1), stall = Off(chance, 1);
        return [.. mount.Fans.Select(f => f with
        {
            FreeM3S = f.FreeM3S * free,
            // What isn't printed is some two to eight velocity heads of the free flow.
            StallPa = f.StallPa * stall ?? 0.6 * Math.Pow(f.FreeM3S / f.SweptM2, 2) * 2 * Math.Pow(4, chance.NextUniform()),
        })];
    }

    /// <summary>Even between two ends.</summary>
    public static double In(RandomStream chance, double low, double high) => low + (high - low) * chance.NextUniform();

    static double Off(RandomStream chance, double value) => value * In(chance, 0.75, 1.25);

    static bool Is(RandomStream chance, double odds) => chance.NextUniform() < odds;
}
