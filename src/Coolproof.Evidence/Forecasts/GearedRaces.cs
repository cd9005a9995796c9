namespace Coolproof.Evidence.Forecasts;

/// <summary>Highest temperatures of a race day for many gearings at once, draw by draw.</summary>
public static class GearedRaces
{
    // What is drawn through the points is heat for each kelvin, the one thing that stays smooth where copper runs away with the warmth: it falls to nothing there.
    internal const double LeastRiseK = 1e-3, MostRiseK = 5000;

    /// <summary>Where the winding is hotter than this, °C, temperatures are not followed any more but taken as rising with the heat: every limit of a winding lies below (IEC 60085).</summary>
    public const double HottestC = 220;

    private static readonly int Parts = Enum.GetValues<LimitedPart>().Length;

    /// <summary>Drives every draw of every option through a few heats, and reads all gearings off the surface through them.</summary>
    /// <param name="evidence">What a judged table says.</param>
    /// <param name="scenario">The race day.</param>
    /// <param name="heats">Heat over that of the tests: gearing × draw.</param>
    /// <param name="seed">Seed of what the readings leave open.</param>
    /// <param name="progress">Told the share of the work that is done.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <returns>By option.</returns>
    /// <exception cref="ArgumentException">The scenario is beyond what can be forecast, or draws and heats don't go together.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static IReadOnlyList<GearedPeaks> Of(
        RaceEvidence evidence, RaceScenario scenario, IReadOnlyList<RaceHeat[]> heats, long seed, IProgress<double>? progress = null, CancellationToken cancel = default)
    {
        Check(evidence, scenario, heats);
        int draws = evidence.Draws.Count;
        RaceChance[] chances = RaceChance.Of(draws, seed);
        RaceGrid grid = new(scenario);
        RaceDay day = new(evidence, scenario, grid);
        GearedPeaks[] peaks = [.. evidence.Options.Select(name => new GearedPeaks(name, scenario.AirC, heats.Count, draws))];
        int done = 0;
        Parallel.For(0, draws, new ParallelOptions { CancellationToken = cancel }, () => new double[Parts][].Select(_ => new double[grid.Seconds.Length]).ToArray(), (draw, _, paths) =>
        {
            RaceHeat[] asked = [.. heats.Select(h => h[draw])];
            for (int option = 0; option < peaks.Length; option++)
                One(asked, option, draw, paths);
            progress?.Report((double)Interlocked.Increment(ref done) / draws);
            return paths;
        }, _ => { });
        return peaks;

        void One(RaceHeat[] asked, int option, int draw, double[][] paths)
        {
            const int Points = HeatSurface.Points;
            Span<double> perKelvin = stackalloc double[Points * Parts], weights = stackalloc double[Points];
            double airC = 0, share = evidence.Draws[draw].CopperShare;
            HeatSurface surface = new(asked, share, heat =>
            {
                Drive(heat);
                return Highest(paths[(int)LimitedPart.Winding]) > HottestC;
            });
            for (int point = 0; point < Points; point++)
            {
                if (!surface.Uses(point))
                    continue;
                RaceHeat heat = surface.At(point);
                Drive(heat);
                airC = paths[0][0];
                for (int part = 0; part < Parts; part++)
                    perKelvin[part * Points + point] = heat.Factor(share) / Math.Max(Highest(paths[part]) - airC, LeastRiseK);
            }
            for (int gearing = 0; gearing < asked.Length; gearing++)
            {
                surface.Weigh(asked[gearing], weights);
                for (int part = 0; part < Parts; part++)
                    peaks[option].Set((LimitedPart)part, gearing, draw, airC + Math.Min(asked[gearing].Factor(share) / Math.Max(Sum(weights, perKelvin.Slice(part * Points, Points)), 1e-9), MostRiseK));
            }

            void Drive(RaceHeat heat) =>
                day.Drive(evidence.Draws[draw], option, chances[draw], heat, paths[(int)LimitedPart.Can], paths[(int)LimitedPart.Winding], paths[(int)LimitedPart.Magnet]);
        }
    }

    /// <summary>The same for one gearing and draw without a surface: what the surface is held against.</summary>
    internal static double HighestC(RaceEvidence evidence, RaceScenario scenario, RaceHeat heat, LimitedPart part, int option, int draw, long seed)
    {
        RaceGrid grid = new(scenario);
        double[][] paths = [.. Enumerable.Range(0, Parts).Select(_ => new double[grid.Seconds.Length])];
        new RaceDay(evidence, scenario, grid).Drive(
            evidence.Draws[draw], option, RaceChance.Of(evidence.Draws.Count, seed)[draw], heat, paths[(int)LimitedPart.Can], paths[(int)LimitedPart.Winding], paths[(int)LimitedPart.Magnet]);
        return Highest(paths[(int)part]);
    }

    /// <summary>The same for one option without a surface: every gearing is driven in every draw.</summary>
    /// <param name="evidence">What a judged table says.</param>
    /// <param name="scenario">The race day.</param>
    /// <param name="heats">Heat over that of the tests: gearing × draw.</param>
    /// <param name="option">Place of the option.</param>
    /// <param name="seed">Seed of what the readings leave open.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static GearedPeaks OneByOne(RaceEvidence evidence, RaceScenario scenario, IReadOnlyList<RaceHeat[]> heats, int option, long seed, CancellationToken cancel = default)
    {
        int draws = evidence.Draws.Count;
        RaceChance[] chances = RaceChance.Of(draws, seed);
        RaceGrid grid = new(scenario);
        RaceDay day = new(evidence, scenario, grid);
        GearedPeaks peaks = new(evidence.Options[option], scenario.AirC, heats.Count, draws);
        double[][] paths = [.. Enumerable.Range(0, Parts).Select(_ => new double[grid.Seconds.Length])];
        for (int gearing = 0; gearing < heats.Count; gearing++)
        {
            cancel.ThrowIfCancellationRequested();
            for (int draw = 0; draw < draws; draw++)
            {
                day.Drive(evidence.Draws[draw], option, chances[draw], heats[gearing][draw], paths[(int)LimitedPart.Can], paths[(int)LimitedPart.Winding], paths[(int)LimitedPart.Magnet]);
                for (int part = 0; part < Parts; part++)
                    peaks.Set((LimitedPart)part, gearing, draw, Highest(paths[part]));
            }
        }
        return peaks;
    }

    /// <summary>Looks at what is asked.</summary>
    /// <exception cref="ArgumentException">The scenario is beyond what can be forecast, or draws and heats don't go together.</exception>
    internal static void Check(RaceEvidence evidence, RaceScenario scenario, IReadOnlyList<RaceHeat[]> heats)
    {
        if (Forecast.Refusal(scenario) is { } refused)
            throw new ArgumentException(refused, nameof(scenario));
        if (heats.Any(h => h.Length != evidence.Draws.Count))
            throw new ArgumentException($"A gearing has another number of heats than the {evidence.Draws.Count} draws.", nameof(heats));
    }

    private static double Sum(ReadOnlySpan<double> weights, ReadOnlySpan<double> values)
    {
        double sum = 0;
        for (int i = 0; i < weights.Length; i++)
            sum += weights[i] * values[i];
        return sum;
    }

    internal static double Highest(double[] path)
    {
        double highest = path[0];
        foreach (double c in path)
            highest = Math.Max(highest, c);
        return highest;
    }
}

/// <summary>Highest can, winding and magnet of one option with the soak after the stop, °C: gearing × draw.</summary>
public sealed class GearedPeaks
{
    private readonly double[][][] _c;

    internal GearedPeaks(string option, double airC, int gearings, int draws)
    {
        (Option, AirC) = (option, airC);
        _c = [.. Enum.GetValues<LimitedPart>().Select(_ => Enumerable.Range(0, gearings).Select(_ => new double[draws]).ToArray())];
    }

    /// <summary>The option's name.</summary>
    public string Option { get; }

    /// <summary>Air of the race day, °C.</summary>
    public double AirC { get; }

    /// <summary>Of one part with one gearing, draw by draw, °C.</summary>
    public IReadOnlyList<double> Of(LimitedPart part, int gearing) => _c[(int)part][gearing];

    /// <summary>The same in short.</summary>
    public Summary Summary(LimitedPart part, int gearing) => Summaries.Of(_c[(int)part][gearing]);

    /// <summary>Odds of passing one limit, 0 to 1.</summary>
    public double Odds(RaceLimit limit, int gearing) => (double)_c[(int)limit.Part][gearing].Count(c => c > limit.LimitC) / _c[0][gearing].Length;

    /// <summary>Odds of passing any limit, 0 to 1.</summary>
    public double OddsOfAny(RaceDemand demand, int gearing) =>
        (double)Enumerable.Range(0, _c[0][gearing].Length).Count(draw => demand.Limits.Any(limit => _c[(int)limit.Part][gearing][draw] > limit.LimitC)) / _c[0][gearing].Length;

    internal void Set(LimitedPart part, int gearing, int draw, double celsius) => _c[(int)part][gearing][draw] = celsius;
}
