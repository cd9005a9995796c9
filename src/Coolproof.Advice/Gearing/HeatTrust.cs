using Coolproof.Sampling;
using MathNet.Numerics.Statistics;

namespace Coolproof.Advice.Gearing;

/// <summary>What temperatures of several gearings, or timings, say by themselves of how log heat goes with it: normal.</summary>
/// <param name="Middle">Mean of the slopes that the joint model leaves, its prior in.</param>
/// <param name="Sd">Their sd.</param>
/// <param name="Said">What the readings alone say.</param>
/// <param name="Known">Its precision, above 0.</param>
internal sealed record SlopeTold(double Middle, double Sd, double Said, double Known)
{
    // Priors of the slopes in the joint model (docs/model.md): what the temperatures add to them is what they know.
    private const double GearingPriorMean = 2.0, GearingPriorSd = 0.7, TimingPriorMean = 0.01, TimingPriorSd = 0.01;

    // A normal's square passes this once in a hundred.
    private const double MostSquare = 6.635;

    /// <summary>Takes the joint model's prior off its slopes; null where no more than the prior is left, or there is one gearing only.</summary>
    /// <param name="slopes">Slopes that the joint model leaves, draw by draw; null: one gearing only.</param>
    /// <param name="timing">Whether it is about timing.</param>
    public static SlopeTold? Of(IReadOnlyList<double>? slopes, bool timing)
    {
        if (slopes is not { Count: > 2 })
            return null;
        (double priorMean, double priorSd) = timing ? (TimingPriorMean, TimingPriorSd) : (GearingPriorMean, GearingPriorSd);
        double middle = slopes.Average(), sd = slopes.StandardDeviation(), prior = 1 / (priorSd * priorSd), known = 1 / (sd * sd) - prior;
        return known > 0 ? new(middle, sd, (middle / (sd * sd) - priorMean * prior) / known, known) : null;
    }

    /// <summary>Whether slopes that draws of motor and lap have, each trusted to an sd of its power, are so far from what was told that it comes about less than once in a hundred.</summary>
    /// <param name="lapSlopes">Slopes of the draws.</param>
    /// <param name="trustSd">Sd of the power that a lap's ratios are taken to.</param>
    public bool Contradicts(IReadOnlyList<double> lapSlopes, double trustSd)
    {
        double mean = lapSlopes.Average(), off = Said - mean;
        return off * off > MostSquare * (1 / Known + lapSlopes.Variance() + trustSd * trustSd * mean * mean);
    }

    /// <summary>Log of how well a lap's slope goes with what was told, up to a constant.</summary>
    /// <param name="lapSlope">The lap's slope.</param>
    /// <param name="trustSd">Sd of the power that its ratios are taken to.</param>
    public double LogWeight(double lapSlope, double trustSd)
    {
        double variance = 1 / Known + trustSd * trustSd * lapSlope * lapSlope, off = Said - lapSlope;
        return -0.5 * (off * off / variance + Math.Log(variance));
    }
}

/// <summary>
/// How far the lap's heat ratios are trusted: logarithms times a scale of about 1, one for gearing and one for timing. Where the notebook was driven with several gearings, what its temperatures say
/// of the slope meets the lap's.
/// </summary>
internal static class HeatTrust
{
    /// <summary>Log-heat ratios of a lap are off by about a quarter for gearing, more for timing, which motors answer differently. Common practice, no source.</summary>
    public const double GearingSd = 0.25, TimingSd = 0.4;

    /// <summary>A scale for each draw: together with the lap's slope in that draw, the slope that temperatures and lap leave.</summary>
    /// <param name="told">What the temperatures say; null: nothing.</param>
    /// <param name="slopes">Slopes that the joint model leaves, draw by draw; null: one gearing only.</param>
    /// <param name="lapSlopes">The lap's own slope, draw by draw; 0 where nothing else is asked about.</param>
    /// <param name="timing">Whether it is about timing.</param>
    /// <param name="seed">Seed.</param>
    public static double[] Scales(SlopeTold? told, IReadOnlyList<double>? slopes, double[] lapSlopes, bool timing, long seed)
    {
        double sd = timing ? TimingSd : GearingSd;
        if (told is not null && slopes is not null)
            return [.. lapSlopes.Select((lap, draw) => Met(lap, sd, told, (slopes[draw] - told.Middle) / told.Sd))];
        double[] z = new double[lapSlopes.Length];
        new RandomStream(seed, timing ? 0x7131 : 0x6ea7).FillNormal(z);
        return [.. z.Select(x => 1 + sd * x)];
    }

    // What is left open keeps the draw's own place among the temperatures' slopes: there a steeper slope goes with less heat at the notebook's gearing, or more.
    private static double Met(double lapSlope, double sd, SlopeTold told, double place)
    {
        if (Math.Abs(lapSlope) < 1e-6)
            return 1;
        double weight = lapSlope * lapSlope * told.Known, precision = 1 / (sd * sd) + weight;
        return (1 / (sd * sd) + weight * told.Said / lapSlope) / precision + place / Math.Sqrt(precision) * Math.Sign(lapSlope);
    }
}
