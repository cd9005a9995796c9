using Coolproof.Evidence.Forecasts;
using Coolproof.Sampling;

namespace Coolproof.Advice.Gearing;

/// <summary>
/// How far the lap's heat ratios are trusted: logarithms times a scale of about 1, one for gearing and one for timing. Where the notebook was driven with several gearings, what its temperatures say
/// of the slope meets the lap's.
/// </summary>
internal static class HeatTrust
{
    /// <summary>Log-heat ratios of a lap are off by about a quarter for gearing, more for timing, which motors answer differently. Common practice, no source.</summary>
    public const double GearingSd = 0.25, TimingSd = 0.4;

    // Priors of the slopes in the joint model (docs/model.md): what the temperatures add to them is what they know.
    private const double GearingPriorMean = 2.0, GearingPriorSd = 0.7, TimingPriorMean = 0.01, TimingPriorSd = 0.01;

    /// <summary>A scale for each draw.</summary>
    /// <param name="slopes">Slopes that the temperatures leave; null: one gearing only.</param>
    /// <param name="lapSlope">The lap's own slope.</param>
    /// <param name="timing">Whether it is about timing.</param>
    /// <param name="draws">How many.</param>
    /// <param name="seed">Seed.</param>
    public static double[] Scales(IReadOnlyList<double>? slopes, double lapSlope, bool timing, int draws, long seed)
    {
        double sd = timing ? TimingSd : GearingSd, mean = 1, precision = 1 / (sd * sd);
        if (slopes is { Count: > 2 } && Math.Abs(lapSlope) > 1e-6)
        {
            (double priorMean, double priorSd) = timing ? (TimingPriorMean, TimingPriorSd) : (GearingPriorMean, GearingPriorSd);
            double middle = slopes.Average(), variance = slopes.Sum(s => (s - middle) * (s - middle)) / (slopes.Count - 1), prior = 1 / (priorSd * priorSd);
            double known = Math.Max(1 / variance - prior, 0);
            if (known > 0)
            {
                double said = (middle / variance - priorMean * prior) / known, weight = lapSlope * lapSlope * known;
                (mean, precision) = ((precision + weight * said / lapSlope) / (precision + weight), precision + weight);
            }
        }
        double[] z = new double[draws];
        new RandomStream(seed, timing ? 0x7131 : 0x6ea7).FillNormal(z);
        return [.. z.Select(x => mean + x / Math.Sqrt(precision))];
    }

    /// <summary>The slope of the lap's log heat by its copper's share: from a heat ratio and what it was changed by.</summary>
    public static double Slope(RaceHeat ratio, double copperShare, double by) => Math.Log(ratio.Factor(copperShare)) / by;
}
