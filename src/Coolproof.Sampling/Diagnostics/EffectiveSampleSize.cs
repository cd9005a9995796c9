using System.Numerics.Tensors;

namespace Coolproof.Sampling.Diagnostics;

/// <summary>
/// R-hat and effective sample size of sequences of equal length as they stand, without splitting or ranking: Geyer's (1992) initial monotone
/// sequence over the autocovariances pooled as in Vehtari et al. (2021), equations 10 to 13.
/// </summary>
static class EffectiveSampleSize
{
    /// <summary>
    /// Both figures. Autocovariances are computed lag by lag and only as far as Geyer's rule reads them: for well mixed chains a handful.
    /// </summary>
    /// <param name="values">Sequence after sequence; centred in place.</param>
    /// <param name="length">Draws per sequence.</param>
    public static (double RHat, double Size) Of(Span<double> values, int length)
    {
        int sequences = values.Length / length;
        if (length < 4)
            return (double.NaN, double.NaN);
        double within = 0, meanOfMeans = 0, between = 0;
        for (int s = 0; s < sequences; s++)
        {
            Span<double> sequence = values.Slice(s * length, length);
            double mean = TensorPrimitives.Sum<double>(sequence) / length;
            TensorPrimitives.Subtract(sequence, mean, sequence);
            within += TensorPrimitives.SumOfSquares<double>(sequence);
            // Running spread of the means (Welford).
            double off = mean - meanOfMeans;
            meanOfMeans += off / (s + 1);
            between += off * (mean - meanOfMeans);
        }

        within /= sequences * (length - 1.0);
        double pooled = within * (length - 1) / length + (sequences > 1 ? between / (sequences - 1) : 0);
        if (!(pooled > 0) || !double.IsFinite(pooled))
            return (double.NaN, double.NaN);
        return (Math.Sqrt(pooled / within), values.Length / CorrelationTime(values, length, within, pooled));
    }

    static double CorrelationTime(ReadOnlySpan<double> centred, int length, double within, double pooled)
    {
        double Correlation(ReadOnlySpan<double> c, int lag) => 1 - (within - Autocovariance(c, length, lag)) / pooled;
        // Pair sums of correlations at lags 2k and 2k + 1 are positive and falling for a reversible chain: stop where they are not.
        double even = 1, odd = Correlation(centred, 1), lowest = even + odd, sum = lowest, leftOver = 0;
        for (int lag = 2; even + odd > 0 && lag < length - 3; lag += 2)
        {
            even = Correlation(centred, lag);
            odd = Correlation(centred, lag + 1);
            // The pair that ends the sum, turned negative or last in reach, gives only its even half.
            if (even + odd < 0 || lag + 2 >= length - 3)
            {
                leftOver = even;
                break;
            }

            lowest = Math.Min(lowest, even + odd);
            sum += lowest;
        }

        // One correlation past the last whole pair still improves antithetic chains (Vehtari et al. 2021, section 3.2).
        double time = -1 + 2 * sum + Math.Max(0, leftOver);
        return Math.Max(time, 1 / Math.Log10(centred.Length));
    }

    static double Autocovariance(ReadOnlySpan<double> centred, int length, int lag)
    {
        double sum = 0;
        for (int start = 0; start < centred.Length; start += length)
            sum += TensorPrimitives.Dot(centred.Slice(start, length - lag), centred.Slice(start + lag, length - lag));
        return sum / centred.Length;
    }
}
