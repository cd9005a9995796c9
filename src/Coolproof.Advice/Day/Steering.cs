using Coolproof.Advice.Orders;
using Coolproof.Evidence;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;

namespace Coolproof.Advice.Day;

/// <summary>Whether to drive on.</summary>
public enum GoOn
{
    /// <summary>The main difference is settled: cooler, or the same.</summary>
    Settled,
    /// <summary>Drive on: it can be settled in the runs that are left.</summary>
    DriveOn,
    /// <summary>What is left of the day will probably not settle it; more runs still narrow it.</summary>
    NotToday,
    /// <summary>No run is left.</summary>
    DayOver,
}

/// <summary>What one more run of an option would bring.</summary>
/// <param name="Option">Name.</param>
/// <param name="NarrowsK">How much narrower the 90 % interval of the main difference would get, K.</param>
public readonly record struct NextRun(string Option, double NarrowsK);

/// <summary>What to do after a reading.</summary>
/// <param name="Call">Go on or stop.</param>
/// <param name="Best">Most probable coolest option; null with a single option.</param>
/// <param name="Rival">Its closest rival.</param>
/// <param name="DifferenceK">rival − best at fair conditions: middle, K.</param>
/// <param name="IntervalK">Width of its 90 % interval, K.</param>
/// <param name="ProbabilityBestCooler">How probable it is that the best is cooler than the rival.</param>
/// <param name="Next">What each option's next run would bring, best first; options without a run come first of all, the one still fitted last.</param>
/// <param name="Unseen">Options of the plan without a reading that counts.</param>
/// <param name="RunsLeft">Runs that still fit.</param>
/// <param name="IntervalThenK">Width when those have been driven as advised, K.</param>
/// <param name="ChanceSettled">How probable it is that the main difference is settled then.</param>
/// <param name="Rough">The judging was only rough: then nothing counts as settled.</param>
public sealed record DayAdvice(
    GoOn Call, string? Best, string? Rival, double DifferenceK, double IntervalK, double ProbabilityBestCooler, IReadOnlyList<NextRun> Next,
    IReadOnlyList<string> Unseen, int RunsLeft, double IntervalThenK, double ChanceSettled, bool Rough);

/// <summary>
/// Go on or stop, and which option next: the options' fair peaks as they are believed now, and what one more run of each would tell of the main difference.
/// A run tells of its option against all others driven with the same gun and load; what it is off by follows <see cref="RunNoise"/>. Pure: the same beliefs
/// give the same advice.
/// </summary>
public static class Steering
{
    private const double NinetyPercent = 2 * 1.6448536269514722, FirmAt = 0.975, FirmSds = 1.9599639845400545, SameAt = 0.95, Worthwhile = 0.2;

    /// <summary>The advice.</summary>
    /// <param name="verdict">What is believed now; null: nothing was read yet.</param>
    /// <param name="planned">Options of the plan.</param>
    /// <param name="runsLeft">Runs that still fit: until the end, until dark, until it rains.</param>
    /// <param name="noise">What runs are off by.</param>
    /// <param name="sameWithinK">Half-width of the "same" band, K.</param>
    /// <param name="fitted">The option of the last run, still on the motor: its next run would share what its mounting is off by and tells little new, so another comes first.</param>
    public static DayAdvice After(
        QuickVerdict? verdict, IReadOnlyList<string> planned, int runsLeft, RunNoise noise, double sameWithinK = 2, string? fitted = null)
    {
        string[] unseen = [.. planned.Where(p => verdict is null || !verdict.Options.Contains(p, StringComparer.OrdinalIgnoreCase))];
        if (verdict?.Main() is not { } main)
            return new(runsLeft > 0 ? GoOn.DriveOn : GoOn.DayOver, null, null, 0, double.NaN, double.NaN, [.. unseen.Select(o => new NextRun(o, double.NaN))], unseen, runsLeft, double.NaN, double.NaN, verdict?.Rough ?? false);
        double[] difference = verdict.Difference(main.Rival, main.Best);
        double mean = difference.Average(), cooler = (double)difference.Count(d => d > 0) / difference.Length, same = (double)difference.Count(d => Math.Abs(d) <= sameWithinK) / difference.Length;
        Matrix<double> believed = Covariance(verdict);
        double sd = Sd(believed, main);
        NextRun[] next = [.. verdict.Options.Select((o, k) => new NextRun(o, NinetyPercent * (sd - Sd(Told(believed, k, noise), main))))
            .OrderBy(n => string.Equals(n.Option, fitted, StringComparison.OrdinalIgnoreCase)).ThenByDescending(n => n.NarrowsK)];
        Matrix<double> then = believed;
        for (int run = 0; run < runsLeft - unseen.Length; run++)
            then = Enumerable.Range(0, verdict.Options.Count).Select(k => Told(then, k, noise)).MinBy(m => Sd(m, main))!;
        double sdThen = Sd(then, main), settled = ChanceSettled(mean, sd, sdThen, sameWithinK);
        bool now = !verdict.Rough && unseen.Length == 0 && (cooler >= FirmAt || 1 - cooler >= FirmAt || same >= SameAt);
        GoOn call = now ? GoOn.Settled : runsLeft <= 0 ? GoOn.DayOver : settled < Worthwhile && unseen.Length == 0 ? GoOn.NotToday : GoOn.DriveOn;
        return new(call, verdict.Options[main.Best], verdict.Options[main.Rival], mean, NinetyPercent * sd, cooler,
            [.. unseen.Select(o => new NextRun(o, double.NaN)), .. next], unseen, runsLeft, NinetyPercent * sdThen, now ? 1 : settled, verdict.Rough);
    }

    // The mean will wander by what is still to be learnt: N(mean, sd² − then²). Settled where it ends firm on either side, or surely within the band.
    private static double ChanceSettled(double mean, double sd, double then, double sameWithinK)
    {
        double wander = Math.Sqrt(Math.Max(sd * sd - then * then, 0)), firm = FirmSds * then, inside = Math.Max(sameWithinK - FirmSds * then, 0);
        if (wander < 1e-9)
            return Math.Abs(mean) >= firm || (inside > 0 && Math.Abs(mean) <= inside) ? 1 : 0;
        double Within(double half) => Normal.CDF(mean, wander, half) - Normal.CDF(mean, wander, -half);
        return Math.Clamp(1 - Within(firm) + Within(Math.Min(inside, firm)), 0, 1);
    }

    private static double Sd(Matrix<double> covariance, (int Best, int Rival) main) => Math.Sqrt(Math.Max(
        covariance[main.Best, main.Best] + covariance[main.Rival, main.Rival] - 2 * covariance[main.Best, main.Rival], 0));

    // One more run of option k shows its peak against the mean of all, with the noise of a run.
    private static Matrix<double> Told(Matrix<double> covariance, int k, RunNoise noise)
    {
        int n = covariance.RowCount;
        Vector<double> seen = Vector<double>.Build.Dense(n, i => (i == k ? 1.0 : 0.0) - 1.0 / n), gain = covariance * seen;
        double variance = seen * gain + noise.RunK * noise.RunK + noise.MountingK * noise.MountingK + noise.CarryK * noise.CarryK;
        return covariance - gain.OuterProduct(gain) / variance;
    }

    private static Matrix<double> Covariance(QuickVerdict verdict)
    {
        double[] means = [.. verdict.CanC.Select(c => c.Average())];
        return Matrix<double>.Build.Dense(means.Length, means.Length, (a, b) =>
            verdict.CanC[a].Zip(verdict.CanC[b], (x, y) => (x - means[a]) * (y - means[b])).Sum() / (verdict.CanC[a].Length - 1));
    }
}
