using MathNet.Numerics.Distributions;

namespace Coolproof.Evidence.Earlier;

/// <summary>Two options whose difference on a new day is not what it was on earlier ones.</summary>
/// <param name="A">First option.</param>
/// <param name="B">Second option.</param>
/// <param name="NewK">peak(a) − peak(b) on the can from the new day by itself, mean, K.</param>
/// <param name="EarlierK">The same from the earlier days by themselves.</param>
/// <param name="Sds">How far apart these are, standard deviations of both.</param>
public sealed record Contradiction(string A, string B, double NewK, double EarlierK, double Sds)
{
    // Pairs without any change that are called contradictory, of all pairs of a day together.
    private const double FalseAlarms = 0.05;

    /// <summary>The pairs beyond what one in twenty days without any change shows, of all pairs together (Šidák 1967), the strongest first.</summary>
    /// <param name="alone">The verdict from the new day by itself.</param>
    /// <param name="earlier">The verdict from the earlier days by themselves, at the same conditions.</param>
    internal static IReadOnlyList<Contradiction> Between(Verdict alone, Verdict earlier)
    {
        Contradiction[] both = [.. from a in alone.Pairs
                                   where a.On == ComparedOn.Can
                                   from b in earlier.Pairs
                                   where b.On == ComparedOn.Can && ((Same(a.A, b.A) && Same(a.B, b.B)) || (Same(a.A, b.B) && Same(a.B, b.A)))
                                   select Of(a, Same(a.A, b.A) ? b : b.Turned())];
        double limit = Normal.InvCDF(0, 1, 1 - 0.5 * (1 - Math.Pow(1 - FalseAlarms, 1.0 / Math.Max(both.Length, 1))));
        return [.. both.Where(c => c.Sds > limit).OrderByDescending(c => c.Sds)];
    }

    private static Contradiction Of(PairVerdict now, PairVerdict then) => new(now.A, now.B, now.DifferenceK.Mean, then.DifferenceK.Mean,
        Math.Abs(now.DifferenceK.Mean - then.DifferenceK.Mean) / Math.Sqrt(Square(now.DifferenceK.Sd) + Square(then.DifferenceK.Sd)));

    private static bool Same(string a, string b) => string.Equals(a, b, StringComparison.OrdinalIgnoreCase);

    private static double Square(double x) => x * x;
}
