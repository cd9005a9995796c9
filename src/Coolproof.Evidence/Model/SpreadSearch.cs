using Coolproof.Sampling.Laplace;

namespace Coolproof.Evidence.Model;

/// <summary>
/// Most probable spreads and scatters by expectation and maximisation (Dempster, Laird and Rubin 1977): the rest at its mode given them, then each
/// spread from the squares of its members, mode and variance together. The joint mode would not do: where a run's few readings can be met exactly the
/// joint density has its peak at no scatter at all.
/// </summary>
internal sealed class SpreadSearch
{
    private const int Rounds = 10;
    private const double Enough = 0.04;
    private const double StartX = 0.7, LeastX = 0.1;

    // The first round only finds its way: with a scatter of 15 K no reading is a wild one yet, the density bends one way only, and its mode is a few steps from anywhere.
    private const double StartScatterX = 10;

    // Hundreds of runs get lost among wild readings when scatter falls at once to what a gun's is: there it narrows, so that each mode lies near the one before.
    private static readonly (double ScatterX, int MaxHessians)[] Narrowing = [(StartScatterX, 16), (4, 6), (1.7, 6)];

    private readonly DayModel _model;
    private readonly int _threads;
    private readonly Dictionary<int, double> _x;
    private double _moved;

    private SpreadSearch(DayModel model, int threads)
    {
        (_model, _threads) = (model, threads);
        _x = Enumerable.Range(0, model.Layout.Globals).Where(i => model.Parameters[i].Prior == PriorKind.HalfNormal)
            .ToDictionary(i => i, _ => StartX);
        SetScatters(StartScatterX);
        Position = [.. model.Parameters.Select(Start)];
    }

    /// <summary>The typical point.</summary>
    public double[] Position { get; private set; }

    /// <summary>Marginal variances there, given the spreads.</summary>
    public double[] Variance { get; private set; } = [];

    /// <summary>Gradients taken.</summary>
    public int Gradients { get; private set; }

    /// <summary>Searches from the priors' middle.</summary>
    public static SpreadSearch Run(DayModel model, int threads = 1)
    {
        SpreadSearch search = new(model, threads);
        if (model.DaysAreBlocks)
        {
            search.Narrow();
            return search;
        }
        for (int round = 0; round < Rounds; round++)
        {
            search.Expect(MaxHessians(round));
            search.Maximise(round == 0);
            if (search._moved < Enough)
                break;
        }
        return search;
    }

    // The first two modes are far from their starts, the others near.
    private static int MaxHessians(int round) => round switch
    {
        0 => 40,
        1 => 16,
        _ => 4,
    };

    /// <summary>Where a search begins.</summary>
    public static double Start(Parameter p) => p.Prior switch
    {
        PriorKind.LogGamma => Math.Log(p.B),
        PriorKind.Known => p.A,
        _ => 0,
    };

    // Spreads stay in the middle of what is believed of them: what so many readings say of them at a mode is wrong (DayFit), and a pilot run tells it anyway.
    private void Narrow()
    {
        foreach ((double scatterX, int maxHessians) in Narrowing)
        {
            SetScatters(scatterX);
            Expect(maxHessians);
        }
        SetScatters(StartX);
        SeatSpreads();
    }

    private void SeatSpreads()
    {
        foreach ((int i, double x) in _x)
            Position[i] = HalfNormal.Invert(x);
    }

    private void SetScatters(double x)
    {
        foreach (InstrumentEntry instrument in _model.Instruments)
            if (_x.ContainsKey(instrument.Scatter))
                _x[instrument.Scatter] = x;
    }

    private void Expect(int maxHessians)
    {
        foreach (DeviationGroup group in _model.Groups)
            if (_x.TryGetValue(group.Spread, out double x))
                foreach (int member in group.Members)
                    Position[member] *= Whole(group, HalfNormal.At(Position[group.Spread]).X) / Whole(group, x);
        SeatSpreads();
        DayModel held = _model.Holding(_x);
        ModeSettings settings = new(Tolerance: 1e-2, MaxHessians: maxHessians) { Second = _threads > 1 ? new DayDensity(held).Evaluate : null };
        ArrowMode mode = ArrowMode.Find(new DayDensity(held).Evaluate, held.Layout, Position, settings);
        Gradients += mode.Gradients;
        Position = mode.Position;
        Variance = mode.Factor.MarginalVariances();
    }

    // After the first round scatter begins anew: what the readings miss says little of it yet.
    private void Maximise(bool first)
    {
        _moved = 0;
        foreach (DeviationGroup group in _model.Groups.Where(g => g.Members.Length > 0 && _x.ContainsKey(g.Spread)))
        {
            double whole = Peak(group.Members.Length, Square(Whole(group, _x[group.Spread])) * group.Members.Sum(m => Square(Position[m]) + Variance[m]));
            Set(group.Spread, Math.Sqrt(Math.Max(Square(whole) - Square(Floor(group)), 0)));
        }
        foreach ((int at, double x) in new ObservedSpreads(_model, _x.Keys, Position, Variance).MostProbable())
            Set(at, first && at != _model.Charge?.Spread ? StartX : x);
    }

    /// <summary>Where −(K − 1) log x − S/(2x²) − x²/2 peaks: a half-normal spread of K members with squares S, all in units of the scale.</summary>
    public static double Peak(int members, double squares)
    {
        double free = members - 1;
        return Math.Sqrt(0.5 * (-free + Math.Sqrt(free * free + 4 * squares)));
    }

    private static double Square(double x) => x * x;

    // A group's floor and its spread with it, in units of its scale.
    private static double Floor(DeviationGroup group) => Priors.FloorOf(group.Spread) / group.Scale;

    private static double Whole(DeviationGroup group, double x) => Math.Sqrt(Square(x) + Square(Floor(group)));

    private void Set(int index, double x)
    {
        x = Math.Max(x, LeastX);
        _moved = Math.Max(_moved, Math.Abs(Math.Log(x / _x[index])));
        _x[index] = x;
    }
}
