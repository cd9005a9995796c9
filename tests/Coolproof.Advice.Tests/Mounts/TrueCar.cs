using Coolproof.Notebook;
using Coolproof.Sampling;
using Coolproof.Thermal;

namespace Coolproof.Advice.Tests.Mounts;

/// <summary>
/// A car in which heat is shed by other laws than the program's: correlations of other people, fans whose curve sags, other loss factors, jets with a bell-shaped profile. Nothing of
/// Coolproof.Advice is called.
/// </summary>
sealed class TrueCar(RandomStream chance)
{
    readonly Func<double, double, double> crossFlow = OtherCorrelations.Any(chance);
    // What no ruler tells and no law: how much goes by the plate and how much wind gets under the shell are as the doubt that is stated of them says (docs/mount.md).
    readonly double plate = 0.35 * Math.Exp(0.45 * chance.NextNormal()), windShare = 0.15 * Math.Exp(0.5 * chance.NextNormal()), emissivity = MadeUpMounts.In(chance, 0.15, 0.95);
    readonly double shellStill = MadeUpMounts.In(chance, 2, 4), shellMotion = MadeUpMounts.In(chance, 0.8, 1.6), ventShare = MadeUpMounts.In(chance, 0.25, 0.45);
    readonly double ram = MadeUpMounts.In(chance, 0.35, 0.85), spread = MadeUpMounts.In(chance, 0.07, 0.12), sag = MadeUpMounts.In(chance, 1.2, 3);
    readonly double turn = MadeUpMounts.In(chance, 0.6, 1.6), hole = MadeUpMounts.In(chance, 2, 3.2), passage = MadeUpMounts.In(chance, 1.8, 3.5);

    /// <summary>W/K of a mount as it truly is; <paramref name="own"/> draws what is each mount's own. The stream's part apart.</summary>
    public (double Total, double Stream) WPerK(MountSheet sheet, Mount mount, RandomStream own)
    {
        double pascal = Air.PressureAtPa(sheet.AltitudeM), d = sheet.Can.DiameterM, l = sheet.Can.LengthM, rise = sheet.Can.CanC - sheet.AirC;
        Air air = new(sheet.AirC, pascal), film = new((sheet.AirC + sheet.Can.CanC) / 2, pascal);
        double finShare = MadeUpMounts.In(own, 0.45, 0.95), lee = MadeUpMounts.In(own, 0, 0.35), fit = MadeUpMounts.In(own, 0.8, 1.25);
        double side = Math.PI * d * l, end = Math.PI / 4 * d * d, exchanging = side * (1 - mount.ClampCovers) + finShare * mount.FinsM2;
        double draught = OtherCorrelations.Morgan(film.Rayleigh(rise, d)) * film.Conductivity / d;
        double still = Math.Pow(Math.Pow(H(film, sheet.CarSpeedMS * windShare, d), 4) + Math.Pow(draught, 4), 0.25);
        (double flow, double reaches) = Flow(sheet, mount, air);
        (double h, double covered, double carried) = Stream(sheet, mount, air, film, flow, reaches, lee);
        h = Math.Pow(Math.Pow(fit * h, 4) + Math.Pow(draught, 4), 0.25);
        double capacity = carried * 1006, stream = capacity <= 0 ? 0 : capacity * (1 - Math.Exp(-h * covered * exchanging / capacity));
        double elsewhere = still * ((1 - covered) * exchanging + end);
        double exchange = shellStill + sheet.CarSpeedMS * (mount.VentsM2 is { } vents ? air.Density * 1006 * ventShare * vents : shellMotion) + (mount.AirFromShell ? 0 : air.Density * 1006 * flow);
        double inShell = elsewhere + (mount.AirFromShell ? stream : 0), share = exchange / (exchange + inShell);
        (stream, elsewhere) = (mount.AirFromShell ? stream * share : stream, elsewhere * share);
        double hot = sheet.Can.CanC + 273.15, cold = sheet.AirC + 273.15, radiated = emissivity * (side + end) * 5.670374e-8 * (hot * hot + cold * cold) * (hot + cold);
        return (stream + elsewhere + radiated + plate * sheet.Can.MassKg / 0.165, stream);
    }

    double H(Air film, double speed, double d) => speed <= 0 ? 0 : crossFlow(film.Reynolds(speed, d), film.Prandtl) * film.Conductivity / d;

    // By halving: the fan's curve p = stall (1 − (Q/free)^sag) against the way's losses.
    (double Flow, double Reaches) Flow(MountSheet sheet, Mount mount, Air air)
    {
        if (mount.Fans.Count == 0 && mount.Duct is null) return (0, 1);
        double push = mount.Duct is { FacesForward: true } ? ram * air.Density / 2 * sheet.CarSpeedMS * sheet.CarSpeedMS : 0, reaches = 1;
        double r = Way(sheet, mount, ref reaches), low = 0, high = 0.05;
        int beside = mount.InRow ? 1 : Math.Max(mount.Fans.Count, 1), inRow = mount.InRow ? mount.Fans.Count : 1;
        for (int i = 0; i < 80; i++)
        {
            double q = (low + high) / 2, left = push - air.Density * r * q * q;
            if (mount.Fans.Count > 0)
            {
                MountFan fan = mount.Fans[0];
                double ratio = q / beside / (fan.FreeM3S * fan.SpeedRatio);
                left += inRow * fan.StallPa!.Value * fan.SpeedRatio * fan.SpeedRatio * air.Density / 1.2 * (1 - Math.Pow(ratio, sag));
            }
            (low, high) = left > 0 ? (q, high) : (low, q);
        }
        return (low, reaches);
    }

    double Way(MountSheet sheet, Mount mount, ref double reaches)
    {
        double r = 0;
        double R(double k, double area) => k / (2 * area * area);
        int beside = mount.InRow ? 1 : mount.Fans.Count;
        if (mount.Fans.Count > 0 && mount.ShellGapM is { } gap)
        {
            double rim = beside * Math.PI * mount.Fans[0].BladesM * gap * mount.RimOpen, a = 1 / Math.Sqrt(R(turn, rim)), b = mount.ShellHoleM2 > 0 ? 1 / Math.Sqrt(R(hole, mount.ShellHoleM2)) : 0;
            r += 1 / ((a + b) * (a + b));
        }
        // Free share of a wire screen (Wieghardt's form, from memory): K = 1.3 (1 − f)/f + ((1 − f)/f)².
        if (mount.GrilleOpen < 1)
        {
            double solid = (1 - mount.GrilleOpen) / mount.GrilleOpen;
            r += R(1.3 * solid + solid * solid, mount.Fans.Count > 0 ? beside * Math.PI / 4 * mount.Fans[0].BladesM * mount.Fans[0].BladesM : mount.Duct!.MouthM2);
        }
        if (mount.Duct is { } duct)
        {
            double narrow = Math.Min(duct.MouthM2, duct.OutletM2);
            r += R(0.3 * turn, duct.MouthM2) + R(0.6 * turn * duct.Bends + 0.035 * duct.LengthM / Math.Sqrt(4 * narrow / Math.PI), (duct.MouthM2 + duct.OutletM2) / 2);
            if (mount.Shroud is null) r += R(1, duct.OutletM2);
        }
        if (mount.Shroud is { } shroud)
        {
            double can = R(passage, 2 * shroud.ClearanceM * shroud.Covers * sheet.Can.LengthM), a = 1 / Math.Sqrt(can), b = shroud.LeakM2 > 0 ? 1 / Math.Sqrt(R(hole, shroud.LeakM2)) : 0;
            reaches = a / (a + b);
            r += 1 / ((a + b) * (a + b));
        }
        else if (mount.Duct is null)
        {
            r += R(0.7 * turn, beside * Math.PI * mount.Fans[0].BladesM * mount.GapM + Math.Max(mount.Fans[0].BladesM - sheet.Can.DiameterM, 0) * sheet.Can.LengthM);
        }
        return mount.VentsM2 is { } vents && !mount.AirFromShell ? r + R(hole, vents) : r;
    }

    (double H, double Covered, double CarriedKgS) Stream(MountSheet sheet, Mount mount, Air air, Air film, double flow, double reaches, double lee)
    {
        double d = sheet.Can.DiameterM, l = sheet.Can.LengthM;
        if (flow <= 0) return (0, 0, 0);
        if (mount.Shroud is { } shroud) return (H(film, flow * reaches / (2 * shroud.ClearanceM * shroud.Covers * l), d), shroud.Covers, air.Density * flow * reaches);
        int beside = mount.InRow || mount.Duct is { } ? 1 : mount.Fans.Count;
        double area = mount.Duct?.OutletM2 ?? beside * mount.Fans[0].SweptM2, deep = mount.Duct is { } ? Math.Sqrt(4 * area / Math.PI) : mount.Fans[0].BladesM, wide = beside * deep;
        double leaves = flow / area, nozzle = Math.Sqrt(4 * area / Math.PI), x = mount.GapM, radius = Math.Sqrt(l * d / Math.PI), re = film.Reynolds(leaves, nozzle);
        double axis = (x + d / 2) * Math.Tan(mount.AngleDeg * Math.PI / 180);
        if (beside == 1 && re > 2000 && x / nozzle > 2 && radius / nozzle > 2.5 && mount.AngleDeg <= 10 && Math.Abs(mount.AsideM) < 0.15 * l)
            return (OtherCorrelations.GoldsteinJet(re, x / nozzle, radius / nozzle) * film.Conductivity / nozzle, 0.5 + 0.5 * lee, air.Density * flow * (1 + x / nozzle / 3));
        // A flat core that a mixing layer eats from its edges, bell-shaped beyond: the mean of the local speed's share over the can's shadow, by a grid.
        double sigma = spread * x + 1e-4, sum = 0, within = 0, carried = 0, momentum = 0;
        const int N = 40;
        for (int i = 0; i < N; i++)
            for (int j = 0; j < N; j++)
            {
                double along = ((i + 0.5) / N - 0.5) * l - mount.AsideM, across = ((j + 0.5) / N - 0.5) * d - axis;
                double u = Edge(along, wide / 2, sigma) * Edge(across, deep / 2, sigma);
                carried += u / (N * N);
                momentum += u * u / (N * N);
                if (u > 0.25) { sum += u; within++; }
            }
        if (within == 0) return (0, 0, 0);
        // Hub and frame fill in behind the blades.
        double filled = Math.Sqrt(area / (wide * deep)) * leaves * Math.Min(1, Math.Sqrt(momentum) / Math.Max(carried, 1e-9));
        return (H(film, filled * sum / within, d), within / (N * N), air.Density * filled * carried * l * d);
    }

    static double Edge(double at, double half, double sigma) => 0.5 * (Erf((half - at) / sigma) + Erf((half + at) / sigma));

    static double Erf(double x) => MathNet.Numerics.SpecialFunctions.Erf(x);
}
