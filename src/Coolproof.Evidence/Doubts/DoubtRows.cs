using Coolproof.Evidence.Model;

namespace Coolproof.Evidence.Doubts;

/// <summary>
/// The squares of all whitened rows along a direction v, by source. Each row's square is the information that a prior, a reading, a noted start or a noted
/// charge is expected to carry about one step along v: what a scale tells of itself (log σ) counts 2 a member, as it does for a normal distribution.
/// </summary>
internal static class DoubtRows
{
    // A direction is scaled so that its largest part moves this far: small beside the posterior, large beside rounding.
    private const double Step = 1e-4;

    /// <summary>Squares by <see cref="DoubtSource"/>.</summary>
    /// <param name="density">The density; left at another point.</param>
    /// <param name="centre">Where.</param>
    /// <param name="along">v, any length; a zero vector gives zeros.</param>
    public static double[] Squares(DayDensity density, double[] centre, double[] along)
    {
        double[] squares = new double[DoubtShares.Names.Count];
        double largest = along.Max(Math.Abs);
        if (!(largest > 0))
            return squares;
        DayModel model = density.Model;
        double step = Step / largest;
        Place low = Place.At(density, Moved(centre, along, -step)), high = Place.At(density, Moved(centre, along, step)), here = Place.At(density, centre);
        OwnPriors(model, here, along, squares);
        Members(model, centre, along, squares);
        double width = 2 * step;
        Heats(model, low, high, here, width, squares);
        Starts(model, low, high, width, squares);
        Charges(model, low, high, here, width, squares);
        Readings(model, low, high, here, width, squares);
        return squares;
    }

    private static double[] Moved(double[] centre, double[] along, double step) => [.. centre.Select((u, i) => u + step * along[i])];

    private static double Square(double x) => x * x;

    private static void Add(double[] squares, DoubtSource source, double square) => squares[(int)source] += square;

    // Expected information of each prior about its own coordinate; of a gap below a noted delay, the curvature at the centre.
    private static void OwnPriors(DayModel model, in Place here, double[] along, double[] squares)
    {
        for (int i = 0; i < along.Length; i++)
        {
            Parameter p = model.Parameters[i];
            double precision = p.Prior switch
            {
                _ when !double.IsNaN(p.Held) => 1 / Square(Parameter.HeldSd),
                PriorKind.Unit or PriorKind.HalfNormal => 1,
                PriorKind.LogGamma => p.A,
                PriorKind.LogitBeta => p.A * p.A / (2 * p.A + 1),
                PriorKind.Known => 1 / Square(p.B),
                _ => 0,
            };
            Add(squares, p.Source, precision * Square(along[i]));
        }
        for (int r = 0; r < model.Readings.Length; r++)
        {
            ModelReading reading = model.Readings[r];
            if (reading.Gap < 0 || double.IsNaN(reading.Before))
                continue;
            Parameter p = model.Parameters[reading.Gap];
            (double gap, double share) = (here.Seen[r].Gap, here.Seen[r].Logistic);
            double own = share * (1 - share), curvature = (p.A + 1) * own + p.A / p.B * gap * (1 - share) * (1 - 2 * share);
            Add(squares, p.Source, Math.Max(curvature, own) * Square(along[reading.Gap]));
        }
    }

    // A member of a group, u ~ N(0, x^2w): in units of its own prior, and what it tells of the spread where it is centred.
    private static void Members(DayModel model, double[] centre, double[] along, double[] squares)
    {
        foreach (DeviationGroup group in model.Groups)
        {
            (double x, double slope) = HalfNormal.At(centre[group.Spread]);
            double precision = group.Evidence.Length > 0 ? 1 / (1 + group.Evidence.Average(e => e.Precision) * Square(group.Scale * x)) : Math.Pow(x, -2 * group.CentredWeight), ofSpread = 2 * Square(group.CentredWeight * slope * along[group.Spread]);
            foreach (int member in group.Members)
                Add(squares, model.Parameters[member].Source, precision * Square(along[member]) + ofSpread);
        }
    }

    // Heat deviations that are written about what their readings say have their prior on the deviation itself.
    private static void Heats(DayModel model, in Place low, in Place high, in Place here, double width, double[] squares)
    {
        for (int r = 0; r < model.Levels.Length; r++)
        {
            if (model.Levels[r].RiseK <= 0)
                continue;
            double spread = 1 / Math.Sqrt(here.States[r].PriorPrecision), ofSpread = 0.5 * Math.Log(low.States[r].PriorPrecision / high.States[r].PriorPrecision) / width;
            double deviation = (high.States[r].Deviation - low.States[r].Deviation) / width;
            Add(squares, DoubtSource.Load, Square(deviation / spread) + 2 * Square(ofSpread));
        }
    }

    private static void Starts(DayModel model, in Place low, in Place high, double width, double[] squares)
    {
        for (int r = 0; r < model.Runs.Length; r++)
        {
            if (model.Runs[r].Start != StartMode.Chained || double.IsNaN(model.Runs[r].StartC))
                continue;
            double before = (high.States[r].Start2 + high.States[r].Air - low.States[r].Start2 - low.States[r].Air) / width;
            Add(squares, DoubtSource.Warmth, Square(before / Priors.StartNotedSd));
        }
    }

    private static void Charges(DayModel model, in Place low, in Place high, in Place here, double width, double[] squares)
    {
        if (model.Charge is not { } charge)
            return;
        for (int r = 0; r < model.Runs.Length; r++)
        {
            ModelRun run = model.Runs[r];
            if (double.IsNaN(run.ChargeRate))
                continue;
            double miss = (Expected(high, r) - Expected(low, r)) / width, ofSpread = (LogSpread(high) - LogSpread(low)) / width;
            Add(squares, DoubtSource.Load, Square(miss / (Priors.ChargeSpread * Math.Exp(LogSpread(here)))) + 2 * Square(ofSpread));

            double Expected(in Place at, int index) => Math.Log(at.States[index].P) - at.LogHeat - Priors.ChargeConstantSd * at.Point[charge.Packs[run.Pack]]
                - (Priors.ChargeExponent.Mean + Priors.ChargeExponent.Sd * at.Point[charge.Exponent]) * run.ChargeRate;
        }

        double LogSpread(in Place at) => Math.Log(HalfNormal.At(at.Point[charge.Spread]).X);
    }

    private static void Readings(DayModel model, in Place low, in Place high, in Place here, double width, double[] squares)
    {
        for (int i = 0; i < model.Readings.Length; i++)
        {
            ModelReading reading = model.Readings[i];
            double mean = (high.Seen[i].Mean - low.Seen[i].Mean) / width;
            double information;
            if (reading.On is ReadingOn.WindingByResistance or ReadingOn.WindingByGun)
            {
                information = Square(mean / (reading.On == ReadingOn.WindingByResistance ? Priors.WindingResistanceSd : Priors.WindingGunSd));
            }
            else
            {
                int gun = reading.Instrument;
                double loss = (high.Seen[i].Loss - low.Seen[i].Loss) / width, scatter = (high.Scatter[gun] - low.Scatter[gun]) / width;
                information = ReadingInformation.Along(here.Seen[i].Loss, here.Scatter[gun], mean, loss, scatter);
            }
            Add(squares, DoubtSource.ScatterAndAim, information);
        }
    }

    /// <summary>The day at one point.</summary>
    private readonly record struct Place(double[] Point, RunState[] States, ReadingState[] Seen, double[] Scatter, double LogHeat)
    {
        public static Place At(DayDensity density, double[] point)
        {
            density.Visit(point);
            double[] scatter = new double[density.Guns.Length];
            for (int i = 0; i < scatter.Length; i++)
                scatter[i] = density.Guns[i].Scatter;
            return new(point, density.States.ToArray(), density.Seen.ToArray(), scatter, density.Motor.LogHeat);
        }
    }
}
