namespace Coolproof.Traces.Load;

/// <summary>What a logged current says of a drive.</summary>
/// <param name="MeanA">Mean, A; what brakes return counts below 0.</param>
/// <param name="RmsA">Root mean square of what was logged, A: a logger that is slower than the throttle shows less than there was.</param>
/// <param name="ChargeMah">Charge drawn, mAh; where nothing was logged the mean is taken.</param>
/// <param name="SeenShare">Share of the drive that was logged, 0 to 1.</param>
public sealed record DriveCurrent(double MeanA, double RmsA, double ChargeMah, double SeenShare)
{
    /// <summary>Least share of a drive that must have been logged.</summary>
    public const double LeastSeen = 0.95;

    // Nothing for longer than this is a gap, s: loggers that write once a second may miss one row.
    private const double GapS = 2.5;
    private const double CoulombPerMah = 3.6;

    /// <summary>The current over a drive; null where too little of it was logged.</summary>
    /// <param name="atS">Times, s, rising.</param>
    /// <param name="amperes">Currents then, A; what is no number is left out. Where what is drawn is written below 0 it is turned round.</param>
    /// <param name="fromS">Go, s.</param>
    /// <param name="toS">End of the drive, s.</param>
    /// <exception cref="ArgumentException">Times and currents differ in number, or the drive has no length.</exception>
    public static DriveCurrent? Of(ReadOnlySpan<double> atS, ReadOnlySpan<double> amperes, double fromS, double toS)
    {
        if (atS.Length != amperes.Length) throw new ArgumentException($"expected as many currents as times: {atS.Length} times, {amperes.Length} currents", nameof(amperes));
        if (!(toS > fromS)) throw new ArgumentException($"expected a drive that ends after it began: from {fromS} to {toS} s", nameof(toS));
        double seen = 0, sum = 0, squares = 0, lastAt = double.NaN, last = double.NaN;
        for (int i = 0; i < atS.Length; i++)
        {
            if (double.IsNaN(amperes[i])) continue;
            double step = atS[i] - lastAt, from = Math.Max(lastAt, fromS), to = Math.Min(atS[i], toS);
            if (step <= GapS && to > from)
            {
                // Straight from value to value, cut at the ends of the drive.
                double slope = (amperes[i] - last) / step, a = last + slope * (from - lastAt), b = last + slope * (to - lastAt);
                seen += to - from;
                sum += 0.5 * (a + b) * (to - from);
                squares += (a * a + a * b + b * b) / 3 * (to - from);
            }
            (lastAt, last) = (atS[i], amperes[i]);
        }
        double share = seen / (toS - fromS), mean = Math.Abs(sum / seen);
        return share >= LeastSeen ? new(mean, Math.Sqrt(squares / seen), mean * (toS - fromS) / CoulombPerMah, share) : null;
    }
}
