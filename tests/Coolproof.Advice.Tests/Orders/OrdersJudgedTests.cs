using System.Globalization;
using Coolproof.Advice.HowMany;
using Coolproof.Advice.Orders;
using Coolproof.Evidence;
using Coolproof.Notebook;
using Coolproof.Rehearsal;

namespace Coolproof.Advice.Tests.Orders;

/// <summary>
/// The plan's order against blocks and a fixed order on the same simulated days (same motor, options, gun, air, runs, minutes), judged and by first reading minus air;
/// and what the plan promised of it before.
/// </summary>
public class OrdersJudgedTests(ITestOutputHelper output)
{
    private const int Options = 4, Rounds = 3, TellEach = 10;
    private const double CoolDownMin = 10;
    private const string DaysVariable = "COOLPROOF_ORDER_DAYS";
    private static readonly RehearsalOption[] Driven = [.. Enumerable.Range(0, Options).Select(k => new RehearsalOption($"o{k}"))];
    private static readonly string[] Names = ["plan", "blocks", "fixed order"];

    [Fact]
    public void On_a_few_days_judging_the_plan_beats_reading_off_the_blocks() => Compared(4, 1.3);

    [Fact]
    [Trait("Suite", "long")]
    public void Over_three_hundred_days_judging_the_plan_beats_reading_off_the_blocks() =>
        Compared(int.TryParse(Environment.GetEnvironmentVariable(DaysVariable), NumberStyles.None, CultureInfo.InvariantCulture, out int days) ? days : 300, 1.0);

    private void Compared(int days, double most)
    {
        int[][] orders =
        [
            [.. OrderSearch.Best(DayLimits.Plain(Options, 1e6, 240) with { Packs = 100 }, new(), 1).Options.Take(Options * Rounds)],
            [.. Enumerable.Range(0, Options * Rounds).Select(i => i / Rounds)],
            [.. Enumerable.Range(0, Options * Rounds).Select(i => i % Options)],
        ];
        Tally[] judged = [.. Names.Select(n => new Tally(n + ", judged"))], read = [.. Names.Select(n => new Tally(n + ", first reading minus air"))];
        int[] failed = new int[orders.Length];
        int done = 0;
        Lock gate = new();
        Parallel.For(0, days, new ParallelOptions { MaxDegreeOfParallelism = 2, CancellationToken = TestContext.Current.CancellationToken }, d =>
        {
            for (int o = 0; o < orders.Length; o++)
            {
                SimulatedDay day = Rehearse.Day(new RehearsalSettings(60_000_000 + d, Driven, Rounds) { Sequence = orders[o], CoolDownMin = CoolDownMin });
                Judgement judgement = Judge.Of(day.Table, new JudgeSettings(Seed: d, Threads: 1));
                lock (gate)
                {
                    if (judgement is not Judged { Verdict: var verdict })
                    {
                        failed[o]++;
                        continue;
                    }
                    Dictionary<string, double> truth = day.Truth.Peaks(verdict.Fair.AmbientC, verdict.Fair.DriveS).ToDictionary(p => p.Option, p => p.CanC);
                    judged[o].Add(truth, verdict.Options.ToDictionary(v => v.Name, v => v.PeakCanC.Mean), verdict.Options.MaxBy(v => v.ProbabilityCoolest)!);
                    read[o].Add(truth, FirstReadingMinusAir(day.Table), null);
                }
            }
            if (Interlocked.Increment(ref done) % TellEach == 0)
                output.WriteLine($"{done} of {days} days");
        });
        foreach (Tally tally in judged.Concat(read))
            output.WriteLine(tally.ToString());
        output.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"error of a pair: order alone (first readings, plan over blocks) {read[0].ErrorK / read[1].ErrorK:F2}, over fixed order {read[0].ErrorK / read[2].ErrorK:F2}; correction alone (plan, judged over read) {judged[0].ErrorK / read[0].ErrorK:F2}; both, against blocks read {judged[0].ErrorK / read[1].ErrorK:F2}; not judged {string.Join(", ", failed)}"));
        RoundsPromise promised = RoundsNeeded.Of(new(Driven, orders[0], CoolDownMin: CoolDownMin), cancel: TestContext.Current.CancellationToken)[^1];
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"right pick: promised {100 * promised.RightPick:F1} % before, seen on {100 * judged[0].RightPick:F1} % of the days judged"));
        // Five points, and two standard errors where the days are few.
        Assert.InRange(promised.RightPick - judged[0].RightPick, -Math.Max(0.05, 0.7 / Math.Sqrt(days)), Math.Max(0.05, 0.7 / Math.Sqrt(days)));
        Assert.True(judged[0].ErrorK <= most * read[1].ErrorK, $"{judged[0]}; {read[1]}");
        Assert.True(failed.Sum() <= Math.Max(1, 0.02 * 3 * days), $"not judged: {string.Join(", ", failed)}");
    }

    private static Dictionary<string, double> FirstReadingMinusAir(ReadingsTable table) =>
        table.Runs.GroupBy(r => r.Option).ToDictionary(g => g.Key, g => g.Average(r => r.Readings[0].ReadC!.Value - r.AirC!.Value));

    /// <summary>What came of one order and one way of judging.</summary>
    private sealed class Tally(string name)
    {
        private int _days, _right, _pairs;
        private double _squares, _loss, _said;

        public double RightPick => (double)_right / _days;

        public double ErrorK => Math.Sqrt(_squares / _pairs);

        public void Add(Dictionary<string, double> truth, Dictionary<string, double> found, OptionVerdict? named)
        {
            string pick = named?.Name ?? found.MinBy(f => f.Value).Key, best = truth.MinBy(t => t.Value).Key;
            (_days, _right, _loss, _said) = (_days + 1, _right + (pick == best ? 1 : 0), _loss + truth[pick] - truth[best], _said + (named?.ProbabilityCoolest ?? 0));
            foreach (string a in truth.Keys)
            {
                foreach (string b in truth.Keys.Where(b => string.CompareOrdinal(b, a) < 0))
                {
                    double missed = found[a] - found[b] - (truth[a] - truth[b]);
                    (_squares, _pairs) = (_squares + missed * missed, _pairs + 1);
                }
            }
        }

        public override string ToString() => string.Create(CultureInfo.InvariantCulture,
            $"{name}: {_days} days, right pick {100.0 * _right / _days:F0} %{(_said > 0 ? $" (said {100 * _said / _days:F0} %)" : "")}, loss {_loss / _days:F2} K, error of a pair {ErrorK:F2} K");
    }
}
