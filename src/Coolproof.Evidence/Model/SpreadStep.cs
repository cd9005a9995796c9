using Coolproof.Sampling;

namespace Coolproof.Evidence.Model;

/// <summary>
/// Draws the spreads of heat run to run, mountings, options, days and charge and the scatters of the readings anew, given the deviations and temperatures
/// themselves. In the sampler's coordinates a run's heat follows its readings, so a spread is pulled at by every run's and creeps; given the deviations it is
/// free. All temperatures stay.
/// </summary>
internal sealed class SpreadStep
{
    // Log density is known to about this in its slope: a slice is found within a few steps.
    private const double Width = 1.5;
    private const int Sweeps = 2;

    // Scatter is told by all readings of an instrument.
    private const double ScatterWidth = 0.5;
    private readonly DayModel _model;
    private readonly DayDensity _density;
    private readonly double[] _deviations, _heats;
    private readonly SpreadOf[] _spreads;

    /// <summary>A step for one chain over a model.</summary>
    public SpreadStep(DayModel model)
    {
        (_model, _density) = (model, new(model));
        (_deviations, _heats) = (new double[model.Dimension], new double[model.Runs.Length]);
        _spreads = [.. model.Groups.Select((g, i) => new SpreadOf(g.Spread, g.Scale, i)).Where(s => IsFree(model, s.Parameter))];
    }

    /// <summary>Moves the spreads of <paramref name="u"/>, and with them the coordinates of all that deviates by them.</summary>
    public void Move(Span<double> u, RandomStream random)
    {
        _density.Visit(u);
        _density.WriteDeviations(_deviations);
        for (int r = 0; r < _heats.Length; r++)
            _heats[r] = _density.States[r].Deviation;
        foreach (SpreadOf spread in _spreads)
            u[spread.Parameter] = Drawn(spread, u[spread.Parameter], random);
        if (_model.Charge is { } charge && IsFree(_model, charge.Spread))
            u[charge.Spread] = Drawn(new(charge.Spread, Priors.ChargeSpread, -1), u[charge.Spread], random);
        for (int i = 0; i < _model.Instruments.Length; i++)
            if (_model.Instruments[i].Scatter is int scatter && IsFree(_model, scatter))
                u[scatter] = DrawnScatter(i, u[scatter], random);
        _density.SeatMembers(u, _deviations);
        _density.VisitWithHeats(u, _heats);
    }

    /// <summary>Whether a parameter is a spread that is unknown.</summary>
    public static bool IsFree(DayModel model, int parameter) => model.Parameters[parameter] is { Prior: PriorKind.HalfNormal } p && double.IsNaN(p.Held);

    private double Drawn(SpreadOf spread, double u, RandomStream random)
    {
        (int count, double sum) = Squares(spread);
        if (count == 0)
            return u;
        double floor = spread.Group < 0 ? Priors.ChargeFloor / spread.Scale : Priors.FloorOf(spread.Parameter) / spread.Scale;
        sum /= spread.Scale * spread.Scale;
        for (int i = 0; i < Sweeps; i++)
            u = Slice.Next(u, Log, Width, random);
        return u;

        double Log(double v)
        {
            double x = DayDensity.Spread(v, floor).X;
            return -0.5 * v * v - count * Math.Log(x) - 0.5 * sum / (x * x);
        }
    }

    private double DrawnScatter(int instrument, double u, RandomStream random) =>
        Slice.Next(u, v => -0.5 * v * v + _density.LogLikelihoodWithScatter(instrument, v), ScatterWidth, random);

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

    private readonly record struct SpreadOf(int Parameter, double Scale, int Group);
}
