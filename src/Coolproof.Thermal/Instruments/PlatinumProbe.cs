namespace Coolproof.Thermal;

/// <summary>
/// A platinum resistor of 100 Ω at 0 °C (Pt100) by IEC 60751: R = R0 (1 + A t + B t² + C (t − 100) t³), the last term below 0 °C only.
/// Coefficients and tolerances from memory (IEC 60751).
/// </summary>
public static class PlatinumProbe
{
    /// <summary>Resistance at 0 °C, Ω.</summary>
    public const double NominalOhm = 100;

    /// <summary>Lowest and highest temperature of the formula, °C.</summary>
    public const double LeastC = -200, MostC = 850;

    const double A = 3.9083e-3, B = -5.775e-7, C = -4.183e-12;

    /// <summary>Resistance, Ω.</summary>
    /// <param name="celsius">Temperature, °C, −200 to 850.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that range.</exception>
    public static double Ohm(double celsius)
    {
        if (!(celsius is >= LeastC and <= MostC)) throw new ArgumentOutOfRangeException(nameof(celsius), celsius, "A Pt100 is reckoned from −200 to 850 °C.");
        return At(celsius);
    }

    /// <summary>Temperature, °C; NaN where the resistance lies outside the range.</summary>
    /// <param name="ohm">Resistance, Ω.</param>
    public static double TemperatureC(double ohm)
    {
        if (!(ohm >= At(LeastC) && ohm <= At(MostC))) return double.NaN;
        double celsius = (-A + Math.Sqrt(A * A - 4 * B * (1 - ohm / NominalOhm))) / (2 * B);
        // Below zero the quadratic is the start, off by 2 K at most.
        for (int i = 0; celsius < 0 && i < 50; i++)
        {
            double slope = NominalOhm * (A + 2 * B * celsius + C * celsius * celsius * (4 * celsius - 300)), step = (At(celsius) - ohm) / slope;
            celsius -= step;
            if (Math.Abs(step) < 1e-11) break;
        }
        return celsius;
    }

    /// <summary>Tolerance of a class A probe, K: 0.15 + 0.002 |t| (IEC 60751; from memory).</summary>
    /// <param name="celsius">Temperature, °C.</param>
    public static double ClassAToleranceK(double celsius) => 0.15 + 0.002 * Math.Abs(celsius);

    /// <summary>Tolerance of a class B probe, K: 0.30 + 0.005 |t| (IEC 60751; from memory).</summary>
    /// <param name="celsius">Temperature, °C.</param>
    public static double ClassBToleranceK(double celsius) => 0.30 + 0.005 * Math.Abs(celsius);

    static double At(double t) => NominalOhm * (1 + A * t + B * t * t + (t < 0 ? C * (t - 100) * t * t * t : 0));
}
