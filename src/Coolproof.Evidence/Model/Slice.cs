using Coolproof.Sampling;

namespace Coolproof.Evidence.Model;

/// <summary>Slice sampling of one number by stepping out and shrinking (Neal 2003, Annals of Statistics 31:705). It leaves the number's density as it is.</summary>
internal static class Slice
{
    private const int MostSteps = 8;

    /// <summary>The next number.</summary>
    /// <param name="at">The present one.</param>
    /// <param name="log">Log density, up to a constant. What it was last called with is what is returned.</param>
    /// <param name="width">First width of the slice, about what the number varies by.</param>
    /// <param name="random">Chance.</param>
    public static double Next(double at, Func<double, double> log, double width, RandomStream random)
    {
        double level = log(at) + Math.Log(1 - random.NextUniform()), low = at - width * random.NextUniform(), high = low + width;
        int left = random.NextIndex(MostSteps), right = MostSteps - 1 - left;
        for (; left > 0 && log(low) > level; left--)
            low -= width;
        for (; right > 0 && log(high) > level; right--)
            high += width;
        while (true)
        {
            double next = low + (high - low) * random.NextUniform();
            if (log(next) >= level)
                return next;
            (low, high) = next < at ? (next, high) : (low, next);
        }
    }
}
