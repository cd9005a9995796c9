namespace Coolproof.Evidence.Forecasts;

/// <summary>
/// Highest temperatures of a race day for gearings that lie along lines, such as the pinions at one timing: a few gearings of each line are driven only, and those between are read off straight
/// pieces of heat for each kelvin. Quicker than <see cref="GearedRaces"/> by the number of points that this saves; how near it comes is shown in the tests.
/// </summary>
public static class GearedLines
{
    private static readonly int Parts = Enum.GetValues<LimitedPart>().Length;

    /// <summary>Drives every draw of every option.</summary>
    /// <param name="evidence">What a judged table says.</param>
    /// <param name="scenario">The race day.</param>
    /// <param name="heats">Heat over that of the tests: gearing × draw.</param>
    /// <param name="lines">Gearings of each line, the least heat first, by place; each gearing is on one.</param>
    /// <param name="nodes">Gearings of a line that are driven at least, 2 or more.</param>
    /// <param name="seed">Seed of what the readings leave open.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <returns>By option.</returns>
    /// <exception cref="ArgumentException">The scenario is beyond what can be forecast, or draws and heats don't go together.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static IReadOnlyList<GearedPeaks> Of(
        RaceEvidence evidence, RaceScenario scenario, IReadOnlyList<RaceHeat[]> heats, IReadOnlyList<IReadOnlyList<int>> lines, int nodes, long seed, CancellationToken cancel = default)
    {
        GearedRaces.Check(evidence, scenario, heats);
        ArgumentOutOfRangeException.ThrowIfLessThan(nodes, 2);
        int draws = evidence.Draws.Count;
        RaceChance[] chances = RaceChance.Of(draws, seed);
        RaceGrid grid = new(scenario);
        RaceDay day = new(evidence, scenario, grid);
        GearedPeaks[] peaks = [.. evidence.Options.Select(name => new GearedPeaks(name, scenario.AirC, heats.Count, draws))];
        Parallel.For(0, draws, new ParallelOptions { CancellationToken = cancel }, () => new double[Parts][].Select(_ => new double[grid.Seconds.Length]).ToArray(), (draw, _, paths) =>
        {
            double share = evidence.Draws[draw].CopperShare;
            for (int option = 0; option < peaks.Length; option++)
                foreach (IReadOnlyList<int> line in lines)
                    One([.. line.Select(gearing => heats[gearing][draw])], line, share, option, draw, paths);
            return paths;
        }, _ => { });
        return peaks;

        void One(RaceHeat[] asked, IReadOnlyList<int> line, double share, int option, int draw, double[][] paths)
        {
            double airC = scenario.AirC;
            // Up to here the winding stays within what is followed; the first beyond it is driven too, so that its own heat tells where copper runs away.
            int last = LastWithin(asked.Length, i => GearedRaces.Highest(Drive(asked[i])[(int)LimitedPart.Winding]) <= GearedRaces.HottestC);
            (int Place, double[] PerKelvin)[] points = [.. Nodes(asked, share, last, nodes).Select(i =>
            {
                double[][] driven = Drive(asked[i]);
                airC = driven[0][0];
                return (i, driven.Select(path => asked[i].Factor(share) / Math.Max(GearedRaces.Highest(path) - airC, GearedRaces.LeastRiseK)).ToArray());
            })];
            for (int i = 0; i < asked.Length; i++)
            {
                int next = Math.Clamp(Array.FindIndex(points, p => p.Place >= i), -1, points.Length - 1);
                ((int place, double[] after), (int from, double[] before)) = (points[next < 0 ? ^1 : next], points[next < 0 ? ^1 : Math.Max(next - 1, 0)]);
                double along = place > from ? (double)(i - from) / (place - from) : 1;
                for (int part = 0; part < Parts; part++)
                {
                    double perKelvin = before[part] + Math.Min(along, 1) * (after[part] - before[part]);
                    peaks[option].Set((LimitedPart)part, line[i], draw, airC + Math.Min(asked[i].Factor(share) / Math.Max(perKelvin, 1e-9), GearedRaces.MostRiseK));
                }
            }

            double[][] Drive(RaceHeat heat)
            {
                day.Drive(evidence.Draws[draw], option, chances[draw], heat, paths[(int)LimitedPart.Can], paths[(int)LimitedPart.Winding], paths[(int)LimitedPart.Magnet]);
                return paths;
            }
        }
    }

    // Of places that are within and then no longer: the last one within, -1 where none is.
    private static int LastWithin(int count, Func<int, bool> within)
    {
        if (within(count - 1)) return count - 1;
        int good = -1, bad = count - 1;
        while (bad - good > 1)
        {
            int middle = (good + bad) / 2;
            if (within(middle)) good = middle;
            else bad = middle;
        }
        return good;
    }

    // Places along a line that are driven: evenly to the last within, the one nearest to the tests' own heat (beyond it the doubt begins to grow, which bends every temperature), and the first beyond.
    private static int[] Nodes(RaceHeat[] asked, double share, int last, int nodes)
    {
        SortedSet<int> places = [];
        for (int i = 0; i < nodes && last >= 0; i++) places.Add((int)Math.Round((double)last * i / (nodes - 1)));
        if (last >= 0) places.Add(Enumerable.Range(0, last + 1).MinBy(i => Math.Abs(Math.Log(asked[i].Factor(share)))));
        if (last + 1 < asked.Length) places.Add(last + 1);
        return [.. places];
    }
}
