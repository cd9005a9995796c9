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

    // A search that begins near its end settles for less: it serves the quick path only.
    private const int RoundsNear = 3;
    private const double EnoughNear = 0.15, LeastNearX = 0.3;
    private const double StartX = 0.7, LeastX = 0.1;

    // The first round only finds its way: with a scatter of 15 K no reading is a wild one yet, the density bends one way only, and its mode is a few steps from anywhere.
    private const double StartScatterX = 10;

    private readonly DayModel _model;
    private readonly Dictionary<int, double> _x;
    private double _moved;

    private SpreadSearch(DayModel model, IReadOnlyDictionary<string, double>? near)
    {
        _model = model;
        _x = Enumerable.Range(0, model.Layout.Globals).Where(i => model.Parameters[i].Prior == PriorKind.HalfNormal)
            .ToDictionary(i => i, i => model.Instruments.Any(e => e.Scatter == i) ? StartScatterX : StartX);
        Position = [.. model.Parameters.Select(p => near is not null && near.TryGetValue(p.Name, out double u) ? u : Start(p))];
        if (near is null)
            return;
        foreach (int i in _x.Keys.ToArray())
            _x[i] = near.ContainsKey(model.Parameters[i].Name) ? Math.Max(HalfNormal.At(Position[i]).X, LeastNearX) : StartX;
    }

    /// <summary>The typical point.</summary>
    public double[] Position { get; private set; }

    /// <summary>Marginal variances there, given the spreads.</summary>
    public double[] Variance { get; private set; } = [];

    /// <summary>Curvature of each parameter given all others.</summary>
    public double[] Curvature { get; private set; } = [];

    /// <summary>Gradients taken.</summary>
    public int Gradients { get; private set; }

    /// <summary>Searches from the priors' middle, or from near the end.</summary>
    /// <param name="model">The model.</param>
    /// <param name="near">Parameters by name as they came out of a part of the same day; null: none is known.</param>
    public static SpreadSearch Run(DayModel model, IReadOnlyDictionary<string, double>? near = null)
    {
        SpreadSearch search = new(model, near);
        bool warm = near is not null;
        for (int round = 0; round < (warm ? RoundsNear : Rounds); round++)
        {
            search.Expect(warm ? round + 1 : round);
            search.Maximise(!warm && round == 0);
            if (search._moved < (warm ? EnoughNear : Enough))
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

    private static double Start(Parameter p) => p.Prior switch
    {
        PriorKind.LogGamma => Math.Log(p.B),
        PriorKind.Known => p.A,
        _ => 0,
    };

    private void Expect(int round)
    {
        foreach (DeviationGroup group in _model.Groups)
            if (_x.TryGetValue(group.Spread, out double x))
                foreach (int member in group.Members)
                    Position[member] *= Whole(group, HalfNormal.At(Position[group.Spread]).X) / Whole(group, x);
        foreach ((int i, double x) in _x)
            Position[i] = HalfNormal.Invert(x);
        DayModel held = _model.Holding(_x);
        ArrowMode mode = ArrowMode.Find(new DayDensity(held).Evaluate, held.Layout, Position, new ModeSettings(Tolerance: 1e-2, MaxHessians: MaxHessians(round)));
        Gradients += mode.Gradients;
        Position = mode.Position;
        Variance = mode.Factor.MarginalVariances();
        mode.Hessian.CopyDiagonal(Curvature = new double[Position.Length]);
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
        DayDensity density = new(_model);
        density.Visit(Position);
        int charges = _model.Runs.Count(r => !double.IsNaN(r.ChargeRate));
        double fitted = (EffectiveParameters() - charges) / Math.Max(_model.Readings.Length, 1);
        for (int i = 0; i < _model.Instruments.Length; i++)
        {
            int at = _model.Instruments[i].Scatter;
            if (!_x.ContainsKey(at))
                continue;
            if (first)
            {
                Set(at, StartX);
                continue;
            }
            (int count, double squares) = Misses(density, i);
            Set(at, Peak(count, (squares + count * Math.Clamp(fitted, 0, 0.9) * Square(density.Guns[i].Scatter)) / Square(Priors.ScatterSpread)));
        }
        if (_model.Charge is { } charge)
            Set(charge.Spread, Peak(charges, charges * density.ChargeMeanSquare(Position) / Square(Priors.ChargeSpread) + HeatVariance()));
    }

    // Where −(K − 1) log x − S/(2x²) − x²/2 peaks: a half-normal spread of K members with squares S, all in units of the scale.
    private static double Peak(int members, double squares)
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

    // Squares of what readings miss, the expected aim loss taken off, wild ones weighed down as the likelihood does.
    private (int Count, double Squares) Misses(DayDensity density, int instrument)
    {
        int count = 0;
        double squares = 0, scatter = density.Guns[instrument].Scatter;
        for (int i = 0; i < _model.Readings.Length; i++)
        {
            ModelReading reading = _model.Readings[i];
            if (reading.Instrument != instrument || reading.On is not (ReadingOn.Can or ReadingOn.Endbell))
                continue;
            double z2 = Square((density.Seen[i].Mean - density.Seen[i].Loss - reading.ValueC) / scatter), far = 1 / Square(Priors.WideFactor);
            // Narrow over wide: both may be too small for a number where their ratio isn't.
            double ratio = (1 - Priors.WideWeight) / Priors.WideWeight * Priors.WideFactor * Math.Exp(-0.5 * z2 * (1 - far));
            count++;
            // What is seen is scatter and the spread of the aim loss together.
            squares += z2 * Square(scatter) * (ratio + far) / (ratio + 1) - Square(density.Seen[i].Loss);
        }
        return (count, Math.Max(squares, 0));
    }

    // Σ(1 − posterior/prior variance): how many parameters the evidence has used up.
    private double EffectiveParameters()
    {
        double sum = 0;
        for (int i = 0; i < Variance.Length; i++)
        {
            Parameter p = _model.Parameters[i];
            double precision = p.Prior switch
            {
                PriorKind.Unit or PriorKind.Member => 1,
                PriorKind.LogGamma or PriorKind.CutGamma => p.A,
                PriorKind.LogitBeta => p.A / 2,
                PriorKind.HalfNormal when !_x.ContainsKey(i) => 1,
                _ => 0,
            };
            sum += precision == 0 ? 0 : Math.Clamp(1 - Variance[i] * precision, 0, 1);
        }
        return sum;
    }

    // Sum over runs with a charge of the variance of their log heat, in units of the charge relation's scale.
    private double HeatVariance()
    {
        double spread = Priors.RunHeatSpread * HalfNormal.At(Position[Global.RunHeatSpread]).X;
        return _model.Runs.Where(r => !double.IsNaN(r.ChargeRate)).Sum(r => Square(spread * r.HeatFactor) * Variance[r.Heat]) / Square(Priors.ChargeSpread);
    }
}
