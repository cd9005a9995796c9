namespace Coolproof.Thermal;

/// <summary>
/// What air must pass on its way, as resistances r in 1/m⁴: the loss is ρ r Q², r = K/(2A²). One after another they add; side by side 1/√r adds. Loss factors K are
/// handbook values for sharp edges (Idelchik, Handbook of Hydraulic Resistance, from memory) and scatter by a quarter.
/// </summary>
public static class Openings
{
    /// <summary>A hole with sharp edges, in and out: 1/0.61².</summary>
    public const double SharpHole = 2.7;

    /// <summary>A gap all round that air enters from the side, with a turn: the velocity head of the gap.</summary>
    public const double Curtain = 1;

    /// <summary>Leaving into the open: the velocity head.</summary>
    public const double Leaving = 1;

    /// <summary>A well-made bend of a quarter turn in a small duct.</summary>
    public const double Bend = 0.5;

    /// <summary>A rounded or flared mouth.</summary>
    public const double Mouth = 0.2;

    /// <summary>Darcy's friction factor of short, narrow passages at Reynolds numbers of 2000 to 8000.</summary>
    public const double Friction = 0.05;

    /// <summary>A loss factor on an area.</summary>
    /// <param name="factor">Loss factor K on the area's velocity pressure.</param>
    /// <param name="areaM2">Area, m²; 0: closed, without end.</param>
    public static double Of(double factor, double areaM2) => factor / (2 * areaM2 * areaM2);

    /// <summary>Area of the gap between the rim of an inlet or outlet and a wall before it, m².</summary>
    /// <param name="diameterM">Diameter of the rim, m.</param>
    /// <param name="gapM">Rim to wall, m.</param>
    public static double CurtainM2(double diameterM, double gapM) => Math.PI * diameterM * gapM;

    /// <summary>Loss factor of a thin grille on the whole area before it (Idelchik, perforated plate with sharp edges, from memory).</summary>
    /// <param name="openShare">Free share of the area, 0 to 1.</param>
    public static double Grille(double openShare)
    {
        double root = 0.707 * Math.Sqrt(1 - openShare) + 1 - openShare;
        return root * root / (openShare * openShare);
    }

    /// <summary>Several side by side.</summary>
    /// <param name="resistances">Resistances; one without end takes no part.</param>
    public static double SideBySide(params ReadOnlySpan<double> resistances)
    {
        double sum = 0;
        foreach (double r in resistances)
            sum += 1 / Math.Sqrt(r);
        return 1 / (sum * sum);
    }

    /// <summary>Share of the flow that the first of two ways side by side takes.</summary>
    /// <param name="first">Its resistance.</param>
    /// <param name="second">The other's.</param>
    public static double ShareOfFirst(double first, double second) => double.IsPositiveInfinity(second) ? 1 : 1 / (1 + Math.Sqrt(first / second));
}
