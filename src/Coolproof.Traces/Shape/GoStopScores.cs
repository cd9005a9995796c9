using Coolproof.Traces.Import;

namespace Coolproof.Traces.Shape;

/// <summary>
/// How much each second of a trace looks like go and like the end of hard driving. A temperature bends, upwards at go and downwards at the stop, and a little late: heat comes to the can through
/// the core. Current, speed, turning and throttle begin and cease. Scores are natural logarithms of odds against no change there, z²/2 for small z, growing slowly for great ones, since no
/// curve is as straight as its noise is small. The best channel of each kind counts, and kinds add up.
/// </summary>
public sealed class GoStopScores
{
    const int BeforeS = 20, AfterS = 30, ActiveWindowS = 12;
    // How late a probe on the can follows a change of heat, s: core to can about 12 s, the probe some seconds (design; tested on simulated evenings).
    const double LateS = 15;
    // A can's curve bends by so much in that time without any event, K/s (common practice, no source; tested on simulated evenings).
    const double BendingKPerS = 0.02;
    // After the stop the can bends down only as the car has rolled in and the air stands: about 9 s late, give or take 8 (simulated evenings), and all
    // runs of a day alike. So go sets the clock, and the stop confirms.
    const int StopLateS = 9, StopBlurS = 12;
    const double StopWorth = 0.4;
    const double FairZ = 5;
    // Shares of active seconds before and after: one in seven by chance, since cars stand still in races too.
    const double ActiveSd = 0.15;

    GoStopScores(double[] go, double[] stop) => (Go, Stop) = (go, stop);

    /// <summary>Score of go for each second.</summary>
    public double[] Go { get; }
    /// <summary>Score of the stop for each second.</summary>
    public double[] Stop { get; }

    /// <summary>The scores of a trace.</summary>
    public static GoStopScores Of(SecondGrid grid)
    {
        ArgumentNullException.ThrowIfNull(grid);
        GoStopScores all = new(new double[grid.Seconds], new double[grid.Seconds]);
        foreach (IGrouping<Measured, int> kind in Enumerable.Range(0, grid.Channels.Count).GroupBy(c => grid.Channels[c].Measures))
        {
            GoStopScores best = new(new double[grid.Seconds], new double[grid.Seconds]);
            foreach (int c in kind)
            {
                if (kind.Key == Measured.Temperature) best.Bends(grid.Means[c]);
                else if (kind.Key is Measured.Current or Measured.Speed or Measured.Turning or Measured.Share or Measured.Power) best.Activity(grid.Means[c]);
            }
            for (int s = 0; s < grid.Seconds; s++)
            {
                all.Go[s] += best.Go[s];
                all.Stop[s] += best.Stop[s];
            }
        }
        return all;
    }

    static double Score(double z) => 0.5 * FairZ * FairZ * Math.Log(1 + (z * z / (FairZ * FairZ)));

    void Bends(double[] values)
    {
        double[] noise = [.. Enumerable.Range(1, Math.Max(0, values.Length - 2)).Select(i => Math.Abs(values[i - 1] - (2 * values[i]) + values[i + 1])).Where(double.IsFinite).Order()];
        if (noise.Length < BeforeS + AfterS) return;
        // Second differences of white noise have sd √6 σ, and their median is 0.6745 of that.
        double sigma = Math.Max(0.02, noise[noise.Length / 2] / 0.6745 / Math.Sqrt(6));
        (double[] weights, double norm) = BendWeights();
        double error = Math.Sqrt((sigma * sigma * norm) + (BendingKPerS * BendingKPerS));
        double[] stop = new double[values.Length];
        for (int s = BeforeS; s < values.Length - AfterS; s++)
        {
            double bend = 0;
            for (int i = -BeforeS; i <= AfterS; i++) bend += weights[i + BeforeS] * values[s + i];
            if (double.IsNaN(bend)) continue;
            double score = Score(bend / error);
            if (bend > 0) Go[s] = Math.Max(Go[s], score);
            else stop[s] = score;
        }

        for (int s = 0; s < stop.Length; s++)
        {
            double sum = 0;
            for (int i = s + StopLateS - StopBlurS; i <= s + StopLateS + StopBlurS; i++) sum += i >= 0 && i < stop.Length ? stop[i] : 0;
            Stop[s] = Math.Max(Stop[s], StopWorth * sum / ((2 * StopBlurS) + 1));
        }
    }

    // Weights that give the change of slope of the best fit of a line and, from the middle on, a late bend (ordinary least squares), and the sum of their squares.
    static (double[] Weights, double Norm) BendWeights()
    {
        double[] x = [.. Enumerable.Range(-BeforeS, BeforeS + AfterS + 1).Select(i => (double)i)];
        double[] bend = [.. x.Select(t => t <= 0 ? 0 : t - (LateS * (1 - Math.Exp(-t / LateS))))];
        double mx = x.Average(), mb = bend.Average(), slope = x.Zip(bend, (t, b) => (t - mx) * (b - mb)).Sum() / x.Sum(t => (t - mx) * (t - mx));
        double[] alone = [.. x.Zip(bend, (t, b) => b - mb - (slope * (t - mx)))];
        double squares = alone.Sum(a => a * a);
        return ([.. alone.Select(a => a / squares)], 1 / squares);
    }

    void Activity(double[] values)
    {
        double[] ordered = [.. values.Where(double.IsFinite).Order()];
        if (ordered.Length < 4 * ActiveWindowS) return;
        double low = ordered[ordered.Length / 50], high = ordered[(int)(0.95 * (ordered.Length - 1))], threshold = low + (0.15 * (high - low));
        if (!(high > low)) return;
        int[] active = new int[values.Length + 1], known = new int[values.Length + 1];
        for (int i = 0; i < values.Length; i++)
        {
            active[i + 1] = active[i] + (values[i] > threshold ? 1 : 0);
            known[i + 1] = known[i] + (double.IsNaN(values[i]) ? 0 : 1);
        }
        double Share(int from, int to) => known[to] > known[from] ? (double)(active[to] - active[from]) / (known[to] - known[from]) : double.NaN;
        for (int s = ActiveWindowS; s <= values.Length - ActiveWindowS - 1; s++)
        {
            double change = Share(s, s + ActiveWindowS) - Share(s - ActiveWindowS, s);
            if (double.IsNaN(change)) continue;
            double score = Score(change / ActiveSd);
            if (change > 0) Go[s] = Math.Max(Go[s], score);
            else Stop[s] = Math.Max(Stop[s], score);
        }
    }
}
