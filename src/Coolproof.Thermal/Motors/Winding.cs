namespace Coolproof.Thermal;

/// <summary>
/// A winding as a thermometer and as a heater: resistance grows in proportion to k + T, with k = 235 for copper
/// (IEC 60034-1, resistance method, clause 8.6.2; from memory).
/// </summary>
public static class Winding
{
    /// <summary>k of copper, °C (IEC 60034-1; from memory). North American practice uses 234.5.</summary>
    public const double CopperK = 235;

    /// <summary>Growth of copper loss per kelvin at a constant RMS current, referred to 25 °C: 1/(235 + 25) per K.</summary>
    public const double AlphaAt25 = 1 / (CopperK + 25);

    /// <summary>Mean temperature of a winding from its hot and cold resistance, °C: (R2/R1)(k + T1) − k.</summary>
    /// <param name="hotOhm">Hot resistance, in any unit, above zero.</param>
    /// <param name="coldOhm">Cold resistance of the same pair, in the same unit, above zero.</param>
    /// <param name="coldC">Temperature of the winding when cold, °C.</param>
    /// <param name="k">k of the conductor, °C.</param>
    /// <exception cref="ArgumentOutOfRangeException">A resistance is not above zero.</exception>
    public static double TemperatureC(double hotOhm, double coldOhm, double coldC, double k = CopperK)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(hotOhm);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(coldOhm);
        return hotOhm / coldOhm * (k + coldC) - k;
    }

    /// <summary>Resistance at a temperature from the cold one, in the unit of <paramref name="coldOhm"/>.</summary>
    /// <param name="temperatureC">Mean temperature of the winding, °C.</param>
    /// <param name="coldOhm">Cold resistance.</param>
    /// <param name="coldC">Temperature of the winding when cold, °C.</param>
    /// <param name="k">k of the conductor, °C.</param>
    public static double Resistance(double temperatureC, double coldOhm, double coldC, double k = CopperK) =>
        coldOhm * (k + temperatureC) / (k + coldC);

    /// <summary>
    /// Copper heat extrapolated to 0 °C, W: the constant part of P_cu = P25 (1 + α25 (T − 25)) that goes into b.
    /// </summary>
    /// <param name="copperAt25W">Copper heat with the winding at 25 °C, W.</param>
    public static double CopperHeatAtZeroW(double copperAt25W) => copperAt25W * (1 - 25 * AlphaAt25);

    /// <summary>Copper feedback a = α25 P_cu25, W/K.</summary>
    /// <param name="copperAt25W">Copper heat with the winding at 25 °C, W.</param>
    public static double FeedbackWK(double copperAt25W) => AlphaAt25 * copperAt25W;
}
