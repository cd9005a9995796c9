namespace Coolproof.Sampling.Classical;

/// <summary>Mean, standard deviation and lag-1 autocorrelation of a series, sums carried in double-double.</summary>
/// <param name="Count">Number of values.</param>
/// <param name="Mean">Arithmetic mean.</param>
/// <param name="Sd">Sample standard deviation (denominator n − 1); NaN for one value.</param>
/// <param name="Lag1Autocorrelation">Σ(yᵢ−ȳ)(yᵢ₊₁−ȳ) / Σ(yᵢ−ȳ)²; NaN if the values do not vary.</param>
public sealed record SampleMoments(int Count, double Mean, double Sd, double Lag1Autocorrelation)
{
    /// <summary>Of a series in the order it was taken.</summary>
    /// <exception cref="ArgumentException">No values.</exception>
    public static SampleMoments Of(ReadOnlySpan<double> values)
    {
        if (values.IsEmpty) throw new ArgumentException("No values.", nameof(values));
        var mean = DoubleDouble.Sum(values) / values.Length;
        var (squares, products) = (DoubleDouble.Zero, DoubleDouble.Zero);
        for (var i = 0; i < values.Length; i++)
        {
            var deviation = values[i] - mean;
            squares += deviation * deviation;
            if (i + 1 < values.Length) products += deviation * (values[i + 1] - mean);
        }
        var sd = values.Length > 1 ? (double)DoubleDouble.Sqrt(squares / (values.Length - 1)) : double.NaN;
        return new(values.Length, (double)mean, sd, squares.Hi > 0 ? (double)(products / squares) : double.NaN);
    }
}
