using Coolproof.Sampling;

namespace Coolproof.Evidence.Model;

/// <summary>
/// Draws the spreads of heat run to run, mountings, options, days and charge anew, given the deviations themselves. In the sampler's coordinates a run's
/// heat follows its readings, so a spread is pulled at by every run's and creeps; given the deviations it is free. Readings don't come into it: the heats stay.
/// </summary>
internal sealed class SpreadStep
{
    // Log density is known to about this in its slope: a slice is found within a few steps.
    private const double Width = 1.5;
    private const int MostSteps = 8, Sweeps = 2;
    private readonly DayModel _model;
    private readonly DayDensity _density;
    private readonly double[] _deviations, _heats;
    private readonly SpreadOf[] _spreads;

    /// <summary>A step for one chain over a model.</summary>
    public SpreadStep(DayModel model)
    {
        (_model, _density) = (model, new(model));
        (_deviations, _heats) = (new double[model.Dimension], new double[model.Runs.Length]);
        _spreads = [.. model.Groups.Select((g, i) => new SpreadOf(g.Spread, g.Scale, i)).Where(s => IsFree(s.Parameter))];
    }

    /// <summary>Moves the spreads of <paramref name="u"/>, and with them the coordinates of all that deviates by them.</summary>
    public void Move(Span<double> u, RandomStream random)
    {
        _density.Visit(u);
        foreach (DeviationGroup group in _model.Groups)
            foreach (int member in group.Members)
                _deviations[member] = _density.Deviation(u, member);
        for (int r = 0; r < _heats.Length; r++)
            _heats[r] = _density.States[r].Deviation;
        foreach (SpreadOf spread in _spreads)
            u[spread.Parameter] = Drawn(spread, u[spread.Parameter], random);
        if (_model.Charge is { } charge && IsFree(charge.Spread))
            u[charge.Spread] = Drawn(new(charge.Spread, Priors.ChargeSpread, -1), u[charge.Spread], random);
        _density.SeatMembers(u, _deviations);
        _density.VisitWithHeats(u, _heats);
    }

    private bool IsFree(int parameter) => _model.Parameters[parameter] is { Prior: PriorKind.HalfNormal } p && double.IsNaN(p.Held);

    private double Drawn(SpreadOf spread, double u, RandomStream random)
    {
        (int count, double sum) = Squares(spread);
        if (count == 0)
            return u;
        double floor = spread.Group < 0 ? Priors.ChargeFloor / spread.Scale : Priors.FloorOf(spread.Parameter) / spread.Scale;
        sum /= spread.Scale * spread.Scale;
        for (int i = 0; i < Sweeps; i++)
            u = Slice(u, Log, random);
        return u;

        double Log(double v)
        {
            double x = DayDensity.Spread(v, floor).X;
            return -0.5 * v * v - count * Math.Log(x) - 0.5 * sum / (x * x);
        }
    }

    private (int Count, double Sum) Squares(SpreadOf spread)
    {
        int count = 0;
        double sum = 0;
        if (spread.Parameter == Global.RunHeatSpread)
        {
            for (int r = 0; r < _heats.Length; r++)
                if (_model.Runs[r].OwnHeatSd == 0)
                    (count, sum) = (count + 1, sum + Math.Pow(_heats[r] / _model.Runs[r].HeatFactor, 2));
            return (count, sum);
        }
        if (spread.Group >= 0)
        {
            foreach (int member in _model.Groups[spread.Group].Members)
                (count, sum) = (count + 1, sum + _deviations[member] * _deviations[member]);
            return (count, sum);
        }
        for (int r = 0; r < _heats.Length; r++)
            if (!double.IsNaN(_model.Runs[r].ChargeRate))
                (count, sum) = (count + 1, sum + Math.Pow(_density.States[r].ChargeMiss, 2));
        return (count, sum);
    }

    // Slice sampling by stepping out and shrinking (Neal 2003, Annals of Statistics 31:705).
    private static double Slice(double at, Func<double, double> log, RandomStream random)
    {
        double level = log(at) + Math.Log(1 - random.NextUniform()), low = at - Width * random.NextUniform(), high = low + Width;
        int left = random.NextIndex(MostSteps), right = MostSteps - 1 - left;
        for (; left > 0 && log(low) > level; left--)
            low -= Width;
        for (; right > 0 && log(high) > level; right--)
            high += Width;
        while (true)
        {
            double next = low + (high - low) * random.NextUniform();
            if (log(next) >= level)
                return next;
            (low, high) = next < at ? (next, high) : (low, next);
        }
    }

    private readonly record struct SpreadOf(int Parameter, double Scale, int Group);
}
