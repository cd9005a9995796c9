using MathNet.Numerics;

namespace Coolproof.Sampling.Calibration;

/// <summary>
/// A band that the cumulative counts of uniform ranks leave nowhere with the stated probability (Säilynoja, Bürkner and Vehtari 2022,
/// Stat. Comput. 32:32). Exact for ranks: the chance of staying inside is summed over all paths of the counts.
/// </summary>
public sealed class EcdfBand
{
    readonly double[] logFactorial;

    EcdfBand(int replicates, int bins)
    {
        (Replicates, Bins) = (replicates, bins);
        (Lower, Upper) = (new int[bins], new int[bins]);
        logFactorial = new double[replicates + 1];
        for (int i = 0; i <= replicates; i++)
            logFactorial[i] = SpecialFunctions.FactorialLn(i);
    }

    /// <summary>Ranks per quantity, N.</summary>
    public int Replicates { get; }

    /// <summary>Possible ranks, 0 to bins − 1.</summary>
    public int Bins { get; }

    /// <summary>Least count of ranks ≤ j still inside, for each j.</summary>
    public int[] Lower { get; }

    /// <summary>Largest count of ranks ≤ j still inside, for each j.</summary>
    public int[] Upper { get; }

    /// <summary>The probability with which uniform ranks stay inside everywhere; at least what was asked for, counts being whole.</summary>
    public double Coverage { get; private set; }

    /// <summary>The narrowest band, of equal tail probability at every rank, that keeps uniform ranks with probability <paramref name="coverage"/>.</summary>
    /// <param name="replicates">Ranks per quantity.</param>
    /// <param name="bins">Possible ranks.</param>
    /// <param name="coverage">Simultaneous coverage, in (0, 1).</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static EcdfBand For(int replicates, int bins, double coverage)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(replicates);
        ArgumentOutOfRangeException.ThrowIfLessThan(bins, 2);
        if (coverage is not (> 0 and < 1))
            throw new ArgumentOutOfRangeException(nameof(coverage), coverage, "Coverage lies between 0 and 1.");
        EcdfBand band = new(replicates, bins);
        // The tail probability at each rank lies between all of the allowance and its even split (Bonferroni).
        double wide = (1 - coverage) / bins, narrow = 1 - coverage;
        for (int i = 0; i < 40 && narrow > wide * 1.0001; i++)
        {
            double middle = Math.Sqrt(wide * narrow);
            if (band.SetTails(middle) >= coverage)
                wide = middle;
            else
                narrow = middle;
        }

        band.SetTails(wide);
        return band;
    }

    /// <summary>The first rank at which the counts leave the band, or null.</summary>
    /// <param name="ranks">N ranks from 0 to bins − 1.</param>
    /// <exception cref="ArgumentException">The number of ranks or one of them is wrong.</exception>
    public int? Leaves(ReadOnlySpan<int> ranks)
    {
        if (ranks.Length != Replicates)
            throw new ArgumentException($"{ranks.Length} ranks for a band of {Replicates}.", nameof(ranks));
        int[] counts = new int[Bins];
        foreach (int rank in ranks)
        {
            if (rank < 0 || rank >= Bins)
                throw new ArgumentException($"Rank {rank} lies outside 0 to {Bins - 1}.", nameof(ranks));
            counts[rank]++;
        }

        for (int j = 0, sum = 0; j < Bins; j++)
        {
            sum += counts[j];
            if (sum < Lower[j] || sum > Upper[j])
                return j;
        }

        return null;
    }

    double SetTails(double tail)
    {
        for (int j = 0; j < Bins; j++)
        {
            double p = (j + 1.0) / Bins, below = 0;
            (Lower[j], Upper[j]) = (-1, Replicates);
            for (int k = 0; k <= Replicates; k++)
            {
                below += Binomial(Replicates, k, p);
                if (Lower[j] < 0 && below > tail / 2)
                    Lower[j] = k;
                if (below >= 1 - tail / 2)
                {
                    Upper[j] = k;
                    break;
                }
            }

            Lower[j] = Math.Clamp(Lower[j], 0, Upper[j]);
        }

        (Lower[^1], Upper[^1]) = (Replicates, Replicates);
        return Coverage = ProbabilityInside();
    }

    /// <summary>Counts grow by binomial steps: of what is still out, a share 1/(bins left) falls on the next rank.</summary>
    double ProbabilityInside()
    {
        double[] now = new double[Replicates + 1], next = new double[Replicates + 1];
        now[0] = 1;
        int from = 0, to = 0;
        for (int j = 0; j < Bins - 1; j++)
        {
            Array.Clear(next);
            double share = 1.0 / (Bins - j);
            for (int had = from; had <= to; had++)
            {
                for (int has = Math.Max(had, Lower[j]); has <= Upper[j] && now[had] > 0; has++)
                    next[has] += now[had] * Binomial(Replicates - had, has - had, share);
            }

            (now, next) = (next, now);
            (from, to) = (Lower[j], Upper[j]);
        }

        return now[from..(to + 1)].Sum();
    }

    double Binomial(int n, int k, double p) =>
        p >= 1 ? (k == n ? 1 : 0) : Math.Exp(logFactorial[n] - logFactorial[k] - logFactorial[n - k] + k * Math.Log(p) + (n - k) * Math.Log(1 - p));
}
