using Coolproof.Sampling.Uncertainty;

namespace Coolproof.Sampling.Tests.Uncertainty;

/// <summary>The worked examples of the guides: JCGM 100:2008 annex H, JCGM 101:2008 clause 9, and figures of NIST TN 1900.</summary>
public class GuideExamplesTests
{
    // Source: JCGM 100 H.1 (end gauge): 50 000 838 nm, 32 nm, 16 degrees of freedom; 31.6637674111 and 16.7521475092 by MSLNZ/GTC.
    static readonly Input[] gauge =
    [
        new("length of the standard", 50_000_623, 25, InputShape.StudentT, 18), new("difference", 215, 5.8, InputShape.StudentT, 24),
        new("random effects", 0, 3.9, InputShape.StudentT, 5), new("systematic effects", 0, 6.7, InputShape.StudentT, 8),
        Input.Between("expansion of the standard", 9.5e-6, 13.5e-6), new("bed", -0.1, 0.2), new("cyclic", 0, 0.5 / Math.Sqrt(2), InputShape.Arcsine),
        Input.Between("difference of expansion", -1e-6, 1e-6) with { DegreesOfFreedom = 50 }, Input.Between("difference of temperature", -0.05, 0.05) with { DegreesOfFreedom = 2 },
    ];

    // l_s is 5e7 nm in the products, as in the guide's rounded sensitivities.
    static void Gauge(ReadOnlySpan<double> x, Span<double> y) => y[0] = x[0] + x[1] + x[2] + x[3] - 5e7 * (x[7] * (x[5] + x[6]) + x[4] * x[8]);

    [Fact]
    public void The_end_gauge_has_its_published_uncertainty_degrees_of_freedom_and_parts()
    {
        LawOfPropagation law = LawOfPropagation.Of(gauge, 1, Gauge);
        Assert.Equal(50_000_838, law.Values[0], 6);
        // Parts as published: 25; 5.8, 3.9, 6.7 (9.7 together); 16.6; 2.9 nm; δθ's 0.05/√3 unrounded gives 16.599.
        Assert.Equal(16.599, law.Component(0, 8, gauge), 3);
        Assert.Equal(2.88675, law.Component(0, 7, gauge), 4);
        Assert.Equal(9.68194195397, Math.Sqrt(5.8 * 5.8 + 3.9 * 3.9 + 6.7 * 6.7), 9);
        Assert.Equal(31.6637674111, law.StandardUncertainty(), 4);
        Assert.Equal(16.7521475092, law.DegreesOfFreedom[0], 3);
    }

    // Source: JCGM 100 H.1 with second-order terms: 34 nm; the law of propagation leaves them out and a Monte Carlo method doesn't.
    [Fact]
    public void By_chance_the_end_gauge_gets_its_second_order_terms()
    {
        // Inputs with normal tails, so that only the product's second order is added.
        Input[] normal = [.. gauge.Select(i => i.Shape == InputShape.StudentT ? i with { Shape = InputShape.Normal } : i)];
        MonteCarlo chance = MonteCarlo.Of(normal, 1, Gauge, 200_000, new RandomStream(1));
        Assert.Equal(34, chance.StandardUncertainty(), 0.5);
    }

    // Source: JCGM 100 H.2: R, X, Z 127.732, 219.847, 254.260 Ω; u 0.071, 0.295, 0.236; r −0.588, −0.485, 0.993. Full precision: MSLNZ/GTC.
    [Fact]
    public void Resistance_and_reactance_measured_together_are_correlated_as_published()
    {
        Table table = new("gum/h2-impedance.csv");
        double[][] seen = [.. new[] { "V_volt", "I_mA", "phi_rad" }.Select(column => Enumerable.Range(1, 5).Select(k => table.Number(table.Single("k", k.ToString()), column)).ToArray())];
        double[] mean = [.. seen.Select(v => v.Average())];
        double Covariance(int a, int b) => seen[a].Zip(seen[b], (p, q) => (p - mean[a]) * (q - mean[b])).Sum() / 20;
        double[,] correlation = new double[3, 3];
        for (int a = 0; a < 3; a++)
            for (int b = 0; b < 3; b++)
                correlation[a, b] = a == b ? 1 : Covariance(Math.Min(a, b), Math.Max(a, b)) / Math.Sqrt(Covariance(a, a) * Covariance(b, b));
        Assert.Equal([-0.355311220, 0.857624211, -0.645111218], [correlation[0, 1], correlation[0, 2], correlation[1, 2]], (p, q) => Math.Abs(p - q) < 1e-8);
        Input[] inputs = [.. new[] { "V", "I", "φ" }.Select((name, i) => new Input(name, mean[i], Math.Sqrt(Covariance(i, i))))];
        static void Model(ReadOnlySpan<double> x, Span<double> y) => (y[0], y[1], y[2]) = (1000 * x[0] / x[1] * Math.Cos(x[2]), 1000 * x[0] / x[1] * Math.Sin(x[2]), 1000 * x[0] / x[1]);
        LawOfPropagation law = LawOfPropagation.Of(inputs, 3, Model, correlation);
        double[] values = [127.732169928, 219.846511913, 254.259701948], u = [0.071071407, 0.295581677, 0.236336130];
        for (int i = 0; i < 3; i++)
        {
            Assert.Equal(values[i], law.Values[i], 8);
            Assert.Equal(u[i], law.StandardUncertainty(i), 8);
        }
        Assert.Equal(-0.588429784, law.Correlation(0, 1), 8);
        Assert.Equal(-0.485259224, law.Correlation(0, 2), 8);
        Assert.Equal(0.992511649, law.Correlation(1, 2), 8);
        MonteCarlo chance = MonteCarlo.Of(inputs, 3, Model, 200_000, new RandomStream(2), correlation);
        for (int i = 0; i < 3; i++)
            Assert.Equal(u[i], chance.StandardUncertainty(i), 0.01 * u[i]);
        Assert.Equal(0.992511649, chance.Correlation(1, 2), 0.002);
    }

    // Source: JCGM 100 H.3 (thermometer): y1 −0.1712, y2 0.00218, s 0.0029, 0.00067, r −0.930, residual 0.0035; at 30 °C −0.1494, 0.0041.
    [Fact]
    public void The_thermometers_calibration_line_is_the_published_one()
    {
        Table table = new("gum/h3-thermometer.csv");
        string[][] rows = [.. Enumerable.Range(1, 11).Select(k => table.Single("k", k.ToString()))];
        CalibrationLine line = CalibrationLine.Fit([.. rows.Select(r => table.Number(r, "reading_t_degC"))], [.. rows.Select(r => table.Number(r, "observed_correction_b_degC"))], [], 20);
        double s = line.ResidualSd;
        Assert.Equal(0.003497563964, s, 11);
        Assert.Equal(-0.171203790131, line.Intercept, 11);
        Assert.Equal(0.002182697740, line.Slope, 11);
        Assert.Equal(0.002877597835, s * Math.Sqrt(line.InterceptVariance), 11);
        Assert.Equal(0.000667938773, s * Math.Sqrt(line.SlopeVariance), 11);
        Assert.Equal(-0.930429603, line.Covariance / Math.Sqrt(line.InterceptVariance * line.SlopeVariance), 8);
        Assert.Equal(-0.149376812732, line.At(30), 11);
        Assert.Equal(0.004138595753, s * line.StandardUncertaintyAt(30), 11);
    }

    // Source: JCGM 101 9.2.2 to 9.2.4: intervals ±3.92, ±3.88, ±17.0; exact ±3.919928, ±3.879407, ±17.015814.
    [Theory]
    [InlineData(InputShape.Normal, 1, 2, 3.919927969)]
    [InlineData(InputShape.Rectangular, 1, 2, 3.879406741)]
    [InlineData(InputShape.Rectangular, 10, 10.148891565, 17.015814)]
    public void Sums_of_four_have_their_published_intervals(InputShape shape, double last, double sd, double half)
    {
        Input[] inputs = [.. Enumerable.Range(0, 4).Select(i => new Input($"X{i}", 0, i == 3 ? last : 1, shape))];
        MonteCarlo chance = MonteCarlo.Of(inputs, 1, (x, y) => y[0] = x[0] + x[1] + x[2] + x[3], 1_000_000, new RandomStream(3));
        Assert.Equal(sd, chance.StandardUncertainty(), 0.003 * sd);
        Assert.Equal(half, chance.Symmetric(0.95).High, 0.004 * half);
        Assert.Equal(-half, chance.Symmetric(0.95).Low, 0.004 * half);
        Assert.Equal(sd, LawOfPropagation.Of(inputs, 1, (x, y) => y[0] = x[0] + x[1] + x[2] + x[3]).StandardUncertainty(), 1e-9 * sd);
    }

    // Source: y = ln x, x rectangular 0.1 to 1.1: by chance −0.665, 0.606, shortest 95 % from −1.895 to 0.095; first order −0.511, 0.481 (the two must differ).
    [Fact]
    public void A_logarithm_shows_where_the_first_order_fails()
    {
        Input[] inputs = [Input.Between("x", 0.1, 1.1)];
        LawOfPropagation law = LawOfPropagation.Of(inputs, 1, (x, y) => y[0] = Math.Log(x[0]));
        Assert.Equal(-0.510825624, law.Values[0], 9);
        Assert.Equal(0.481125224, law.StandardUncertainty(), 1e-5);
        MonteCarlo chance = MonteCarlo.Of(inputs, 1, (x, y) => y[0] = Math.Log(x[0]), 1_000_000, new RandomStream(4));
        Assert.Equal(-0.664900293, chance.Means[0], 0.002);
        Assert.Equal(0.606226697, chance.StandardUncertainty(), 0.002);
        Assert.Equal(-1.895, chance.Shortest(0.95).Low, 0.01);
        Assert.Equal(0.095, chance.Shortest(0.95).High, 0.002);
    }

    // Source: NIST TN 1900, thermal expansion: 1.7266e-5 with 1.76e-6 by first order; 1.7268e-5 with 1.74e-6 by chance (tails of t with 3 degrees of freedom).
    [Fact]
    public void Thermal_expansion_of_copper_is_as_published()
    {
        Input[] inputs =
        [
            new("L0", 1.4999, 1e-4, InputShape.StudentT, 3), new("T0", 288.15, 0.02, InputShape.StudentT, 3), new("L1", 1.5021, 2e-4, InputShape.StudentT, 3), new("T1", 373.10, 0.05, InputShape.StudentT, 3),
        ];
        static void Model(ReadOnlySpan<double> x, Span<double> y) => y[0] = (x[2] - x[0]) / (x[0] * (x[3] - x[1]));
        LawOfPropagation law = LawOfPropagation.Of(inputs, 1, Model);
        Assert.Equal(1.7266e-5, law.Values[0], 1e-9);
        Assert.Equal(1.76e-6, law.StandardUncertainty(), 1e-8);
        MonteCarlo chance = MonteCarlo.Of([.. inputs.Select(i => i with { Shape = InputShape.Normal })], 1, Model, 200_000, new RandomStream(5));
        Assert.Equal(1.7266e-5, chance.Means[0], 2e-8);
        Assert.Equal(1.755e-6, chance.StandardUncertainty(), 2e-8);
    }

    // Source: Stefan-Boltzmann constant of NIST's uncertainty calculator: 5.67037e-8 with 2.05e-13 (inputs as published with it).
    [Fact]
    public void The_Stefan_Boltzmann_constant_keeps_its_nine_digits()
    {
        Input[] inputs = [new("h", 6.62606957e-34, 29e-42), new("R", 8.3144621, 75e-7), new("Rinf", 10973731.568539, 55e-6), new("Ae", 5.4857990946e-4, 22e-14), new("alpha", 7.2973525698e-3, 24e-13)];
        static void Model(ReadOnlySpan<double> x, Span<double> y) =>
            y[0] = 32 * Math.Pow(Math.PI, 5) * x[0] * Math.Pow(x[1], 4) * Math.Pow(x[2], 4) / (15 * Math.Pow(x[3], 4) * Math.Pow(0.001, 4) * Math.Pow(299792458, 6) * Math.Pow(x[4], 8));
        LawOfPropagation law = LawOfPropagation.Of(inputs, 1, Model);
        Assert.Equal(5.67037e-8, law.Values[0], 1e-13);
        Assert.Equal(2.05e-13, law.StandardUncertainty(), 1e-15);
    }

    // Source: Welch-Satterthwaite, u 0.57 with 9 and 0.25 with infinitely many degrees of freedom: 12.8.
    [Fact]
    public void Degrees_of_freedom_add_up_as_published() => Assert.Equal(12.795649, LawOfPropagation.Of(
        [new("a", 1, 0.57, InputShape.StudentT, 9), new("b", 2, 0.25)], 1, (x, y) => y[0] = x[0] + x[1]).DegreesOfFreedom[0], 6);
}
