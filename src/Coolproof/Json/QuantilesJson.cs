using Coolproof.Evidence;

namespace Coolproof.Json;

/// <summary>5, 50 and 95 %.</summary>
internal sealed record QuantilesJson(double Q05, double Q50, double Q95)
{
    /// <summary>Of a summary, rounded to decimals; what is no number is 0.</summary>
    public static QuantilesJson Of(Summary summary, int decimals = 2)
    {
        return new(R(summary.Q05), R(summary.Q50), R(summary.Q95));

        double R(double value) => AdviceJson.Rounded(value, decimals) ?? 0;
    }
}
