using Coolproof.Sampling;
using Coolproof.Sampling.Uncertainty;
using Coolproof.Thermal;

namespace Coolproof.Advice.Instruments;

/// <summary>
/// Gain and offset of a gun from its check: what it showed against what a gun without fault would have shown, on a straight line. Uncertainties by the law of
/// propagation (JCGM 100) and by a Monte Carlo method (JCGM 101) side by side; the worked example is in docs/instruments.md.
/// </summary>
public sealed class GunCheckLine
{
    /// <summary>Where the offset is taken, °C: about where a motor's can is read.</summary>
    public const double PivotC = 60;

    /// <summary>Relative standard uncertainty of a gain that a check at one temperature leaves open. Common practice, no source: makers state some 2 %.</summary>
    public const double UnknownGainSd = 0.02;

    /// <summary>Trials of the Monte Carlo method.</summary>
    public const int Trials = 100_000;

    /// <summary>Checks less far apart than this tell no gain, K.</summary>
    private const double LeastApartK = 15;

    private const int Gain = 0, Offset = 1;

    private GunCheckLine(IReadOnlyList<CheckPair> pairs, IReadOnlyList<Input> inputs, LawOfPropagation byLaw, MonteCarlo byChance, double? misfit) =>
        (Pairs, Inputs, ByLaw, ByChance, Misfit) = (pairs, inputs, byLaw, byChance, misfit);

    /// <summary>The pairs.</summary>
    public IReadOnlyList<CheckPair> Pairs { get; }

    /// <summary>Inputs in their order: shown, true and emissivity of each pair; then the gain where one temperature leaves it open.</summary>
    public IReadOnlyList<Input> Inputs { get; }

    /// <summary>Gain (output 0) and offset at <see cref="PivotC"/> in K (output 1), by JCGM 100.</summary>
    public LawOfPropagation ByLaw { get; }

    /// <summary>The same by JCGM 101.</summary>
    public MonteCarlo ByChance { get; }

    /// <summary>Root of the mean square of the residuals in standard uncertainties, from three pairs on; above about 2 they don't lie on a line.</summary>
    public double? Misfit { get; }

    /// <summary>Whether the check tells the gain: pairs far enough apart.</summary>
    public bool TellsGain => Pairs.Max(p => p.TrueC) - Pairs.Min(p => p.TrueC) >= LeastApartK;

    /// <summary>Works a check out.</summary>
    /// <param name="pairs">One pair at least.</param>
    /// <param name="setting">The gun's emissivity setting.</param>
    /// <param name="airC">Surroundings at the check, °C.</param>
    /// <param name="seed">Seed of the Monte Carlo method.</param>
    public static GunCheckLine Of(IReadOnlyList<CheckPair> pairs, double setting, double airC, long seed = 1)
    {
        ArgumentOutOfRangeException.ThrowIfZero(pairs.Count);
        int n = pairs.Count;
        bool tells = pairs.Max(p => p.TrueC) - pairs.Min(p => p.TrueC) >= LeastApartK;
        Input[] inputs = [.. pairs.Select(p => p.Read), .. pairs.Select(p => p.True), .. pairs.Select(p => p.Emissivity), .. tells ? (Input[])[] : [new("gain", 1, UnknownGainSd)]];
        // Weights are fixed before anything is propagated: they are a choice, not a measurement.
        double[] u = [.. Enumerable.Range(0, n).Select(i => Math.Sqrt(Square(inputs[i].StandardUncertainty) + Square(inputs[n + i].StandardUncertainty)))];
        CalibrationLine? fit = null;

        void Model(ReadOnlySpan<double> x, Span<double> y)
        {
            Span<double> right = stackalloc double[n];
            for (int i = 0; i < n; i++)
                right[i] = Gun.Usual.ReadingC(x[n + i], setting, Math.Clamp(x[2 * n + i], 0.01, 1), airC);
            if (tells)
            {
                fit = CalibrationLine.Fit(right, x[..n], u, PivotC);
                (y[Gain], y[Offset]) = (fit.Slope, fit.Intercept - PivotC);
                return;
            }
            double weights = 0, off = 0;
            for (int i = 0; i < n; i++)
            {
                double w = 1 / (u[i] * u[i]);
                (weights, off) = (weights + w, off + w * (x[i] - x[3 * n] * (right[i] - PivotC) - PivotC));
            }
            (y[Gain], y[Offset]) = (x[3 * n], off / weights);
        }

        LawOfPropagation law = LawOfPropagation.Of(inputs, 2, Model);
        Model([.. inputs.Select(i => i.Estimate)], new double[2]);
        double? misfit = tells && n > 2 ? fit!.ResidualSd : null;
        return new(pairs, inputs, law, MonteCarlo.Of(inputs, 2, Model, Trials, new RandomStream(seed)), misfit);
    }

    /// <summary>What the gun shows too much, K, with its standard uncertainty, where a gun without fault would show a temperature.</summary>
    /// <param name="celsius">What a gun without fault would show, °C.</param>
    public (double K, double StandardUncertaintyK) TooMuchAt(double celsius)
    {
        double from = celsius - PivotC;
        double variance = ByLaw.Covariance[Offset, Offset] + 2 * from * ByLaw.Covariance[Gain, Offset] + from * from * ByLaw.Covariance[Gain, Gain];
        return (ByLaw.Values[Offset] + (ByLaw.Values[Gain] - 1) * from, Math.Sqrt(variance));
    }

    /// <summary>What a gun without fault would have shown, °C, with its standard uncertainty.</summary>
    /// <param name="readC">What this one shows, °C.</param>
    public (double C, double StandardUncertaintyK) PutRight(double readC)
    {
        double right = PivotC + (readC - PivotC - ByLaw.Values[Offset]) / ByLaw.Values[Gain];
        return (right, TooMuchAt(right).StandardUncertaintyK / ByLaw.Values[Gain]);
    }

    private static double Square(double x) => x * x;
}
