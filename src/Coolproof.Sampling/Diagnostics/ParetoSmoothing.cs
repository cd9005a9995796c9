namespace Coolproof.Sampling.Diagnostics;

/// <summary>
/// Pareto smoothed importance weights (Vehtari, Simpson, Gelman, Yao and Gabry 2024, JMLR 25:72): the largest weights are replaced by the
/// expected order statistics of a generalised Pareto distribution fitted to them; its shape k̂ tells whether the weights can be trusted.
/// </summary>
public static class ParetoSmoothing
{
    const int ShortestTail = 5;

    /// <summary>k̂ above which estimates from <paramref name="draws"/> weights are not to be trusted: min(1 − 1/log₁₀ S, 0.7).</summary>
    public static double Limit(int draws) => Math.Min(1 - 1 / Math.Log10(draws), 0.7);

    /// <summary>Smooths log weights.</summary>
    /// <param name="logWeights">Unnormalised log importance ratios, S numbers; −∞ for a weight of zero.</param>
    /// <param name="smoothed">Receives the smoothed weights, normalised to sum 1.</param>
    /// <returns>
    /// k̂; +∞ when the tail is too short to fit or a log weight is NaN or +∞ (the weights then are the plain normalised ones, or NaN),
    /// −∞ when the largest weights are all alike and nothing needs smoothing.
    /// </returns>
    /// <exception cref="ArgumentException">The spans differ in length, or there are no weights.</exception>
    public static double Smooth(ReadOnlySpan<double> logWeights, Span<double> smoothed)
    {
        if (logWeights.Length != smoothed.Length || logWeights.Length == 0)
            throw new ArgumentException($"{logWeights.Length} log weights for {smoothed.Length} places.", nameof(smoothed));
        double top = double.NegativeInfinity;
        foreach (double w in logWeights)
            top = double.IsNaN(w) ? double.NaN : Math.Max(top, w);
        if (!double.IsFinite(top))
        {
            smoothed.Fill(double.NaN);
            return double.PositiveInfinity;
        }

        int[] order = Order(logWeights);
        int count = logWeights.Length;
        for (int i = 0; i < count; i++)
            smoothed[i] = Math.Exp(logWeights[i] - top);
        int tail = (int)Math.Ceiling(Math.Min(0.2 * count, 3 * Math.Sqrt(count)));
        double shape = tail < ShortestTail ? double.PositiveInfinity : SmoothTail(smoothed, order.AsSpan(count - tail), smoothed[order[count - tail - 1]]);
        double sum = 0;
        foreach (double w in smoothed)
            sum += w;
        foreach (ref double w in smoothed)
            w /= sum;
        return shape;
    }

    /// <summary>Shape k̂ alone.</summary>
    /// <param name="logWeights">Unnormalised log importance ratios.</param>
    public static double Shape(ReadOnlySpan<double> logWeights) => Smooth(logWeights, new double[logWeights.Length]);

    /// <summary>Effective sample size of normalised weights, 1/Σw².</summary>
    public static double SampleSize(ReadOnlySpan<double> weights)
    {
        double squares = 0;
        foreach (double w in weights)
            squares += w * w;
        return 1 / squares;
    }

    static int[] Order(ReadOnlySpan<double> values)
    {
        double[] keys = values.ToArray();
        int[] order = new int[keys.Length];
        for (int i = 0; i < order.Length; i++)
            order[i] = i;
        Array.Sort(keys, order);
        return order;
    }

    static double SmoothTail(Span<double> weights, ReadOnlySpan<int> rising, double cut)
    {
        double[] excess = new double[rising.Length];
        for (int i = 0; i < excess.Length; i++)
            excess[i] = weights[rising[i]] - cut;
        // All of the tail alike to rounding: bounded weights.
        if (excess[^1] - excess[0] <= 1e-14 * weights[rising[^1]])
            return double.NegativeInfinity;
        (double shape, double scale) = GeneralisedPareto.Fit(excess);
        if (!double.IsFinite(shape))
            return double.PositiveInfinity;
        for (int i = 0; i < excess.Length; i++)
            weights[rising[i]] = Math.Min(1, cut + GeneralisedPareto.Quantile((i + 0.5) / excess.Length, shape, scale));
        return shape;
    }
}
