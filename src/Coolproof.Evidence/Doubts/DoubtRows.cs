using Coolproof.Evidence.Model;

namespace Coolproof.Evidence.Doubts;

/// <summary>
/// The squares of all whitened rows along a direction v, by source. Each row's square is the information that a prior, a reading, a noted start or a noted
/// charge is expected to carry about one step along v. Rows are taken from the quantities themselves, so they are the same in whatever coordinates the
/// deviations are written. Spreads and scatters are held: what a row would tell of them is left out.
/// </summary>
internal static class DoubtRows
{
    // A direction is scaled so that its largest part moves this far: small beside the posterior, large beside rounding.
    private const double Step = 1e-4;
    private const double LeastExponent = 1e-3;

    /// <summary>Squares by <see cref="DoubtSource"/>.</summary>
    /// <param name="density">The density; left at another point.</param>
    /// <param name="centre">Where.</param>
    /// <param name="along">v, any length; a zero vector gives zeros.</param>
    public static double[] Squares(DayDensity density, double[] centre, double[] along)
    {
        double[] squares = new double[Enum.GetValues<DoubtSource>().Length];
        double largest = along.Max(Math.Abs);
        if (!(largest > 0))
            return squares;
        DayModel model = density.Model;
        double step = Step / largest;
        Place low = Place.At(density, Moved(centre, along, -step)), high = Place.At(density, Moved(centre, along, step)), here = Place.At(density, centre);
        double width = 2 * step;
        OwnPriors(model, here, along, squares);
        MeanHeat(model, low, high, width, squares);
        Members(model, centre, low, high, width, squares);
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
        HashSet<int> aboutDays = [Global.Heat, .. model.Charge?.Packs ?? []];
        for (int i = 0; i < along.Length; i++)
        {
            Parameter p = model.Parameters[i];
            if (aboutDays.Contains(i))
                continue;
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

    // Mean heat and the packs' constants are written about the mean of the days driven; their priors are about that of all days.
    private static void MeanHeat(DayModel model, in Place low, in Place high, double width, double[] squares)
    {
        double days = high.DayMean - low.DayMean;
        Add(squares, model.Parameters[Global.Heat].Source, Square((high.HeatMiss - low.HeatMiss) / width));
        foreach (int pack in model.Charge?.Packs ?? [])
            Add(squares, model.Parameters[pack].Source, Square((high.Point[pack] - low.Point[pack] + days / Priors.ChargeConstantSd) / width));
    }

    // Deviations of a group, each in units of the group's spread.
    private static void Members(DayModel model, double[] centre, in Place low, in Place high, double width, double[] squares)
    {
        foreach (DeviationGroup group in model.Groups)
        {
            double floor = Priors.FloorOf(group.Spread), spread = group.Scale * HalfNormal.At(centre[group.Spread]).X;
            double variance = spread * spread + floor * floor;
            foreach (int member in group.Members)
                Add(squares, model.Parameters[member].Source, Square((high.Deviation[member] - low.Deviation[member]) / width) / variance);
        }
    }

    // Heat deviations that are written about what their readings say have their prior on the deviation itself.
    private static void Heats(DayModel model, in Place low, in Place high, in Place here, double width, double[] squares)
    {
        for (int r = 0; r < model.Levels.Length; r++)
            if (model.Levels[r].RiseK > 0)
                Add(squares, DoubtSource.Load, Square((high.States[r].Deviation - low.States[r].Deviation) / width) * here.States[r].PriorPrecision);
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

    // The charge is what was observed: the exponent is a factor of its scale, which tells of it twice the square of its logarithm.
    private static void Charges(DayModel model, in Place low, in Place high, in Place here, double width, double[] squares)
    {
        if (model.Charge is not { } charge)
            return;
        double variance = Square(Priors.ChargeSpread * HalfNormal.At(here.Point[charge.Spread]).X) + Square(Priors.ChargeFloor);
        double scale = (LogExponent(high) - LogExponent(low)) / width;
        for (int r = 0; r < model.Runs.Length; r++)
            if (!double.IsNaN(model.Runs[r].ChargeRate))
                Add(squares, DoubtSource.Load, Square((high.States[r].ChargeMiss - low.States[r].ChargeMiss) / width) / variance + 2 * scale * scale);

        double LogExponent(in Place at) => Math.Log(Math.Max(Priors.ChargeExponent.Mean + Priors.ChargeExponent.Sd * at.Point[charge.Exponent], LeastExponent));
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

    /// <summary>The day at one point; deviations by parameter, 0 for those that are none.</summary>
    private readonly record struct Place(double[] Point, RunState[] States, ReadingState[] Seen, double[] Scatter, double[] Deviation, double DayMean, double HeatMiss)
    {
        public static Place At(DayDensity density, double[] point)
        {
            density.Visit(point);
            double[] scatter = new double[density.Guns.Length], deviation = new double[point.Length];
            for (int i = 0; i < scatter.Length; i++)
                scatter[i] = density.Guns[i].Scatter;
            density.WriteDeviations(deviation);
            return new(point, density.States.ToArray(), density.Seen.ToArray(), scatter, deviation, density.DayMean, density.HeatMiss);
        }
    }
}
