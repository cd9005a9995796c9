using MathNet.Numerics;
using MathNet.Numerics.Distributions;

namespace Coolproof.Sampling.Diagnostics;

/// <summary>
/// Convergence figures of quantities that were drawn by the same chains (Vehtari et al. 2021, section 3 and 4). Keeps its buffers from one
/// quantity to the next; one instance per thread.
/// </summary>
public sealed class ConvergenceDiagnostics
{
    readonly int chains, draws, half, count;
    readonly RankOrder order;
    readonly double[] split, scores, work, scoreOfTwiceRank;
    readonly int[] folded;

    /// <summary>Prepares for quantities of <paramref name="chains"/> × <paramref name="draws"/> numbers.</summary>
    public ConvergenceDiagnostics(int chains, int draws)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(chains);
        ArgumentOutOfRangeException.ThrowIfNegative(draws);
        (this.chains, this.draws, half) = (chains, draws, draws / 2);
        count = 2 * chains * half;
        order = new RankOrder(count);
        (split, scores, work, folded) = (new double[count], new double[count], new double[count], new int[count]);
        // Ties share their mean rank, so ranks are whole or half; the scores of both kinds are wanted again for each quantity (Blom 1958).
        scoreOfTwiceRank = new double[2 * count + 1];
        for (int r = 2; r <= 2 * count; r++)
            scoreOfTwiceRank[r] = Normal.InvCDF(0, 1, (0.5 * r - 0.375) / (count + 0.25));
    }

    /// <summary>All figures of one quantity.</summary>
    /// <param name="values">Chain after chain, draw after draw: chains × draws numbers.</param>
    public QuantityDiagnostics Assess(ReadOnlySpan<double> values)
    {
        if (!TakeFinite(values, out double mean, out double spread))
            return new(mean, spread, double.NaN, double.NaN, double.NaN, double.NaN, double.NaN, double.NaN, double.NaN);
        ReadOnlySpan<int> sorted = order.Sort(split);
        Score(sorted, split);
        (double rHat, double bulk) = EffectiveSampleSize.Of(scores, half);
        double median = 0.5 * (split[sorted[(count - 1) / 2]] + split[sorted[count / 2]]);
        Fold(sorted, median);
        for (int i = 0; i < count; i++)
            work[i] = Math.Abs(split[i] - median);
        Score(folded, work);
        (double foldedRHat, _) = EffectiveSampleSize.Of(scores, half);
        double tail = Smaller(QuantileSize(Quantile(sorted, 0.05)), QuantileSize(Quantile(sorted, 0.95)));
        (double meanSize, double spreadSize, double spreadError) = MomentFigures(mean);
        return new(mean, spread, Math.Max(rHat, foldedRHat), bulk, tail, meanSize, spreadSize, spread / Math.Sqrt(meanSize), spreadError);
    }

    /// <summary>Effective sample size of the estimate of one quantile, at <paramref name="probability"/> in (0, 1); NaN as elsewhere.</summary>
    public double QuantileSampleSize(ReadOnlySpan<double> values, double probability) =>
        TakeFinite(values, out _, out _) ? QuantileSize(Quantile(order.Sort(split), probability)) : double.NaN;

    /// <summary>
    /// A quantile and its Monte Carlo standard error in the quantity's unit: half the width between the order statistics that a beta
    /// distribution of the effective draws puts one standard deviation either side (Vehtari et al. 2021, section 4.4).
    /// </summary>
    public (double Value, double Error) QuantileWithError(ReadOnlySpan<double> values, double probability)
    {
        if (!TakeFinite(values, out _, out _))
            return (double.NaN, double.NaN);
        ReadOnlySpan<int> sorted = order.Sort(split);
        double at = Quantile(sorted, probability), size = QuantileSize(at);
        if (!(size > 0))
            return (at, double.NaN);
        double a = size * probability + 1, b = size * (1 - probability) + 1;
        int low = (int)Math.Clamp(Math.Floor(Beta.InvCDF(a, b, OneSigmaBelow) * count), 1, count);
        int high = (int)Math.Clamp(Math.Ceiling(Beta.InvCDF(a, b, 1 - OneSigmaBelow) * count), 1, count);
        return (at, 0.5 * (split[sorted[high - 1]] - split[sorted[low - 1]]));
    }

    static readonly double OneSigmaBelow = 0.5 * SpecialFunctions.Erfc(Math.Sqrt(0.5));

    /// <summary>Splits each chain in halves (an odd middle draw is left out); false when there is nothing to assess.</summary>
    bool TakeFinite(ReadOnlySpan<double> values, out double mean, out double spread)
    {
        if (values.Length != chains * draws)
            throw new ArgumentException($"{values.Length} numbers for {chains} chains of {draws} draws.", nameof(values));
        (mean, spread) = (double.NaN, double.NaN);
        foreach (double value in values)
        {
            if (!double.IsFinite(value))
                return false;
        }

        if (values.Length == 0)
            return false;
        (mean, spread) = Moments(values);
        for (int chain = 0; chain < chains; chain++)
        {
            ReadOnlySpan<double> whole = values.Slice(chain * draws, draws);
            whole[..half].CopyTo(split.AsSpan(2 * chain * half));
            whole[(draws - half)..].CopyTo(split.AsSpan((2 * chain + 1) * half));
        }

        return half >= 4 && split.AsSpan().ContainsAnyExcept(split[0]);
    }

    static (double Mean, double Spread) Moments(ReadOnlySpan<double> values)
    {
        double mean = 0, squares = 0;
        foreach (double value in values)
            mean += value;
        mean /= values.Length;
        foreach (double value in values)
            squares += (value - mean) * (value - mean);
        return (mean, Math.Sqrt(squares / (values.Length - 1)));
    }

    /// <summary>Normal scores of the mean ranks of <paramref name="values"/>, given their order.</summary>
    void Score(ReadOnlySpan<int> sorted, ReadOnlySpan<double> values)
    {
        for (int from = 0; from < sorted.Length;)
        {
            double value = values[sorted[from]];
            int to = from + 1;
            while (to < sorted.Length && values[sorted[to]] == value)
                to++;
            // Ranks from + 1 … to, whose mean is (from + 1 + to)/2.
            double score = scoreOfTwiceRank[from + 1 + to];
            for (; from < to; from++)
                scores[sorted[from]] = score;
        }
    }

    /// <summary>The order of the distances from the median, by merging both sides outwards.</summary>
    void Fold(ReadOnlySpan<int> sorted, double median)
    {
        int right = 0;
        while (right < sorted.Length && split[sorted[right]] < median)
            right++;
        int left = right - 1;
        for (int i = 0; i < folded.Length; i++)
        {
            bool takeRight = left < 0 || (right < sorted.Length && split[sorted[right]] - median <= median - split[sorted[left]]);
            folded[i] = takeRight ? sorted[right++] : sorted[left--];
        }
    }

    /// <summary>Linear between order statistics (type 7 of Hyndman and Fan 1996).</summary>
    double Quantile(ReadOnlySpan<int> sorted, double probability)
    {
        double place = probability * (count - 1);
        int below = (int)place;
        double low = split[sorted[below]], high = split[sorted[Math.Min(below + 1, count - 1)]];
        return low + (place - below) * (high - low);
    }

    double QuantileSize(double quantile)
    {
        for (int i = 0; i < count; i++)
            work[i] = split[i] <= quantile ? 1 : 0;
        return EffectiveSampleSize.Of(work, half).Size;
    }

    (double MeanSize, double SpreadSize, double SpreadError) MomentFigures(double mean)
    {
        split.CopyTo(work, 0);
        double meanSize = EffectiveSampleSize.Of(work, half).Size;
        double second = 0, fourth = 0;
        for (int i = 0; i < count; i++)
        {
            double square = (split[i] - mean) * (split[i] - mean);
            work[i] = square;
            second += square / count;
            fourth += square * square / count;
        }

        double size = EffectiveSampleSize.Of(work, half).Size;
        // The delta method: var(s) = var(s²)/(4 s²).
        return (meanSize, size, Math.Sqrt((fourth - second * second) / size / second / 4));
    }

    /// <summary>The smaller of two; of a side that does not vary (heavy ties) the other.</summary>
    static double Smaller(double a, double b) => double.IsNaN(a) ? b : double.IsNaN(b) ? a : Math.Min(a, b);
}
