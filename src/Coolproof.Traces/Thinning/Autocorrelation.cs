namespace Coolproof.Traces.Thinning;

/// <summary>How many neighbouring samples say the same thing.</summary>
public static class Autocorrelation
{
    /// <summary>
    /// Integrated autocorrelation time, in samples: so many samples are worth one independent. 1 + 2 Σ ρ, over pairs of lags as long as each pair's sum is positive and not greater than the
    /// one before (initial monotone sequence, Geyer 1992, Statistical Science 7, 473).
    /// </summary>
    /// <param name="values">Samples at equal steps, without trend; at least 4.</param>
    /// <returns>At least 1; 1 where all are the same.</returns>
    public static double TimeOf(ReadOnlySpan<double> values)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(values.Length, 4);
        double mean = 0;
        foreach (double value in values) mean += value / values.Length;
        double variance = Lagged(values, mean, 0);
        if (!(variance > 0)) return 1;
        double sum = 0, least = double.PositiveInfinity;
        for (int lag = 0; lag + 1 < values.Length / 2; lag += 2)
        {
            double pair = (Lagged(values, mean, lag) + Lagged(values, mean, lag + 1)) / variance;
            if (pair <= 0) break;
            least = Math.Min(least, pair);
            sum += least;
        }
        return Math.Max(1, (2 * sum) - 1);
    }

    static double Lagged(ReadOnlySpan<double> values, double mean, int lag)
    {
        double sum = 0;
        for (int i = lag; i < values.Length; i++) sum += (values[i] - mean) * (values[i - lag] - mean);
        return sum / values.Length;
    }
}
