namespace Coolproof.Thermal;

/// <summary>
/// A thermocouple by the reference functions of ITS-90 (NIST Monograph 175, 1993; public domain): microvolts from °C with the cold junction at 0 °C, and back.
/// </summary>
public sealed class Thermocouple
{
    readonly double[] belowZero, aboveZero;
    readonly double hump;

    Thermocouple(string type, double mostC, double hump, double[] belowZero, double[] aboveZero) =>
        (Type, MostC, this.hump, this.belowZero, this.aboveZero) = (type, mostC, hump, belowZero, aboveZero);

    /// <summary>Type K, nickel-chromium against nickel-aluminium, to 1372 °C.</summary>
    public static Thermocouple K { get; } = new("K", 1372, 118.5976,
    [
        0, 3.9450128025e1, 2.3622373598e-2, -3.2858906784e-4, -4.9904828777e-6, -6.7509059173e-8, -5.7410327428e-10,
        -3.1088872894e-12, -1.0451609365e-14, -1.9889266878e-17, -1.6322697486e-20,
    ],
    [
        -1.7600413686e1, 3.8921204975e1, 1.8558770032e-2, -9.9457592874e-5, 3.1840945719e-7, -5.6072844889e-10, 5.6075059059e-13,
        -3.2020720003e-16, 9.7151147152e-20, -1.2104721275e-23,
    ]);

    /// <summary>Type T, copper against copper-nickel, to 400 °C.</summary>
    public static Thermocouple T { get; } = new("T", 400, 0,
    [
        0, 3.8748106364e1, 4.4194434347e-2, 1.1844323105e-4, 2.0032973554e-5, 9.0138019559e-7, 2.2651156593e-8, 3.6071154205e-10,
        3.8493939883e-12, 2.8213521925e-14, 1.4251594779e-16, 4.8768662286e-19, 1.079553927e-21, 1.3945027062e-24,
        7.9795153927e-28,
    ],
    [
        0, 3.8748106364e1, 3.329222788e-2, 2.0618243404e-4, -2.1882256846e-6, 1.0996880928e-8, -3.0815758772e-11,
        4.547913529e-14, -2.7512901673e-17,
    ]);

    /// <summary>Lowest temperature that is turned back, °C; the reference functions go on to −270, where little voltage is left per kelvin.</summary>
    public const double LeastC = -200;

    /// <summary>Letter of its type.</summary>
    public string Type { get; }

    /// <summary>Highest temperature, °C.</summary>
    public double MostC { get; }

    /// <summary>Voltage between hot and cold junction, µV, the cold one at 0 °C.</summary>
    /// <param name="celsius">Temperature of the hot junction, °C, from <see cref="LeastC"/> to <see cref="MostC"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">Outside that range.</exception>
    public double Microvolt(double celsius)
    {
        if (!(celsius >= LeastC && celsius <= MostC))
            throw new ArgumentOutOfRangeException(nameof(celsius), celsius, $"A type {Type} thermocouple is reckoned from {LeastC} to {MostC} °C.");
        return At(celsius).Microvolt;
    }

    /// <summary>Temperature of the hot junction, °C.</summary>
    /// <param name="microvolt">Voltage that was measured, µV.</param>
    /// <param name="coldJunctionC">Temperature where the wires meet the meter, °C.</param>
    /// <returns>°C; NaN where the voltage lies outside the range.</returns>
    public double TemperatureC(double microvolt, double coldJunctionC = 0)
    {
        double asked = microvolt + Microvolt(coldJunctionC);
        if (!(asked >= At(LeastC).Microvolt && asked <= At(MostC).Microvolt)) return double.NaN;
        // The voltage rises all the way: Newton from the middle of what is left, halved where it would leave it.
        double low = LeastC, high = MostC, celsius = Math.Clamp(asked / 40, low, high);
        for (int i = 0; i < 100; i++)
        {
            (double at, double slope) = At(celsius);
            if (at > asked) high = celsius;
            else low = celsius;
            double next = celsius - (at - asked) / slope;
            if (!(next >= low && next <= high)) next = (low + high) / 2;
            if (Math.Abs(next - celsius) < 1e-10) return next;
            celsius = next;
        }
        return celsius;
    }

    /// <summary>Voltage and its growth per kelvin, µV/K.</summary>
    (double Microvolt, double Slope) At(double celsius)
    {
        double[] terms = celsius <= 0 ? belowZero : aboveZero;
        double value = 0, slope = 0;
        for (int i = terms.Length - 1; i >= 0; i--) (value, slope) = (value * celsius + terms[i], slope * celsius + value);
        if (hump == 0 || celsius <= 0) return (value, slope);
        // Type K's magnetic change, a bell about 127 °C.
        double from = celsius - 126.9686, bell = hump * Math.Exp(-1.183432e-4 * from * from);
        return (value + bell, slope - 2 * 1.183432e-4 * from * bell);
    }
}
