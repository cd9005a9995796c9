namespace Coolproof.Thermal;

/// <summary>The round spot that a gun averages over, taken as evenly sensitive and centred on its target.</summary>
public static class MeasuringSpot
{
    /// <summary>Diameter of the spot at a distance, m, for a gun whose spot grows in proportion (distance-to-spot ratio).</summary>
    /// <param name="distanceM">Distance, m.</param>
    /// <param name="distanceToSpot">Ratio printed on the gun, such as 12 for 12:1.</param>
    /// <param name="smallestM">Diameter below which the spot doesn't shrink (the lens), m.</param>
    public static double DiameterM(double distanceM, double distanceToSpot, double smallestM = 0)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(distanceToSpot);
        return Math.Max(smallestM, distanceM / distanceToSpot);
    }

    /// <summary>Share of the spot that lies off a round target, 0 to 1.</summary>
    /// <param name="spotM">Diameter of the spot, m.</param>
    /// <param name="targetM">Diameter of the target, m.</param>
    public static double ShareOffDisc(double spotM, double targetM) =>
        spotM <= targetM ? 0 : 1 - targetM / spotM * (targetM / spotM);

    /// <summary>Share of the spot that lies off a long band, such as the can between mount and endbell, 0 to 1.</summary>
    /// <param name="spotM">Diameter of the spot, m.</param>
    /// <param name="widthM">Width of the band, m.</param>
    public static double ShareOffBand(double spotM, double widthM)
    {
        if (spotM <= widthM) return 0;
        double r = widthM / spotM;
        return 1 - 2 / Math.PI * (Math.Asin(r) + r * Math.Sqrt(1 - r * r));
    }
}
