using MathNet.Numerics.Distributions;

namespace Coolproof.Evidence.Words;

/// <summary>
/// About how many more runs of each of two options would settle an open pair if the difference stays as it is: doubt that belongs to the single runs shrinks
/// with their number, what all runs share (the gun, the motor's make-up) does not. A rule of thumb for the next hour, not a plan.
/// </summary>
public static class RunsToSettle
{
    /// <summary>More than this is not said as a number.</summary>
    public const int Most = 6;

    private const double FirmSds = 1.96, SameAt = 0.95;

    /// <summary>More runs of each, 1 to <see cref="Most"/>; null when more are needed.</summary>
    /// <param name="difference">The difference as it stands.</param>
    /// <param name="runsA">Runs of one option, 1 or more.</param>
    /// <param name="runsB">Runs of the other, 1 or more.</param>
    /// <param name="doubt">Shares of the doubt; empty: all of it shrinks.</param>
    /// <param name="sameWithinK">Half-width of the "same" band, K.</param>
    public static int? Each(Summary difference, int runsA, int runsB, IReadOnlyList<DoubtShare> doubt, double sameWithinK)
    {
        double shared = doubt.Where(d => SourceOfDoubt.Of(d.Source).SharedByRuns).Sum(d => d.Share), now = 1.0 / runsA + 1.0 / runsB, mean = Math.Abs(difference.Mean);
        for (int more = 1; more <= Most; more++)
        {
            double left = (1.0 / (runsA + more) + 1.0 / (runsB + more)) / now, sd = difference.Sd * Math.Sqrt(shared + (1 - shared) * left);
            if (mean >= FirmSds * sd || Inside(mean, sd, sameWithinK) >= SameAt)
                return more;
        }
        return null;
    }

    /// <summary>How probable it is that a difference lies within a band about zero.</summary>
    public static double Inside(double mean, double sd, double band) => sd <= 0 ? 1 : Normal.CDF(mean, sd, band) - Normal.CDF(mean, sd, -band);
}
