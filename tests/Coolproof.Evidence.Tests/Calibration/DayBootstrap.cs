using Coolproof.Sampling;

namespace Coolproof.Evidence.Tests.Calibration;

/// <summary>Sampling errors by drawing whole days again with replacement: what lies within one day is not independent.</summary>
internal static class DayBootstrap
{
    private const int Repeats = 1000;

    /// <summary>A figure with its standard error and its one-sided 95 % limits.</summary>
    /// <param name="Value">The figure itself.</param>
    /// <param name="Error">Standard error.</param>
    /// <param name="Low">5 % point.</param>
    /// <param name="High">95 % point.</param>
    internal readonly record struct Figure(double Value, double Error, double Low, double High);

    /// <summary>A figure that is a function of sums over days.</summary>
    /// <param name="days">Sums of each day, all of one length.</param>
    /// <param name="figure">From the summed-up sums to the figure; NaN where it has none.</param>
    /// <param name="seed">Seed.</param>
    public static Figure OfSums(IReadOnlyList<double[]> days, Func<double[], double> figure, long seed)
    {
        if (days.Count == 0)
            return new(double.NaN, double.NaN, double.NaN, double.NaN);
        double[] sums = new double[days[0].Length];
        return Of(days.Count, chosen =>
        {
            Array.Clear(sums);
            foreach (int d in chosen)
                for (int i = 0; i < sums.Length; i++)
                    sums[i] += days[d][i];
            return figure(sums);
        }, Repeats, seed);
    }

    /// <summary>Any figure of a choice of days.</summary>
    /// <param name="days">Number of days.</param>
    /// <param name="figure">From chosen places of days to the figure.</param>
    /// <param name="repeats">Times the days are drawn again.</param>
    /// <param name="seed">Seed.</param>
    public static Figure Of(int days, Func<int[], double> figure, int repeats, long seed)
    {
        double value = figure([.. Enumerable.Range(0, days)]);
        RandomStream chance = new(seed);
        int[] chosen = new int[days];
        List<double> found = [];
        for (int i = 0; i < repeats; i++)
        {
            for (int d = 0; d < days; d++)
                chosen[d] = chance.NextIndex(days);
            double again = figure(chosen);
            if (double.IsFinite(again))
                found.Add(again);
        }
        if (found.Count < 2)
            return new(value, double.NaN, double.NaN, double.NaN);
        found.Sort();
        double mean = found.Average(), error = Math.Sqrt(found.Sum(x => (x - mean) * (x - mean)) / (found.Count - 1));
        return new(value, error, found[(int)(0.05 * (found.Count - 1))], found[(int)(0.95 * (found.Count - 1))]);
    }
}
