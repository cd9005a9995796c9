using System.Numerics.Tensors;

namespace Coolproof.Evidence.Model;

/// <summary>
/// Log density of the joint model with its exact gradient, by a hand-written adjoint. One instance per chain: it keeps its workspace. The work is linear in
/// runs and readings: exact steps for all intervals at once (<see cref="TwoNodeKernel"/>), then the chain of states through the day, then the readings.
/// </summary>
internal sealed partial class DayDensity
{
    // Logarithms of many factors are taken of their product, before it could vanish.
    private const double LeastProduct = 1e-200;
    private readonly DayModel _model;
    private readonly double[] _unit;
    private readonly double[] _scratch;
    private readonly (int Index, Parameter Parameter)[] _special;
    private readonly int[] _halfNormal;
    private readonly double[] _x, _logSlope;
    private readonly double[] _sd, _expected, _bySpread, _byHeat, _byAsk, _askBar, _value, _valueBar;
    private readonly DeviationGroup[] _inOrder;
    private readonly AskTerms _follows;
    private readonly TwoNodeKernel _kernel;
    private readonly TwoNodeAdjoint _adjoint;
    private readonly ReadingKernel _likelihood;
    private readonly RunState[] _states;
    private readonly RunAdjoint[] _bars;
    private readonly ReadingState[] _seen;
    private readonly double[] _ratio, _ratioBar, _gain, _gainBar;
    private readonly (double Offset, double Aim, double Scatter)[] _guns, _gunBars;
    private readonly double[] _endbell, _endbellBar;
    private readonly double[] _dayShare;
    private readonly MeanLevelKernel? _level;
    private double _chargeSpread, _dayMean, _heatMiss;
    private Constants _c;
    private Constants _cBar;

    /// <summary>A density over <paramref name="model"/>'s parameters.</summary>
    public DayDensity(DayModel model)
    {
        _model = model;
        int n = model.Dimension;
        _unit = [.. model.Parameters.Select(p => p.Prior is PriorKind.Unit or PriorKind.HalfNormal && double.IsNaN(p.Held) ? 1.0 : 0.0)];
        _scratch = new double[n];
        _special = [.. model.Parameters.Select((p, i) => (i, p)).Where(x => x.p.Prior is PriorKind.LogGamma or PriorKind.LogitBeta or PriorKind.Known || !double.IsNaN(x.p.Held))];
        _halfNormal = [.. model.Parameters.Select((p, i) => (i, p)).Where(x => x.p.Prior == PriorKind.HalfNormal || (x.p.Prior == PriorKind.Known && x.p.Scale > 0)).Select(x => x.i)];
        _unit[Global.Heat] = 0;
        foreach (int pack in model.Charge?.Packs ?? [])
            _unit[pack] = 0;
        _dayShare = [.. model.DayShares];
        (_x, _logSlope) = (new double[n], new double[n]);
        (_sd, _expected, _bySpread, _byHeat, _byAsk, _askBar) = (new double[n], new double[n], new double[n], new double[n], new double[n], new double[n]);
        (_value, _valueBar) = (new double[n], new double[n]);
        // What follows members of other groups comes after them.
        _inOrder = [.. model.Groups.OrderBy(g => g.Evidence.Any(e => e.Follows.Length > 0))];
        _follows = new(model);
        _kernel = new(model.Steps);
        _adjoint = new(_kernel.Seconds.Length);
        _likelihood = new(model.Readings.Count(IsGun));
        _states = new RunState[model.Runs.Length];
        _bars = new RunAdjoint[model.Runs.Length];
        _seen = new ReadingState[model.Readings.Length];
        (_ratio, _ratioBar) = (new double[model.Ratios.Length], new double[model.Ratios.Length]);
        (_gain, _gainBar) = (new double[model.Gains.Length], new double[model.Gains.Length]);
        (_guns, _gunBars) = (new (double, double, double)[model.Instruments.Length], new (double, double, double)[model.Instruments.Length]);
        (_endbell, _endbellBar) = (new double[model.Endbells.Length], new double[model.Endbells.Length]);
        _level = model.Level is { } level ? new(level) : null;
        PrepareSteps();
    }

    /// <summary>The model.</summary>
    public DayModel Model => _model;

    /// <summary>Log density at a point, up to a constant; −∞ where the physics overflows.</summary>
    /// <param name="u">Parameters, unconstrained.</param>
    /// <param name="gradient">Receives the gradient.</param>
    public double Evaluate(ReadOnlySpan<double> u, Span<double> gradient)
    {
        TensorPrimitives.Multiply(u, _unit, _scratch);
        TensorPrimitives.Negate(_scratch, gradient);
        double log = -0.5 * TensorPrimitives.Dot(u, (ReadOnlySpan<double>)_scratch) + SpecialPriors(u, gradient) + Groups(u, gradient);
        log += Forward(u);
        if (!double.IsFinite(log))
            return double.NegativeInfinity;
        Backward(u, gradient);
        return double.IsFinite(TensorPrimitives.Sum((ReadOnlySpan<double>)gradient)) ? log : double.NegativeInfinity;
    }

    /// <summary>Runs the model forward at a point without its gradient: afterwards the states below can be read.</summary>
    public void Visit(ReadOnlySpan<double> u)
    {
        Groups(u, _scratch);
        Forward(u);
    }

    /// <summary>Works out the motor's constants and the deviations at a point, and nothing of the runs.</summary>
    public void VisitMotor(ReadOnlySpan<double> u)
    {
        Groups(u, _scratch);
        Unpack(u);
    }

    /// <summary>States of the runs at the last point.</summary>
    public ReadOnlySpan<RunState> States => _states;

    /// <summary>What each reading saw at the last point.</summary>
    public ReadOnlySpan<ReadingState> Seen => _seen;

    /// <summary>Constants of the motor at the last point.</summary>
    public Constants Motor => _c;

    /// <summary>
    /// Mean log heat deviation of the days driven at the last point, weighted by their runs. A pack's charge constant is this plus its parameter times
    /// <see cref="Priors.ChargeConstantSd"/>, and mean heat is that of its parameter less this.
    /// </summary>
    public double DayMean => _dayMean;

    /// <summary>Mean heat about that of all days, in sds of its prior, at the last point.</summary>
    public double HeatMiss => _heatMiss;

    /// <summary>Seconds that a run rolled in at the last point.</summary>
    public double RollIn(int run) => _kernel.Seconds[_model.Runs[run].RollStep];

    /// <summary>Log of the rise of a typical run's can for one K/s of heat at the last point.</summary>
    public double LogRisePerHeat(MeanLevel level) =>
        new MeanLevelKernel(level).LogRise(_c, TypicalLogG(level), _ratio[_model.RollInRatio], TypicalRatio(level));

    /// <summary>The value of mean heat's parameter that gives a log heat at the last point.</summary>
    public double HeatParameter(ReadOnlySpan<double> u, double logHeat) => u[Global.Heat] + (logHeat - _c.LogHeat) / Priors.Heat.Sd;

    /// <summary>Gain of a gun on a surface at the last point.</summary>
    public double Gain(int entry) => _gain[entry];

    /// <summary>Endbell over can at the last point.</summary>
    public double Endbell(int entry) => _endbell[entry];

    /// <summary>Offset (K), mean aim loss and scatter (K) of each instrument at the last point.</summary>
    public ReadOnlySpan<(double Offset, double Aim, double Scatter)> Guns => _guns;

    /// <summary>A deviation from its group at the last point: a log factor.</summary>
    public double Deviation(int member) => _value[member];

    /// <summary>A spread at the last point: a log-sd.</summary>
    public double SpreadOf(int parameter) => _model.Parameters[parameter].Scale * _x[parameter];

    /// <summary>Sd of a member's deviation for a standard normal parameter at the last point.</summary>
    public double Sd(int member) => _sd[member];

    /// <summary>The value of a member's parameter that gives a deviation at the last point.</summary>
    public double Member(double deviation, int member) => (deviation - _expected[member]) / _sd[member];

    /// <summary>Writes all groups' deviations at the last point, by index of parameter; others are left as they are.</summary>
    public void WriteDeviations(Span<double> deviations)
    {
        foreach (DeviationGroup group in _model.Groups)
            foreach (int member in group.Members)
                deviations[member] = Deviation(member);
    }

    /// <summary>Writes the members of all groups but the runs' heats so that their deviations are given ones, for the spreads in <paramref name="u"/>.</summary>
    /// <param name="u">Parameters; members are written.</param>
    /// <param name="deviations">Deviations, by index of parameter.</param>
    public void SeatMembers(Span<double> u, ReadOnlySpan<double> deviations)
    {
        PrepareGroups(u);
        foreach (DeviationGroup group in _inOrder)
        {
            GroupAt(u, _scratch, group);
            foreach (int member in group.Members)
                u[member] = Member(deviations[member], member);
            // What the members of later groups are asked for may go with these.
            if (_follows.Leads(group))
                GroupAt(u, _scratch, group);
        }
    }

    private static bool IsGun(ModelReading r) => r.On is ReadingOn.Can or ReadingOn.Endbell;

    private double SpecialPriors(ReadOnlySpan<double> u, Span<double> gradient)
    {
        double log = 0;
        foreach ((int i, Parameter p) in _special)
        {
            double v = u[i];
            switch (p.Prior)
            {
                case PriorKind.LogGamma:
                    double scaled = Math.Exp(v) * p.A / p.B;
                    log += p.A * v - scaled;
                    gradient[i] = p.A - scaled;
                    break;
                case PriorKind.LogitBeta:
                    double e = Math.Exp(-Math.Abs(v)), logistic = v >= 0 ? 1 / (1 + e) : e / (1 + e);
                    log -= p.A * (Math.Abs(v) + 2 * Math.Log(1 + e));
                    gradient[i] = p.A * (1 - 2 * logistic);
                    break;
                default:
                    (double mean, double sd) = p.Prior == PriorKind.Known ? (p.A, p.B) : (p.Held, Parameter.HeldSd);
                    double z = (v - mean) / sd;
                    log -= 0.5 * z * z;
                    gradient[i] = -z / sd;
                    break;
            }
        }
        return log;
    }

    private double Groups(ReadOnlySpan<double> u, Span<double> gradient)
    {
        PrepareGroups(u);
        double log = 0;
        foreach (DeviationGroup group in _inOrder)
            log += GroupAt(u, gradient, group);
        return log;
    }

    // Spreads, and what members of groups follow that is no member itself.
    private void PrepareGroups(ReadOnlySpan<double> u)
    {
        foreach (int i in _halfNormal)
            (_x[i], _logSlope[i]) = Spread(u[i], Priors.FloorOf(i) / _model.Parameters[i].Scale);
        foreach (int followed in _follows.Plain)
            _value[followed] = u[followed];
    }

    private double GroupAt(ReadOnlySpan<double> u, Span<double> gradient, DeviationGroup group) =>
        group.Evidence.Length > 0 ? InformedGroup(u, gradient, group) : PlainGroup(u, gradient, group);

    private double PlainGroup(ReadOnlySpan<double> u, Span<double> gradient, DeviationGroup group)
    {
        double w = group.CentredWeight, above = Math.Log(_x[group.Spread]), precision = Math.Exp(-2 * w * above), sd = group.Scale * Math.Exp((1 - w) * above), sum = 0;
        foreach (int member in group.Members)
        {
            sum += u[member] * u[member];
            gradient[member] -= u[member] * precision;
            _sd[member] = sd;
            _value[member] = sd * u[member];
            _bySpread[member] = (1 - w) * _value[member];
        }
        gradient[group.Spread] += w * (sum * precision - group.Members.Length) * _logSlope[group.Spread];
        return -0.5 * sum * precision - group.Members.Length * w * above;
    }

    // Log of normal deviations with the group's spread, and of the Jacobian of their coordinates.
    private double InformedGroup(ReadOnlySpan<double> u, Span<double> gradient, DeviationGroup group)
    {
        double variance = group.Scale * group.Scale * _x[group.Spread] * _x[group.Spread], bySpread = 0, byHeat = 0, log = 0, shares = 1;
        double heatVariance = Square(Priors.RunHeatSpread * _x[Global.RunHeatSpread]);
        for (int i = 0; i < group.Members.Length; i++)
        {
            int member = group.Members[i];
            (double precision, double slope) = group.Evidence[i].At(heatVariance);
            // Share of the member's precision that is the group's.
            double share = 1 / (1 + precision * variance), asks = group.Evidence[i].Asks + _follows.Sum(member, _value);
            _sd[member] = Math.Sqrt(variance * share);
            _expected[member] = (1 - share) * asks;
            double own = _sd[member] * u[member], deviation = _expected[member] + own, pull = deviation / variance;
            _value[member] = deviation;
            _bySpread[member] = share * (2 * _expected[member] + own);
            _byHeat[member] = 2 * slope * (share * _expected[member] - 0.5 * (1 - share) * own);
            _byAsk[member] = 1 - share;
            _askBar[member] = -pull * (1 - share);
            gradient[member] -= pull * _sd[member];
            bySpread += pull * (deviation - _bySpread[member]) - (1 - share);
            byHeat -= pull * _byHeat[member] + slope * (1 - share);
            log -= 0.5 * pull * deviation;
            shares *= share;
            if (shares < LeastProduct)
                (log, shares) = (log + 0.5 * Math.Log(shares), 1);
        }
        gradient[group.Spread] += bySpread * _logSlope[group.Spread];
        gradient[Global.RunHeatSpread] += byHeat * _logSlope[Global.RunHeatSpread];
        return log + 0.5 * Math.Log(shares);
    }

    // From the deviations to members and spreads, and to what members are asked for: groups that follow others first.
    private void DeviationsBackward(Span<double> gradient)
    {
        double byHeat = 0;
        for (int g = _inOrder.Length - 1; g >= 0; g--)
        {
            DeviationGroup group = _inOrder[g];
            double bySpread = 0;
            foreach (int member in group.Members)
            {
                double bar = _valueBar[member];
                gradient[member] += bar * _sd[member];
                bySpread += bar * _bySpread[member];
                byHeat += bar * _byHeat[member];
                _follows.Backward(member, _askBar[member] + bar * _byAsk[member], _valueBar);
            }
            gradient[group.Spread] += bySpread * _logSlope[group.Spread];
        }
        gradient[Global.RunHeatSpread] += byHeat * _logSlope[Global.RunHeatSpread];
        foreach (int followed in _follows.Plain)
            gradient[followed] += _valueBar[followed];
    }

    // A half-normal spread with a floor added in squares, in units of its scale, and its logarithm's slope.
    internal static (double X, double LogSlope) Spread(double u, double floor)
    {
        (double x, double slope) = HalfNormalTable.At(u);
        double whole = x * x + floor * floor;
        return (Math.Sqrt(whole), slope * x / whole);
    }
}
