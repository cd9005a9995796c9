using Figure = Coolproof.Evidence.Tests.Calibration.DayBootstrap.Figure;

namespace Coolproof.Evidence.Tests.Calibration;

/// <summary>Every figure of one kind of day. Pairs are on the can unless said otherwise.</summary>
internal sealed class StratumFigures
{
    private const int SlopeRepeats = 200;
    private readonly DayOutcome[] _judged;
    private readonly long _seed;

    /// <summary>Works the figures out.</summary>
    /// <param name="name">Name of the kind.</param>
    /// <param name="days">Its days.</param>
    /// <param name="seed">Seed of the bootstrap.</param>
    public StratumFigures(string name, IReadOnlyList<DayOutcome> days, long seed)
    {
        (Name, Days, _seed) = (name, days.Count, seed);
        _judged = [.. days.Where(d => d.Judged)];
        NotConverged = days.Count - _judged.Length;
        PairCoverage = ShareOf(d => d.On(ComparedOn.Can), p => p.Covered);
        OracleCoverage = ShareOf(WithOracle, p => p.OracleCovered);
        WindingPairCoverage = ShareOf(d => d.On(ComparedOn.Winding), p => p.Covered);
        CanCoverage = ShareOf(d => d.Options, o => o.CanCovered);
        WindingCoverage = ShareOf(d => d.Options, o => o.WindingCovered);
        (Firm, Wrong, OracleWrong, Pairs) = (Count(p => p.Firm), Count(p => p.Wrong), Count(p => p.OracleWrong), Count(_ => true));
        StatedError = Ratio(d => d.On(ComparedOn.Can).Where(p => p.Firm).Sum(p => p.StatedError), d => d.On(ComparedOn.Can).Count(p => p.Firm));
        ObservedError = Ratio(d => d.On(ComparedOn.Can).Count(p => p.Wrong), d => d.On(ComparedOn.Can).Count(p => p.Firm));
        FirmShare = ShareOf(d => d.On(ComparedOn.Can), p => p.Firm);
        FirmOverOracle = Ratio(d => WithOracle(d).Count(p => p.Firm), d => WithOracle(d).Count(p => p.OracleFirm));
        WrongSame = Ratio(d => d.On(ComparedOn.Can).Count(p => p.Call == PairCall.Same && Math.Abs(p.Truth) > 2), d => d.On(ComparedOn.Can).Count(p => p.Call == PairCall.Same));
        Rmse = RootRatio(_ => true, Miss, _ => 1);
        OverOracle = RootRatio(p => double.IsFinite(p.OracleMean), Miss, p => p.OracleMean - p.Truth);
        OverFloor = RootRatio(_ => true, Miss, p => p.Floor - p.Truth);
        OverNaive = RootRatio(_ => true, Miss, p => p.Naive - p.Truth);
        CanBias = Ratio(d => d.Options.Sum(o => (o.Can.Mean - o.TrueCanC) / o.Can.Sd), d => d.Options.Count);
        WindingBias = Ratio(d => d.Options.Sum(o => (o.Winding.Mean - o.TrueWindingC) / o.Winding.Sd), d => d.Options.Count);
        Slope = DayBootstrap.Of(_judged.Length, chosen => LogisticSlope.Fit(Points(chosen)).Slope, SlopeRepeats, seed);
        Intercept = LogisticSlope.Fit(Points([.. Enumerable.Range(0, _judged.Length)])).Intercept;
    }

    public string Name { get; }

    public int Days { get; }

    public int NotConverged { get; }

    /// <summary>Share of 90 % intervals that hold the truth: differences on the can, on the winding, the can itself, the winding itself.</summary>
    public Figure PairCoverage { get; }

    public Figure WindingPairCoverage { get; }

    public Figure CanCoverage { get; }

    public Figure WindingCoverage { get; }

    /// <summary>The same of the oracle's differences on the can.</summary>
    public Figure OracleCoverage { get; }

    public int Pairs { get; }

    public int Firm { get; }

    public int Wrong { get; }

    /// <summary>Firm calls of the oracle that are wrong.</summary>
    public int OracleWrong { get; }

    /// <summary>Mean error stated of firm calls, and the share of them that is wrong.</summary>
    public Figure StatedError { get; }

    public Figure ObservedError { get; }

    public Figure FirmShare { get; }

    /// <summary>Firm calls over the oracle's.</summary>
    public Figure FirmOverOracle { get; }

    /// <summary>Share of "same" calls with a true difference outside the band.</summary>
    public Figure WrongSame { get; }

    /// <summary>Root mean square error of differences, K, and over that of the oracle, of the floor and of "first reading minus air".</summary>
    public Figure Rmse { get; }

    public Figure OverOracle { get; }

    public Figure OverFloor { get; }

    public Figure OverNaive { get; }

    /// <summary>Mean of (posterior mean − truth)/sd.</summary>
    public Figure CanBias { get; }

    public Figure WindingBias { get; }

    /// <summary>Logistic regression of "a is cooler" on the log odds stated.</summary>
    public Figure Slope { get; }

    public double Intercept { get; }

    private static double Miss(PairOutcome p) => p.Said.Mean - p.Truth;

    private static IEnumerable<PairOutcome> WithOracle(DayOutcome d) => d.On(ComparedOn.Can).Where(p => double.IsFinite(p.OracleMean));

    private int Count(Func<PairOutcome, bool> which) => _judged.Sum(d => d.On(ComparedOn.Can).Count(which));

    private Figure ShareOf<T>(Func<DayOutcome, IEnumerable<T>> of, Func<T, bool> which) => Ratio(d => of(d).Count(which), d => of(d).Count());

    private Figure Ratio(Func<DayOutcome, double> above, Func<DayOutcome, double> below) =>
        DayBootstrap.OfSums([.. _judged.Select(d => new[] { above(d), below(d) })], s => s[0] / s[1], _seed);

    private Figure RootRatio(Func<PairOutcome, bool> which, Func<PairOutcome, double> above, Func<PairOutcome, double> below)
    {
        double Squares(DayOutcome d, Func<PairOutcome, double> of) => d.On(ComparedOn.Can).Where(which).Sum(p => of(p) * of(p));
        return DayBootstrap.OfSums([.. _judged.Select(d => new[] { Squares(d, above), Squares(d, below) })], s => Math.Sqrt(s[0] / s[1]), _seed);
    }

    private List<(double, bool)> Points(int[] chosen)
    {
        List<(double, bool)> points = [];
        foreach (int i in chosen)
        {
            double least = 0.5 / _judged[i].Draws;
            foreach (PairOutcome pair in _judged[i].On(ComparedOn.Can))
            {
                double p = Math.Clamp(pair.Probability, least, 1 - least);
                points.Add((Math.Log(p / (1 - p)), pair.Truth < 0));
            }
        }
        return points;
    }
}
