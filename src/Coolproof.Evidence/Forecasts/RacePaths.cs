namespace Coolproof.Evidence.Forecasts;

/// <summary>All draws of one option over a race day.</summary>
internal sealed class RacePaths
{
    private readonly RaceGrid _grid;
    private readonly double _airC;
    private readonly double[][][] _c;

    private RacePaths(RaceGrid grid, double airC, double[][][] c) => (_grid, _airC, _c) = (grid, airC, c);

    public int Draws => _c[0].Length;

    public double[] Seconds => _grid.Seconds;

    public static RacePaths Of(RaceEvidence evidence, RaceScenario scenario, RaceChance[] chances, int option)
    {
        RaceGrid grid = new(scenario);
        RaceDay day = new(evidence, scenario, grid);
        double[][][] c = [.. Enum.GetValues<LimitedPart>().Select(_ => new double[chances.Length][])];
        for (int i = 0; i < chances.Length; i++)
        {
            foreach (double[][] part in c)
                part[i] = new double[grid.Seconds.Length];
            day.Drive(evidence.Draws[i], option, chances[i], c[(int)LimitedPart.Can][i], c[(int)LimitedPart.Winding][i], c[(int)LimitedPart.Magnet][i]);
        }
        return new(grid, scenario.AirC, c);
    }

    /// <summary>A part over time.</summary>
    public Summary[] Over(LimitedPart part) => [.. Enumerable.Range(0, Seconds.Length).Select(t => Summaries.Of([.. _c[(int)part].Select(path => path[t])]))];

    /// <summary>A part at the end of hard driving of a race, draw by draw.</summary>
    public double[] AtStopC(LimitedPart part, int race)
    {
        int at = _grid.Stretches.TakeWhile(s => s.Race < race || s.Phase == RacePhase.Race).Sum(s => s.Steps);
        return [.. _c[(int)part].Select(path => path[at])];
    }

    /// <summary>Highest of a part from a race's start to the next, draw by draw.</summary>
    public double[] HighestsC(LimitedPart part, int race)
    {
        int from = _grid.Stretches.TakeWhile(s => s.Race < race).Sum(s => s.Steps);
        int until = _grid.Stretches.TakeWhile(s => s.Race <= race).Sum(s => s.Steps);
        return [.. _c[(int)part].Select(path => Highest(path.AsSpan(from..(until + 1))))];
    }

    /// <summary>Highest of a part over the day in one draw.</summary>
    public double HighestC(LimitedPart part, int draw) => Highest(_c[(int)part][draw]);

    /// <summary>Seconds until a limit is passed in one draw; NaN: never.</summary>
    public double FirstAboveS(RaceLimit limit, int draw)
    {
        double[] path = _c[(int)limit.Part][draw];
        int at = Array.FindIndex(path, c => c > limit.LimitC);
        if (at <= 0)
            return at == 0 ? 0 : double.NaN;
        double share = (limit.LimitC - path[at - 1]) / (path[at] - path[at - 1]);
        return Seconds[at - 1] + share * (Seconds[at] - Seconds[at - 1]);
    }

    /// <summary>Seconds from the last halt until all parts are within some kelvins of the air; the end of the grid where they are not.</summary>
    public double CooledAfterS(int draw, double withinK)
    {
        int halt = _grid.Stretches.SkipLast(1).Sum(s => s.Steps), last = Seconds.Length - 1;
        int warm = Enumerable.Range(0, last - halt + 1).Select(i => last - i).FirstOrDefault(t => _c.Any(part => part[draw][t] > _airC + withinK), halt - 1);
        return Seconds[Math.Min(Math.Max(warm + 1, halt), last)] - Seconds[halt];
    }

    private static double Highest(ReadOnlySpan<double> path)
    {
        double highest = path[0];
        foreach (double c in path)
            highest = Math.Max(highest, c);
        return highest;
    }
}
