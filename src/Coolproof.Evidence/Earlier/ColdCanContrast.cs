using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;

namespace Coolproof.Evidence.Earlier;

/// <summary>
/// How much more a gun reads on new days than on earlier ones, over what its cans should have been: days and kinds of cans as fixed effects, least squares, the mean of the new days less that of the others.
/// </summary>
/// <param name="Days">Earlier days in it.</param>
/// <param name="Cans">Cans read on the new days that tell.</param>
/// <param name="BeforeK">Mean over what the cans should have been on the earlier days, K.</param>
/// <param name="DifferenceK">New days less earlier ones, K.</param>
/// <param name="Sd">Its standard deviation, K.</param>
/// <param name="Chance">Chance of one this large where the gun reads as before.</param>
internal sealed record ColdCanContrast(int Days, int Cans, double BeforeK, double DifferenceK, double Sd, double Chance)
{
    // What the scatter of few cans is held against: so many cans' worth of the usual one (the full model's own days; docs/decisions/earlier-days.md).
    private const double UsualScatterK = 1.2, UsualWeight = 3;

    // Degrees of freedom of the errors: a twentieth of the shots goes five times as far as the others.
    private const double Tails = 4;
    private const int Rounds = 30;
    private const double Estimable = 1e-6;

    /// <summary>The contrast of one gun's cans; null where the days share no kind of can, or one side has none.</summary>
    /// <param name="cans">Cans of one gun.</param>
    /// <param name="dayK">What a day's air as noted and the like put all of its cans off by together, K.</param>
    public static ColdCanContrast? Of(IReadOnlyList<ColdCan> cans, double dayK)
    {
        string[] fresh = DaysOf(cans, true), old = DaysOf(cans, false), kinds = [.. cans.Select(c => c.Kind).Distinct(StringComparer.OrdinalIgnoreCase)];
        if (fresh.Length == 0 || old.Length == 0)
            return null;
        string[] days = [.. fresh, .. old];
        Matrix<double> design = Matrix<double>.Build.Dense(cans.Count, days.Length + kinds.Length - 1, (i, j) => j < days.Length
            ? (cans[i].Day == days[j] ? 1 : 0)
            : (string.Equals(cans[i].Kind, kinds[j - days.Length + 1], StringComparison.OrdinalIgnoreCase) ? 1 : 0));
        Vector<double> over = Vector<double>.Build.Dense(cans.Count, i => cans[i].OverK);
        Vector<double> asked = Vector<double>.Build.Dense(design.ColumnCount, j => j < fresh.Length ? 1.0 / fresh.Length : j < days.Length ? -1.0 / old.Length : 0);
        Matrix<double> inverse = design.PseudoInverse();
        if ((design.Transpose() * (inverse.Transpose() * asked) - asked).L2Norm() > Estimable)
            return null;
        double free = cans.Count - design.Rank();
        (Vector<double> effects, double scaleK) = Robust(design, over, inverse * over, free);
        Vector<double> weights = inverse.Transpose() * asked;
        double scatter = scaleK * scaleK * (Tails + 3) / (Tails + 1), difference = asked.DotProduct(effects);
        double sd = Math.Sqrt(scatter * weights.DotProduct(weights) + dayK * dayK * (1.0 / fresh.Length + 1.0 / old.Length));
        return new(old.Length, cans.Count(c => c.IsNew), cans.Where(c => !c.IsNew).Average(c => c.OverK), difference, sd,
            2 * StudentT.CDF(0, 1, free + UsualWeight, -Math.Abs(difference) / sd));
    }

    // Shots that go wild count little: t-distributed errors, by expectation and maximisation (Lange, Little and Taylor 1989).
    private static (Vector<double> Effects, double ScaleK) Robust(Matrix<double> design, Vector<double> over, Vector<double> effects, double free)
    {
        double squared = UsualScatterK * UsualScatterK;
        for (int round = 0; round < Rounds; round++)
        {
            Vector<double> miss = over - design * effects;
            Vector<double> weights = miss.Map(m => (Tails + 1) / (Tails + m * m / squared));
            squared = (miss.PointwiseMultiply(miss).DotProduct(weights) + UsualWeight * UsualScatterK * UsualScatterK) / (free + UsualWeight);
            Vector<double> roots = weights.PointwiseSqrt();
            effects = Matrix<double>.Build.DiagonalOfDiagonalVector(roots).Multiply(design).PseudoInverse() * over.PointwiseMultiply(roots);
        }
        return (effects, Math.Sqrt(squared));
    }

    private static string[] DaysOf(IReadOnlyList<ColdCan> cans, bool fresh) => [.. cans.Where(c => c.IsNew == fresh).Select(c => c.Day).Distinct()];
}
