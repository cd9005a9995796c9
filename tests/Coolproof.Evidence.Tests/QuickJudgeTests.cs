using System.Diagnostics;
using System.Globalization;
using Coolproof.Notebook;
using Coolproof.Rehearsal;
using MathNet.Numerics.Statistics;

namespace Coolproof.Evidence.Tests;

/// <summary>The quick path against the full one on days of the full model: same model, same tables.</summary>
public class QuickJudgeTests(ITestOutputHelper output)
{
    [Fact]
    public void On_a_few_days_it_says_nearly_what_the_full_path_says() => Compare(10); // over five, the chains' seeds alone move the median from 0.20 to 0.25

    [Fact]
    [Trait("Suite", "long")]
    public void On_sixty_days_it_says_nearly_what_the_full_path_says() => Compare(60);

    /// <summary>As a plan judges: after each round, beginning where the round before ended.</summary>
    [Fact]
    public void Judged_round_after_round_it_says_what_it_says_afresh()
    {
        List<double> meanOff = [], widthRatio = [];
        for (int seed = 1; seed <= 6; seed++)
        {
            SimulatedDay day = Rehearse.Day(new RehearsalSettings(80_000 + seed, [new("a"), new("b"), new("c"), new("d")], 4));
            QuickVerdict? part = null;
            for (int runs = 4; runs <= 16; runs += 4)
            {
                ReadingsTable table = day.Table with { Runs = [.. day.Table.Runs.Take(runs)] };
                part = QuickJudge.Of(table, new JudgeSettings(Seed: seed), part: part)!;
                QuickVerdict afresh = QuickJudge.Of(table, new JudgeSettings(Seed: seed))!;
                foreach ((int a, int b) in new[] { (0, 1), (0, 2), (0, 3), (1, 2), (1, 3), (2, 3) })
                {
                    double[] warm = part.Difference(a, b), fresh = afresh.Difference(a, b);
                    meanOff.Add(Math.Abs(warm.Mean() - fresh.Mean()) / fresh.StandardDeviation());
                    widthRatio.Add(warm.StandardDeviation() / fresh.StandardDeviation());
                }
            }
        }
        output.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"round after round against afresh: mean off by {meanOff.Median():F2} sd (9 in 10 within {meanOff.Quantile(0.9):F2}), sd {widthRatio.Median():F2} ({widthRatio.Quantile(0.1):F2} to {widthRatio.Quantile(0.9):F2})"));
        Assert.True(meanOff.Median() < 0.1 && meanOff.Quantile(0.9) < 0.4, $"{meanOff.Median()}, {meanOff.Quantile(0.9)}");
        Assert.InRange(widthRatio.Median(), 0.95, 1.05);
    }

    private void Compare(int days)
    {
        List<double> meanOff = [], widthRatio = [], oddsOff = [];
        int rough = 0;
        double quickMs = 0;
        for (int seed = 1; seed <= days; seed++)
        {
            SimulatedDay day = DayGenerator.Day(9000 + seed);
            JudgeSettings settings = new(Seed: seed);
            Stopwatch watch = Stopwatch.StartNew();
            QuickVerdict quick = QuickJudge.Of(day.Table, settings)!;
            quickMs += watch.Elapsed.TotalMilliseconds;
            rough += quick.Rough ? 1 : 0;
            Verdict full = Assert.IsType<Judged>(Judge.Of(day.Table, settings)).Verdict;
            foreach (PairVerdict pair in full.Pairs.Where(p => p.On == ComparedOn.Can))
            {
                double[] difference = quick.Difference(quick.Options.ToList().IndexOf(pair.A), quick.Options.ToList().IndexOf(pair.B));
                meanOff.Add(Math.Abs(difference.Mean() - pair.DifferenceK.Mean) / pair.DifferenceK.Sd);
                widthRatio.Add(difference.StandardDeviation() / pair.DifferenceK.Sd);
                oddsOff.Add(Math.Abs(difference.Count(d => d < 0) / (double)difference.Length - pair.ProbabilityACooler));
            }
        }
        output.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{days} days, {meanOff.Count} pairs: mean off by {meanOff.Median():F2} sd (9 in 10 within {meanOff.Quantile(0.9):F2}); sd {widthRatio.Median():F2} of the full one ({widthRatio.Quantile(0.1):F2} to {widthRatio.Quantile(0.9):F2}); odds off by {100 * oddsOff.Mean():F1} points; {quickMs / days:F1} ms a day; {rough} rough"));
        Assert.True(meanOff.Median() < 0.25, $"{meanOff.Median()} sds");
        Assert.InRange(widthRatio.Median(), 0.85, 1.15);
        Assert.True(oddsOff.Mean() < 0.06, $"{oddsOff.Mean()}");
    }
}
