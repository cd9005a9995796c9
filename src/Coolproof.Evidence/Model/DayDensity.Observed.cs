namespace Coolproof.Evidence.Model;

/// <summary>A quantity of the model that something was observed of: where it is, with what precision it was observed, and the run it belongs to (−1: all).</summary>
internal readonly record struct Observed(double Value, double Precision, int Run);

internal sealed partial class DayDensity
{
    /// <summary>
    /// At the last point: what each reading was expected to show, what the charge relation and noted starts miss, and mean heat and packs about all days (whose
    /// priors go with several parameters). Always the same in number and order.
    /// </summary>
    public Observed[] Observations(ReadOnlySpan<double> u)
    {
        List<Observed> observed = new(_seen.Length + 2 * _states.Length + 2);
        for (int i = 0; i < _seen.Length; i++)
            observed.Add(new(_seen[i].Mean - (IsGun(_model.Readings[i]) ? _seen[i].Loss : 0), Precision(i), _model.Readings[i].Run));
        for (int r = 0; r < _states.Length; r++)
        {
            ModelRun run = _model.Runs[r];
            if (_model.Charge is not null && !double.IsNaN(run.ChargeRate))
                observed.Add(new(_states[r].ChargeMiss, 1 / Square(_chargeSpread), r));
            if (run.Start == StartMode.Chained && !double.IsNaN(run.StartC))
                observed.Add(new(_states[r].Start2 + _states[r].Air, 1 / Square(Priors.StartNotedSd), r));
        }
        observed.Add(new(_heatMiss, 1, -1));
        foreach (int pack in _model.Charge?.Packs ?? [])
            observed.Add(new(PackMiss(u, pack), 1, -1));
        return [.. observed];
    }

    // Scatter and the spread of the aim loss together, wild readings weighed down as the likelihood does.
    private double Precision(int reading)
    {
        ModelReading r = _model.Readings[reading];
        if (!IsGun(r))
            return 1 / Square(WindingSd(r));
        double scatter = Square(_guns[r.Instrument].Scatter), loss = Square(_seen[reading].Loss);
        double narrow = scatter + loss, wide = Square(Priors.WideFactor) * scatter + loss, miss = Square(_seen[reading].Mean - _seen[reading].Loss - r.ValueC);
        double ratio = (1 - Priors.WideWeight) / Priors.WideWeight * Math.Sqrt(wide / narrow) * Math.Exp(0.5 * miss * (1 / wide - 1 / narrow));
        return (ratio / narrow + 1 / wide) / (ratio + 1);
    }
}
