using Coolproof.Evidence;

namespace Coolproof.Words;

/// <summary>
/// About how many more runs of each option would settle an open pair, if the difference stays as it is and doubt shrinks with the root of the
/// number of runs. A rule of thumb for the next hour, not a plan.
/// </summary>
internal static class RunsToSettle
{
    /// <summary>Above this many more runs, another cure than runs is wanted.</summary>
    public const int Most = 8;

    // Two-sided 97.5 %, and 95 % within the band seen from its nearer edge: normal quantiles.
    const double FirmSds = 1.96;
    const double SameSds = 1.645;

    /// <summary>More runs of each; null when more than <see cref="Most"/>.</summary>
    /// <param name="pair">An open pair.</param>
    /// <param name="runs">Runs of the option that has fewer.</param>
    /// <param name="sameWithinK">Half-width of the "same" band, K.</param>
    public static int? Each(PairVerdict pair, int runs, double sameWithinK)
    {
        var difference = Math.Abs(pair.DifferenceK.Mean);
        var enough = Math.Max(difference / FirmSds, (sameWithinK - difference) / SameSds);
        if (!(enough > 0) || !(pair.DifferenceK.Sd > 0)) return null;
        var times = Math.Pow(pair.DifferenceK.Sd / enough, 2);
        var more = Math.Max(1, Math.Ceiling(runs * (times - 1)));
        return more <= Most ? (int)more : null;
    }
}
