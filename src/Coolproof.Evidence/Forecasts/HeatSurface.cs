namespace Coolproof.Evidence.Forecasts;

/// <summary>
/// A quantity over copper and iron heat, drawn through a few points: polynomials through Chebyshev points in the logarithms of all heat and of copper over iron.
/// Beyond the tests' heat the doubt of a forecast begins to grow, which bends every temperature there: so below and above it each have their own. How near it comes is shown in the tests.
/// </summary>
internal sealed class HeatSurface
{
    private const int Heats = 5, Shares = 4, HalfPoints = Heats * Shares;

    /// <summary>Points in all.</summary>
    public const int Points = 2 * HalfPoints;

    // Narrower than this no range is: all points would fall on one.
    private const double LeastWidth = 0.01;

    private static readonly double[] HeatNodes = Chebyshev(Heats), ShareNodes = Chebyshev(Shares), HeatWeights = Barycentric(Heats), ShareWeights = Barycentric(Shares);

    private readonly double _copperShare;
    private readonly double _most;
    private readonly (double Middle, double Half) _ratio, _less, _more;

    /// <summary>A surface over a range of heats.</summary>
    /// <param name="heats">The heats.</param>
    /// <param name="copperShare">Copper's share of the tests' heat.</param>
    /// <param name="tooHot">Whether a heat is beyond all that is asked about. Where copper begins to run away nothing can be drawn through few points: there the surface ends.</param>
    public HeatSurface(ReadOnlySpan<RaceHeat> heats, double copperShare, Func<RaceHeat, bool> tooHot)
    {
        _copperShare = copperShare;
        (double Least, double Most) all = (0, 0), ratio = (double.PositiveInfinity, double.NegativeInfinity);
        foreach (RaceHeat heat in heats)
        {
            (double f, double r) = Place(heat);
            (all, ratio) = ((Math.Min(all.Least, f), Math.Max(all.Most, f)), (Math.Min(ratio.Least, r), Math.Max(ratio.Most, r)));
        }
        _most = Most(all.Most, ratio.Least, tooHot);
        all = (Math.Min(all.Least, _most), _most);
        (_ratio, _less, _more) = (Range(ratio), Range((all.Least, Math.Min(all.Most, 0))), Range((0, all.Most)));
        (HasLess, HasMore) = (all.Least < 0, all.Most > 0);

        static (double, double) Range((double Least, double Most) r) => (0.5 * (r.Least + r.Most), Math.Max(0.5 * (r.Most - r.Least), LeastWidth / 2));
    }

    private bool HasLess { get; }

    private bool HasMore { get; }

    /// <summary>Whether any heat is read off by this point.</summary>
    public bool Uses(int point) => point < HalfPoints ? HasLess || !HasMore : HasMore;

    /// <summary>The heat at a point.</summary>
    public RaceHeat At(int point)
    {
        (double middle, double half) = point < HalfPoints ? _less : _more;
        return Of(middle + half * HeatNodes[point % HalfPoints / Shares], _ratio.Middle + _ratio.Half * ShareNodes[point % Shares]);
    }

    /// <summary>Weights of the points' values at a heat, or where the surface ends before it.</summary>
    public void Weigh(RaceHeat heat, Span<double> weights)
    {
        Span<double> all = stackalloc double[Heats], ratio = stackalloc double[Shares];
        (double f, double r) = Place(heat);
        f = Math.Min(f, _most);
        bool less = HasLess && f < 0 || !HasMore;
        (double middle, double half) = less ? _less : _more;
        Along((f - middle) / half, HeatNodes, HeatWeights, all);
        Along((r - _ratio.Middle) / _ratio.Half, ShareNodes, ShareWeights, ratio);
        weights.Clear();
        Span<double> own = weights.Slice(less ? 0 : HalfPoints, HalfPoints);
        for (int i = 0; i < Heats; i++)
            for (int j = 0; j < Shares; j++)
                own[i * Shares + j] = all[i] * ratio[j];
    }

    private RaceHeat Of(double logFactor, double logRatio)
    {
        double ratio = Math.Exp(logRatio), iron = Math.Exp(logFactor) / (_copperShare * ratio + 1 - _copperShare);
        return new(ratio * iron, iron);
    }

    private double Most(double most, double ratio, Func<RaceHeat, bool> tooHot)
    {
        double within = -2;
        if (!tooHot(Of(most, ratio)) || most <= within)
            return most;
        for (int i = 0; i < 6; i++)
        {
            double middle = 0.5 * (within + most);
            (within, most) = tooHot(Of(middle, ratio)) ? (within, middle) : (middle, most);
        }
        return most;
    }

    private (double Factor, double Ratio) Place(RaceHeat heat) => (Math.Log(heat.Factor(_copperShare)), Math.Log(heat.Copper / heat.Iron));

    private static double[] Chebyshev(int n) => [.. Enumerable.Range(0, n).Select(i => Math.Cos(Math.PI * (i + 0.5) / n))];

    private static double[] Barycentric(int n) => [.. Enumerable.Range(0, n).Select(i => (i % 2 == 0 ? 1 : -1) * Math.Sin(Math.PI * (i + 0.5) / n))];

    // The barycentric formula of the second kind (Berrut and Trefethen 2004, SIAM Review 46:501).
    private static void Along(double x, double[] nodes, double[] barycentric, Span<double> weights)
    {
        double sum = 0;
        for (int i = 0; i < nodes.Length; i++)
        {
            double off = x - nodes[i];
            if (off == 0)
            {
                weights.Clear();
                weights[i] = 1;
                return;
            }
            weights[i] = barycentric[i] / off;
            sum += weights[i];
        }
        for (int i = 0; i < nodes.Length; i++)
            weights[i] /= sum;
    }
}
