namespace Coolproof.Evidence.Model;

/// <summary>
/// Most probable scatters of the readings and spread of the charge relation, given all else about a mode: from what the readings and charges miss there, and
/// from how many parameters the evidence has used up.
/// </summary>
/// <param name="model">The model.</param>
/// <param name="free">Spreads that are not known.</param>
/// <param name="position">The mode.</param>
/// <param name="variance">Marginal variances there.</param>
internal sealed class ObservedSpreads(DayModel model, IReadOnlyCollection<int> free, double[] position, double[] variance)
{
    /// <summary>Each spread that is free, in units of its scale.</summary>
    public IEnumerable<(int Spread, double X)> MostProbable()
    {
        DayDensity density = new(model);
        density.Visit(position);
        int charges = model.Runs.Count(r => !double.IsNaN(r.ChargeRate));
        double fitted = (EffectiveParameters() - charges) / Math.Max(model.Readings.Length, 1);
        for (int i = 0; i < model.Instruments.Length; i++)
        {
            int at = model.Instruments[i].Scatter;
            if (!free.Contains(at))
                continue;
            (int count, double squares) = Misses(density, i);
            yield return (at, SpreadSearch.Peak(count, (squares + count * Math.Clamp(fitted, 0, 0.9) * Square(density.Guns[i].Scatter)) / Square(Priors.ScatterSpread)));
        }
        if (model.Charge is { } charge && free.Contains(charge.Spread))
            yield return (charge.Spread, SpreadSearch.Peak(charges, charges * density.ChargeMeanSquare(position) / Square(Priors.ChargeSpread) + HeatVariance()));
    }

    private static double Square(double x) => x * x;

    // Squares of what readings miss, the expected aim loss taken off, wild ones weighed down as the likelihood does.
    private (int Count, double Squares) Misses(DayDensity density, int instrument)
    {
        int count = 0;
        double squares = 0, scatter = density.Guns[instrument].Scatter;
        for (int i = 0; i < model.Readings.Length; i++)
        {
            ModelReading reading = model.Readings[i];
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
        for (int i = 0; i < variance.Length; i++)
        {
            Parameter p = model.Parameters[i];
            double precision = p.Prior == PriorKind.Known || (p.Prior == PriorKind.HalfNormal && free.Contains(i)) ? 0 : p.Precision;
            sum += precision == 0 ? 0 : Math.Clamp(1 - variance[i] * precision, 0, 1);
        }
        return sum;
    }

    // Sum over runs with a charge of the variance of their log heat, in units of the charge relation's scale.
    private double HeatVariance()
    {
        double spread = Priors.RunHeatSpread * HalfNormal.At(position[Global.RunHeatSpread]).X;
        return model.Runs.Where(r => !double.IsNaN(r.ChargeRate)).Sum(r => Square(spread * r.HeatFactor) * variance[r.Heat]) / Square(Priors.ChargeSpread);
    }
}
