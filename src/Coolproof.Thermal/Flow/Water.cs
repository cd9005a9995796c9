namespace Coolproof.Thermal;

/// <summary>Boiling of water: IAPWS-IF97 region 4 (coefficients from memory, shown right by the release's check values).</summary>
public static class Water
{
    static readonly double[] n =
    [
        0.11670521452767e4, -0.72421316703206e6, -0.17073846940092e2, 0.12020824702470e5, -0.32325550322333e7,
        0.14915108613530e2, -0.48232657361591e4, 0.40511340542057e6, -0.23855557567849, 0.65017534844798e3,
    ];

    /// <summary>Boiling point at a pressure, °C.</summary>
    /// <param name="pascal">Pressure, Pa, 611.213 to 22.064e6.</param>
    public static double BoilingPointC(double pascal)
    {
        if (!(pascal is >= 611.213 and <= 22.064e6))
            throw new ArgumentOutOfRangeException(nameof(pascal), pascal, "The formula holds from 611.213 to 22.064e6 Pa.");
        double b = Math.Pow(pascal / 1e6, 0.25);
        double e = (b + n[2]) * b + n[5], f = (n[0] * b + n[3]) * b + n[6], g = (n[1] * b + n[4]) * b + n[7];
        double d = 2 * g / (-f - Math.Sqrt(f * f - 4 * e * g)), s = n[9] + d;
        return 0.5 * (s - Math.Sqrt(s * s - 4 * (n[8] + n[9] * d))) - PhysicalConstants.ZeroCelsiusK;
    }

    /// <summary>Pressure of saturated vapour over water, Pa.</summary>
    /// <param name="celsius">Temperature, °C, 0 to 373.946.</param>
    public static double SaturationPressurePa(double celsius)
    {
        if (!(celsius is >= 0 and <= 373.946))
            throw new ArgumentOutOfRangeException(nameof(celsius), celsius, "The formula holds from 0 to 373.946 °C.");
        double kelvin = celsius + PhysicalConstants.ZeroCelsiusK, t = kelvin + n[8] / (kelvin - n[9]);
        double a = (t + n[0]) * t + n[1], b = (n[2] * t + n[3]) * t + n[4], c = (n[5] * t + n[6]) * t + n[7];
        return 1e6 * Math.Pow(2 * c / (-b + Math.Sqrt(b * b - 4 * a * c)), 4);
    }
}
