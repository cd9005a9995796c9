namespace Coolproof.Traces.Shape;

/// <summary>A run as the notebook knows it.</summary>
/// <param name="Name">Its name.</param>
/// <param name="GoS">Go, s since 1970-01-01 UTC.</param>
/// <param name="StopS">End of hard driving; null where not known.</param>
/// <param name="SdS">By how much these may be off, s: a tap about 1.5, a clock read to the minute about 20.</param>
public sealed record KnownRun(string Name, double GoS, double? StopS, double SdS);

/// <summary>What is known of a trace's clock before its shape is looked at.</summary>
/// <param name="AheadS">By how much it should be ahead of the notebook's, s.</param>
/// <param name="SdS">Give or take, s.</param>
public readonly record struct ClockPrior(double AheadS, double SdS);

/// <summary>Where a run was found in a trace.</summary>
/// <param name="Run">Its place in the list of runs.</param>
/// <param name="GoS">Go, s by the trace's own clock.</param>
/// <param name="StopS">Stop by the same; null where none was known.</param>
/// <param name="GoScore">Log odds of go there.</param>
/// <param name="StopScore">Log odds of the stop there.</param>
public readonly record struct FoundRun(int Run, double GoS, double? StopS, double GoScore, double StopScore);

/// <summary>A way in which a trace's clock may stand to the notebook's.</summary>
/// <param name="AheadS">The trace's clock minus the notebook's, s.</param>
/// <param name="Odds">Probability of it among all ways looked at.</param>
/// <param name="Score">Log odds of its gos and stops against none being there.</param>
/// <param name="Runs">Runs that lie in the trace then.</param>
public sealed record ClockWay(double AheadS, double Odds, double Score, IReadOnlyList<FoundRun> Runs);

/// <summary>Sets a trace's clock by the gos and stops of the day's runs.</summary>
public static class ClockMatch
{
    /// <summary>A score from which on a way is worth proposing: odds of some hundred thousand to one against chance at one second, of which a trace has thousands.</summary>
    public const double LeastScore = 12;

    // Ways closer to each other than this are one.
    const int ApartS = 45;
    const int MostWays = 4;
    const double LeastLogPrior = -8;

    /// <summary>The ways, the most probable first; none where no run can lie in the trace.</summary>
    /// <param name="grid">The trace.</param>
    /// <param name="runs">The runs.</param>
    /// <param name="prior">What is known of its clock; null: nothing.</param>
    public static IReadOnlyList<ClockWay> Of(SecondGrid grid, IReadOnlyList<KnownRun> runs, ClockPrior? prior)
    {
        ArgumentNullException.ThrowIfNull(grid);
        ArgumentNullException.ThrowIfNull(runs);
        if (runs.Count == 0 || grid.Seconds < 60) return [];
        GoStopScores scores = GoStopScores.Of(grid);
        Near[] near = [.. runs.Select(run => run.SdS).Distinct().Select(sd => new Near(scores, sd))];
        // From the last run at the trace's begin to the first at its end.
        long from = (long)Math.Floor(grid.FirstS - runs.Max(run => run.StopS ?? run.GoS)), to = (long)Math.Ceiling(grid.FirstS + grid.Seconds - runs.Min(run => run.GoS));
        double[] score = new double[to - from + 1];
        for (int i = 0; i < score.Length; i++)
        {
            foreach (KnownRun run in runs)
            {
                Near of = near.First(one => one.SdS == run.SdS);
                score[i] += of.Go(run.GoS + from + i - grid.FirstS);
                if (run.StopS is { } stop) score[i] += of.Stop(stop + from + i - grid.FirstS);
            }
            score[i] += Log(prior, from + i);
        }
        return Ways(grid, runs, near, score, from, prior);
    }

    static IReadOnlyList<ClockWay> Ways(SecondGrid grid, IReadOnlyList<KnownRun> runs, Near[] near, double[] score, long from, ClockPrior? prior)
    {
        double greatest = score.Max(), whole = score.Sum(s => Math.Exp(s - greatest));
        List<ClockWay> ways = [];
        bool[] taken = new bool[score.Length];
        while (ways.Count < MostWays)
        {
            int best = -1;
            for (int i = 0; i < score.Length; i++) if (!taken[i] && (best < 0 || score[i] > score[best])) best = i;
            if (best < 0) break;
            double weight = 0, mean = 0;
            for (int i = Math.Max(0, best - ApartS); i <= Math.Min(score.Length - 1, best + ApartS); i++)
            {
                if (!taken[i]) (weight, mean) = (weight + Math.Exp(score[i] - greatest), mean + (Math.Exp(score[i] - greatest) * (i - best)));
                taken[i] = true;
            }
            if (weight / whole < 0.001 && ways.Count > 0) break;
            double ahead = from + best + (mean / weight);
            ways.Add(new ClockWay(ahead, weight / whole, score[best] - Log(prior, from + best), Found(grid, runs, near, ahead)));
        }
        return ways;
    }

    static FoundRun[] Found(SecondGrid grid, IReadOnlyList<KnownRun> runs, Near[] near, double ahead)
    {
        List<FoundRun> found = [];
        for (int r = 0; r < runs.Count; r++)
        {
            double go = runs[r].GoS + ahead - grid.FirstS, stop = (runs[r].StopS ?? runs[r].GoS) + ahead - grid.FirstS;
            if (stop < 0 || go > grid.Seconds) continue;
            Near of = near.First(one => one.SdS == runs[r].SdS);
            (double goAt, double goScore) = of.GoAt(go);
            (double stopAt, double stopScore) = runs[r].StopS is null ? (double.NaN, 0) : of.StopAt(stop);
            found.Add(new FoundRun(r, grid.FirstS + goAt, double.IsNaN(stopAt) ? null : grid.FirstS + stopAt, goScore, stopScore));
        }
        return [.. found];
    }

    static double Log(ClockPrior? prior, double ahead) =>
        prior is { } known ? Math.Max(LeastLogPrior, -0.5 * (ahead - known.AheadS) * (ahead - known.AheadS) / (known.SdS * known.SdS)) : 0;

    /// <summary>The best score near a second, what it is off by held against it.</summary>
    sealed class Near
    {
        readonly double[] _go, _stop;
        readonly int[] _goAt, _stopAt;

        public Near(GoStopScores scores, double sdS)
        {
            SdS = sdS;
            (_go, _goAt) = Widened(scores.Go, sdS);
            (_stop, _stopAt) = Widened(scores.Stop, sdS);
        }

        public double SdS { get; }

        public double Go(double second) => At(_go, second);
        public double Stop(double second) => At(_stop, second);
        public (double At, double Score) GoAt(double second) => Place(_go, _goAt, second);
        public (double At, double Score) StopAt(double second) => Place(_stop, _stopAt, second);

        static double At(double[] scores, double second) => (int)Math.Round(second) is var i && i >= 0 && i < scores.Length ? scores[i] : 0;

        static (double, double) Place(double[] scores, int[] at, double second)
        {
            int i = (int)Math.Round(second);
            // Where nothing is found the known time stays.
            return i >= 0 && i < scores.Length && scores[i] > 0 ? (at[i], scores[i]) : (second, 0);
        }

        static (double[] Scores, int[] At) Widened(double[] scores, double sd)
        {
            int far = (int)Math.Ceiling(3 * sd);
            double[] wide = new double[scores.Length];
            int[] at = new int[scores.Length];
            for (int i = 0; i < scores.Length; i++)
            {
                at[i] = i;
                for (int j = Math.Max(0, i - far); j <= Math.Min(scores.Length - 1, i + far); j++)
                {
                    double worth = scores[j] - (0.5 * (j - i) * (j - i) / (sd * sd));
                    if (worth > wide[i]) (wide[i], at[i]) = (worth, j);
                }
            }
            return (wide, at);
        }
    }
}
