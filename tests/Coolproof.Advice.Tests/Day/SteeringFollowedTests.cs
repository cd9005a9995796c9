using System.Globalization;
using Coolproof.Advice.Day;
using Coolproof.Advice.Orders;
using Coolproof.Evidence;
using Coolproof.Rehearsal;
using MathNet.Numerics.Statistics;

namespace Coolproof.Advice.Tests.Day;

/// <summary>Runs until the main difference is settled, on the same simulated days: in the plan's order, and with the advice followed on which option is next.</summary>
public class SteeringFollowedTests(ITestOutputHelper output)
{
    private const int Options = 4, Most = 24;
    private const double CoolDownMin = 10;
    private static readonly RehearsalOption[] Driven = [.. Enumerable.Range(0, Options).Select(k => new RehearsalOption($"o{k}"))];
    private static readonly string[] Names = [.. Driven.Select(o => o.Name)];

    [Fact]
    public void On_a_few_days_following_it_takes_no_more_runs() => Followed(10, 1.15);

    [Fact]
    [Trait("Suite", "long")]
    public void Over_three_hundred_days_following_it_takes_fewer_runs() => Followed(300, 1.0);

    private void Followed(int days, double most)
    {
        int[] plan = [.. OrderSearch.Best(DayLimits.Plain(Options, 1e6, 240) with { Packs = 100 }, new(), 1).Options.Take(Most)];
        Stop[] planned = new Stop[days], steered = new Stop[days];
        Parallel.For(0, days, new ParallelOptions { MaxDegreeOfParallelism = 2, CancellationToken = TestContext.Current.CancellationToken }, d =>
        {
            planned[d] = Of(d, plan, follow: false);
            steered[d] = Of(d, plan, follow: true);
        });
        foreach ((string name, Stop[] stops) in new[] { ("plan's order, stopped when settled", planned), ("steering followed", steered) })
            output.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"{name}: {days} days, runs {stops.Average(s => s.Runs):F1} (half within {stops.Select(s => (double)s.Runs).Median():F0}), settled {100 * stops.Average(s => s.Settled ? 1.0 : 0):F0} %, right pick {100 * stops.Average(s => s.Right ? 1.0 : 0):F0} %, called wrongly {stops.Count(s => s.WrongCall)}, loss {stops.Average(s => s.LossK):F2} K"));
        double certain = planned.Average(s => s.Settled ? 1.0 : 0);
        int sooner = Enumerable.Range(Options, Most - Options + 1).FirstOrDefault(n => steered.Average(s => s.Settled && s.Runs <= n ? 1.0 : 0) >= certain, Most);
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"as many days as the plan's order settles in {Most} runs, steering has settled in {sooner}"));
        Assert.True(steered.Average(s => s.Runs) <= most * planned.Average(s => s.Runs), "steering took more runs");
        Assert.True(steered.Average(s => s.Settled ? 1.0 : 0) >= planned.Average(s => s.Settled ? 1.0 : 0) - 0.5 / Math.Sqrt(days), "steering settled less");
        Assert.True(steered.Count(s => s.WrongCall) <= Math.Max(2, 0.05 * days), "steering called wrongly");
    }

    // What is driven later changes nothing of what was: load, mounting and air are drawn run by run, and the day is as long either way.
    private static Stop Of(int seed, int[] plan, bool follow)
    {
        List<int> driven = [.. plan.Take(Options)];
        QuickVerdict? verdict = null;
        while (true)
        {
            int[] sequence = [.. driven, .. plan.Skip(driven.Count)];
            SimulatedDay day = Rehearse.Day(new RehearsalSettings(65_000_000 + seed, Driven, Most / Options) { Sequence = sequence, CoolDownMin = CoolDownMin });
            verdict = QuickJudge.Of(day.Table with { Runs = [.. day.Runs.Take(driven.Count)] }, new JudgeSettings(Seed: seed), part: verdict)!;
            DayAdvice advice = Steering.After(verdict, Names, Most - driven.Count, new(), fitted: Names[driven[^1]]);
            if (advice.Call == GoOn.Settled || driven.Count == Most)
                return Stop.Of(driven.Count, advice, verdict, day.Truth);
            driven.Add(follow ? Array.IndexOf(Names, advice.Next[0].Option) : plan[driven.Count]);
        }
    }

    private readonly record struct Stop(int Runs, bool Settled, bool Right, bool WrongCall, double LossK)
    {
        public static Stop Of(int runs, DayAdvice advice, QuickVerdict verdict, Truth truth)
        {
            double Peak(string option) => truth.Peaks(verdict.Fair.AmbientC, verdict.Fair.DriveS).First(p => p.Option == option).CanC;
            double lost = Peak(advice.Best!) - Names.Min(Peak), cooler = Peak(advice.Rival!) - Peak(advice.Best!);
            bool called = advice.Call == GoOn.Settled && Math.Max(advice.ProbabilityBestCooler, 1 - advice.ProbabilityBestCooler) >= 0.975;
            return new(runs, advice.Call == GoOn.Settled, lost == 0, called && cooler > 0 != advice.ProbabilityBestCooler > 0.5, lost);
        }
    }
}
