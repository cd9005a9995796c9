namespace Coolproof.Thermal;

/// <summary>
/// Nusselt numbers: how much better moving air takes heat than still air would. h = Nu k / length. Correlations scatter by 10 to 25 % about
/// measurements and about one another.
/// </summary>
public static class Nusselt
{
    /// <summary>Cylinder in cross flow (Churchill and Bernstein 1977, J. Heat Transfer 99, 300), on the diameter, for Re Pr above 0.2.</summary>
    /// <param name="reynolds">Reynolds number on the diameter.</param>
    /// <param name="prandtl">Prandtl number.</param>
    public static double CylinderInCrossFlow(double reynolds, double prandtl) =>
        0.3 + 0.62 * Math.Sqrt(reynolds) * Math.Cbrt(prandtl) / Math.Pow(1 + Math.Pow(0.4 / prandtl, 2.0 / 3), 0.25)
        * Math.Pow(1 + Math.Pow(reynolds / 282000, 0.625), 0.8);

    /// <summary>
    /// Cylinder in cross flow (Hilpert 1933, C Re^m Pr^(1/3); constants from memory), on the diameter, Re from 4 up to 400 000; NaN outside.
    /// </summary>
    /// <param name="reynolds">Reynolds number on the diameter.</param>
    /// <param name="prandtl">Prandtl number.</param>
    public static double CylinderByHilpert(double reynolds, double prandtl)
    {
        (double c, double m) = reynolds switch
        {
            >= 4 and < 40 => (0.911, 0.385),
            >= 40 and < 4000 => (0.683, 0.466),
            >= 4000 and < 40_000 => (0.193, 0.618),
            >= 40_000 and < 400_000 => (0.027, 0.805),
            _ => (double.NaN, double.NaN),
        };
        return c * Math.Pow(reynolds, m) * Math.Cbrt(prandtl);
    }

    /// <summary>Lying cylinder in its own draught (Churchill and Chu 1975, Int. J. Heat Mass Transfer 18, 1049), on the diameter, Ra up to 1e12.</summary>
    /// <param name="rayleigh">Rayleigh number on the diameter.</param>
    /// <param name="prandtl">Prandtl number.</param>
    public static double LyingCylinder(double rayleigh, double prandtl) => Draught(0.60, 0.559, rayleigh, prandtl);

    /// <summary>Upright plate in its own draught (Churchill and Chu 1975, Int. J. Heat Mass Transfer 18, 1323), on the height, any Ra.</summary>
    /// <param name="rayleigh">Rayleigh number on the height.</param>
    /// <param name="prandtl">Prandtl number.</param>
    public static double UprightPlate(double rayleigh, double prandtl) => Draught(0.825, 0.492, rayleigh, prandtl);

    /// <summary>Round jet on a wall, mean out to a radius (Martin 1977, Adv. Heat Transfer 13, 1), on the nozzle's diameter.</summary>
    /// <param name="reynolds">Reynolds number on the nozzle's diameter.</param>
    /// <param name="prandtl">Prandtl number.</param>
    /// <param name="distanceByDiameter">Nozzle to wall over the nozzle's diameter.</param>
    /// <param name="radiusByDiameter">Radius of the mean over the nozzle's diameter.</param>
    public static double ImpingingJet(double reynolds, double prandtl, double distanceByDiameter, double radiusByDiameter)
    {
        double near = 1 / radiusByDiameter;
        double geometry = near * (1 - 1.1 * near) / (1 + 0.1 * (distanceByDiameter - 6) * near);
        double flow = 2 * Math.Sqrt(reynolds) * Math.Sqrt(1 + 0.005 * Math.Pow(reynolds, 0.55));
        return geometry * flow * Math.Pow(prandtl, 0.42);
    }

    /// <summary>Whether <see cref="ImpingingJet"/> holds: Re 2000 to 400 000, H/D 2 to 12, r/D 2.5 to 7.5 (range from memory).</summary>
    /// <param name="reynolds">Reynolds number on the nozzle's diameter.</param>
    /// <param name="distanceByDiameter">Nozzle to wall over the nozzle's diameter.</param>
    /// <param name="radiusByDiameter">Radius of the mean over the nozzle's diameter.</param>
    public static bool ImpingingJetHolds(double reynolds, double distanceByDiameter, double radiusByDiameter) =>
        reynolds is >= 2000 and <= 400_000 && distanceByDiameter is >= 2 and <= 12 && radiusByDiameter is >= 2.5 and <= 7.5;

    /// <summary>Stream and own draught together, by the usual cube rule.</summary>
    /// <param name="forced">Nusselt number of the stream.</param>
    /// <param name="natural">Nusselt number of the draught, on the same length.</param>
    public static double Mixed(double forced, double natural) => Math.Cbrt(forced * forced * forced + natural * natural * natural);

    static double Draught(double offset, double constant, double rayleigh, double prandtl)
    {
        double root = offset + 0.387 * Math.Pow(rayleigh, 1.0 / 6) / Math.Pow(1 + Math.Pow(constant / prandtl, 9.0 / 16), 8.0 / 27);
        return root * root;
    }
}
