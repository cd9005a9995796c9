using MathNet.Numerics.Statistics;

namespace Coolproof.Evidence;

/// <summary>Summaries of draws.</summary>
public static class Summaries
{
    /// <summary>Mean, sd (n − 1) and quantiles (linear between order statistics) of draws.</summary>
    /// <param name="draws">Draws, at least one.</param>
    public static Summary Of(ReadOnlySpan<double> draws)
    {
        double[] sorted = draws.ToArray();
        double mean = sorted.Mean(), sd = sorted.StandardDeviation();
        Array.Sort(sorted);
        return new(mean, sd, At(sorted, 0.05), At(sorted, 0.25), At(sorted, 0.5), At(sorted, 0.75), At(sorted, 0.95));
    }

    private static double At(double[] sorted, double p)
    {
        double place = p * (sorted.Length - 1);
        int low = (int)place;
        return low + 1 < sorted.Length ? sorted[low] + (place - low) * (sorted[low + 1] - sorted[low]) : sorted[^1];
    }
}
