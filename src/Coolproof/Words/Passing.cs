using Coolproof.Evidence;
using MathNet.Numerics.Distributions;

namespace Coolproof.Words;

/// <summary>How likely a quantity stays under a limit, from its quantiles.</summary>
internal static class Passing
{
    static readonly double[] Scores = [Normal.InvCDF(0, 1, 0.05), Normal.InvCDF(0, 1, 0.25), 0, Normal.InvCDF(0, 1, 0.75), Normal.InvCDF(0, 1, 0.95)];

    /// <summary>
    /// Probability that the quantity is below the limit: straight lines between the five quantiles on a normal scale, the outermost ones going on beyond them.
    /// </summary>
    public static double Below(Summary summary, double limit)
    {
        double[] at = [summary.Q05, summary.Q25, summary.Q50, summary.Q75, summary.Q95];
        if (at[4] <= at[0]) return limit > at[2] ? 1 : limit < at[2] ? 0 : 0.5;
        var right = 1;
        while (right < 4 && limit > at[right]) right++;
        var (low, high) = (at[right - 1], at[right]);
        // Two equal quantiles give a step.
        var score = high > low ? Scores[right - 1] + (limit - low) / (high - low) * (Scores[right] - Scores[right - 1]) : Scores[right];
        return Normal.CDF(0, 1, score);
    }
}
