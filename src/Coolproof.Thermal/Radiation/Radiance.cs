namespace Coolproof.Thermal;

/// <summary>Planck's law: how much a black surface radiates in a band of wavelengths, and back.</summary>
public static class Radiance
{
    /// <summary>∫₀^∞ t³/(eᵗ − 1) dt = π⁴/15.</summary>
    const double Whole = Math.PI * Math.PI * Math.PI * Math.PI / 15;

    /// <summary>B₂ₖ/(2k)! for k = 1, 2, … from 2 ζ(2k)/(2π)²ᵏ; the series about x = 0 converges for |x| below 2π.</summary>
    static readonly double[] bernoulli = BernoulliOverFactorial(24);

    /// <summary>Share of a black surface's radiation below a wavelength: F(0 → λT), 0 to 1.</summary>
    /// <param name="wavelengthM">Wavelength, m.</param>
    /// <param name="kelvin">Temperature, K, above zero.</param>
    public static double FractionBelow(double wavelengthM, double kelvin)
    {
        double x = PhysicalConstants.SecondRadiation / (wavelengthM * kelvin);
        return x < 2 ? 1 - NearZero(x) / Whole : Tail(x) / Whole;
    }

    /// <summary>Radiance of a black surface in a band, W m⁻² sr⁻¹.</summary>
    /// <param name="kelvin">Temperature, K; at zero and below nothing is radiated.</param>
    /// <param name="band">Band of wavelengths.</param>
    public static double Of(double kelvin, Band band)
    {
        if (kelvin <= 0) return 0;
        double square = kelvin * kelvin;
        return PhysicalConstants.StefanBoltzmann / Math.PI * square * square * FractionWithin(kelvin, band);
    }

    /// <summary>d ln L / d ln T: the power with which the radiance grows at a temperature; about 4.2 at 60 °C for 8 to 14 µm.</summary>
    /// <param name="kelvin">Temperature, K, above zero.</param>
    /// <param name="band">Band of wavelengths.</param>
    public static double Exponent(double kelvin, Band band) =>
        4 + (Edge(band.UpperM, kelvin) - Edge(band.LowerM, kelvin)) / (Whole * FractionWithin(kelvin, band));

    /// <summary>Temperature of the black surface that has this radiance in the band, K; NaN for a negative radiance, 0 for none.</summary>
    /// <param name="radiance">Radiance, W m⁻² sr⁻¹.</param>
    /// <param name="band">Band of wavelengths.</param>
    public static double Temperature(double radiance, Band band)
    {
        if (!(radiance >= 0) || double.IsPositiveInfinity(radiance)) return double.NaN;
        if (radiance == 0) return 0;
        // Newton on ln L against 1/T, which is nearly straight where a band lies on the cold side, and well behaved where it doesn't.
        double target = Math.Log(radiance), kelvin = 300;
        for (int i = 0; i < 100; i++)
        {
            double miss = target - Math.Log(Of(kelvin, band));
            double change = miss / Exponent(kelvin, band);
            kelvin = change < 0.5 ? kelvin / (1 - change) : kelvin * 2;
            if (Math.Abs(change) < 1e-9) break; // The next step would be its square.
        }
        return kelvin;
    }

    static double FractionWithin(double kelvin, Band band)
    {
        double low = PhysicalConstants.SecondRadiation / (band.UpperM * kelvin);
        double high = PhysicalConstants.SecondRadiation / (band.LowerM * kelvin);
        // Both edges beyond the peak: the difference of the near-zero parts keeps its digits.
        return high < 2 ? (NearZero(high) - NearZero(low)) / Whole : FractionBelow(band.UpperM, kelvin) - FractionBelow(band.LowerM, kelvin);
    }

    /// <summary>x⁴/(eˣ − 1), the weight of a band's edge in the growth of its radiance.</summary>
    static double Edge(double wavelengthM, double kelvin)
    {
        double x = PhysicalConstants.SecondRadiation / (wavelengthM * kelvin);
        return x is 0 or > 700 ? 0 : x * x * x * x / Phi.Expm1(x);
    }

    /// <summary>∫ₓ^∞ t³/(eᵗ − 1) dt = Σ e⁻ⁿˣ (x³/n + 3x²/n² + 6x/n³ + 6/n⁴).</summary>
    static double Tail(double x)
    {
        if (x > 700) return 0;
        double decay = Math.Exp(-x), power = 1, sum = 0;
        for (int n = 1; ; n++)
        {
            power *= decay;
            double term = power * (((x / n + 3.0 / ((double)n * n)) * x + 6.0 / ((double)n * n * n)) * x + 6.0 / ((double)n * n * n * n));
            sum += term;
            if (term <= 1e-18 * sum) return sum;
        }
    }

    /// <summary>∫₀ˣ t³/(eᵗ − 1) dt = x³ (1/3 − x/8 + Σ B₂ₖ/(2k)! x²ᵏ/(2k + 3)).</summary>
    static double NearZero(double x)
    {
        double sum = 0, square = x * x;
        for (int k = bernoulli.Length; k >= 1; k--) sum = (sum + bernoulli[k - 1] / (2 * k + 3)) * square;
        return x * square * (1.0 / 3 - x / 8 + sum);
    }

    static double[] BernoulliOverFactorial(int terms)
    {
        double[] values = new double[terms];
        for (int k = 1; k <= terms; k++)
        {
            double zeta = k switch
            {
                1 => Math.Pow(Math.PI, 2) / 6,
                2 => Math.Pow(Math.PI, 4) / 90,
                3 => Math.Pow(Math.PI, 6) / 945,
                4 => Math.Pow(Math.PI, 8) / 9450,
                5 => Math.Pow(Math.PI, 10) / 93555,
                _ => Enumerable.Range(1, 40).Reverse().Sum(m => Math.Pow(m, -2.0 * k)),
            };
            values[k - 1] = (k % 2 == 1 ? 2 : -2) * zeta / Math.Pow(2 * Math.PI, 2 * k);
        }
        return values;
    }
}
