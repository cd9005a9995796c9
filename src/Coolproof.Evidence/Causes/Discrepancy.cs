using Coolproof.Sampling;
using MathNet.Numerics.Distributions;

namespace Coolproof.Evidence.Causes;

/// <summary>
/// What a part may be off by beyond what the draws say: three bodies stand for six, laps before go that nobody noted, a load that is uneven within a run. Set on evenings
/// driven with the full model, tested on others (docs/why.md).
/// </summary>
internal static class Discrepancy
{
    private const double ShareSd = 0.15, LeastSdK = 0.1, WarmthSdK = 0.4, LoadSdK = 0.7;
    private const long Seed = 0x77687931;

    /// <summary>Adds to each part what it may be off by, its mean kept, and takes it off the rest: in every draw they sum to what they did.</summary>
    /// <param name="parts">By cause, then by draw, K.</param>
    /// <param name="differs">Causes that have a part.</param>
    public static void Add(double[][] parts, bool[] differs)
    {
        double[] rest = parts[(int)Cause.Rest];
        foreach (Cause cause in Enum.GetValues<Cause>().Where(c => c != Cause.Rest && differs[(int)c]))
        {
            double[] part = parts[(int)cause], off = Normals(part.Length, new(Seed, (int)cause));
            // A kelvin of air is a kelvin of the can, whatever the model.
            double share = cause == Cause.Air ? 0 : ShareSd * part.Average(), sd = Math.Sqrt(share * share + Square(Least(cause)));
            for (int d = 0; d < part.Length; d++)
                (part[d], rest[d]) = (part[d] + sd * off[d], rest[d] - sd * off[d]);
        }
    }

    private static double Least(Cause cause) => cause switch { Cause.Warmth => WarmthSdK, Cause.Load => LoadSdK, _ => LeastSdK };

    private static double Square(double x) => x * x;

    // Quantiles in a random order: of mean nothing.
    private static double[] Normals(int count, RandomStream chance)
    {
        double[] values = [.. Enumerable.Range(0, count).Select(i => Normal.InvCDF(0, 1, (i + 0.5) / count))];
        for (int i = count - 1; i > 0; i--)
        {
            int j = chance.NextIndex(i + 1);
            (values[i], values[j]) = (values[j], values[i]);
        }
        return values;
    }
}
