using Coolproof.Evidence.Opinion;
using Coolproof.Evidence.Tests.Words;
using Coolproof.Notebook;
using MathNet.Numerics.Statistics;

namespace Coolproof.Evidence.Tests.Opinion;

public class SecondOpinionFitTests(ITestOutputHelper output)
{
    private static RunCurve Curve(Run run, double fairC) => new(run.Day, run.Name, run.Option, Said.Around(27, 0.5), [], [], [],
        [.. run.Readings.Where(r => r.ExcludedBecause is null).Select((r, i) => new CorrectedReading(r.Line, 10, true, fairC, fairC, 0, 0, 0, 0, 0, fairC + 0.4 * (i - 1)))], null);

    private SecondOpinion? Of(ReadingsTable table, Func<Run, int, double> fairC, double mainK = -4, double mainSd = 1)
    {
        Posterior posterior = SampledDay.Prepared(table);
        posterior = posterior with { CanC = [.. posterior.Options.Select(o => new double[] { 70 + 4 * o })] };
        RunCurve[] curves = [.. table.Runs.Select((run, i) => Curve(run, fairC(run, i)))];
        PairVerdict[] pairs = [.. posterior.Options.SelectMany(a => posterior.Options.Where(b => b > a).Select(b => Said.Pair(table.Options[a], table.Options[b], mainK * (b - a), mainSd)))];
        SecondOpinion? second = SecondOpinionFit.Of(posterior, curves, pairs);
        output.WriteLine($"{second?.Method}; {second?.Remark}; {string.Join(", ", second?.Pairs ?? [])}");
        if (second is not null)
            Said.AssertPlain(second.Remark);
        return second;
    }

    private static double ByOption(Run run, int i) => 70 + (run.Option.EndsWith('B') ? 4 : 0) + 0.7 * (i * i % 5 - 2);

    // Without anything to allow for it must be the two-sample comparison with pooled scatter (Student 1908), checked by its plain formula.
    [Fact]
    public void Plain_runs_give_the_pooled_comparison_of_two_means()
    {
        ReadingsTable table = InventedDays.Plain(2, 4);
        SecondOpinionPair pair = Assert.Single(Of(table, ByOption)!.Pairs);
        double[] a = [.. table.Runs.Select((r, i) => (r, v: ByOption(r, i))).Where(x => x.r.Option.EndsWith('A')).Select(x => x.v)];
        double[] b = [.. table.Runs.Select((r, i) => (r, v: ByOption(r, i))).Where(x => x.r.Option.EndsWith('B')).Select(x => x.v)];
        Assert.Equal(a.Mean() - b.Mean(), pair.DifferenceK, 1e-9);
        Assert.Equal(Math.Sqrt((a.Variance() + b.Variance()) / 2 * (1.0 / 4 + 1.0 / 4)), pair.StandardErrorK, 1e-9);
        Assert.True(pair.Agrees);
    }

    [Fact]
    public void A_main_answer_far_off_is_said_to_differ()
    {
        SecondOpinion second = Of(InventedDays.Plain(2, 4), ByOption, mainK: -20)!;
        Assert.False(second.Pairs[0].Agrees);
        Assert.Contains("they differ", second.Remark, StringComparison.Ordinal);
    }

    [Fact]
    public void A_driver_that_varies_is_allowed_for()
    {
        ReadingsTable table = InventedDays.Plain(2, 4).With((r, i) => r with { Load = new(Driver: i is 0 or 2 or 3 ? "second" : "first") });
        SecondOpinion second = Of(table, (r, i) => ByOption(r, 0) + (r.Load.Driver == "second" ? 6 : 0) + 0.1 * (i % 3))!;
        Assert.Contains("driver", second.Method, StringComparison.Ordinal);
        Assert.Equal(-4, second.Pairs[0].DifferenceK, 0.2);
    }

    [Fact]
    public void A_driver_who_can_not_be_told_from_the_option_is_not_allowed_for()
    {
        ReadingsTable table = InventedDays.Plain(2, 4).With((r, i) => r with { Load = new(Driver: i % 2 == 0 ? "second" : "first") });
        SecondOpinion second = Of(table, ByOption)!;
        Assert.DoesNotContain("driver", second.Method, StringComparison.Ordinal);
        Assert.Single(second.Pairs);
    }

    [Fact]
    public void Days_are_random_where_there_is_more_than_one()
    {
        ReadingsTable table = InventedDays.Plain(2, 4).With((r, i) => r with { Day = i < 4 ? "first" : "second" });
        SecondOpinion second = Of(table, (r, i) => ByOption(r, i) + (i < 4 ? 0 : 5))!;
        Assert.Contains("day allowed for", second.Method, StringComparison.Ordinal);
        Assert.True(second.Pairs[0].StandardErrorK < 1.5);
    }

    [Fact]
    public void One_run_each_has_no_standard_error_and_says_so()
    {
        SecondOpinion second = Of(InventedDays.Plain(2, 1), ByOption)!;
        Assert.True(double.IsNaN(second.Pairs[0].StandardErrorK));
        Assert.Contains("can't tell how sure", second.Remark, StringComparison.Ordinal);
    }

    [Fact]
    public void One_option_has_no_second_opinion() => Assert.Null(Of(InventedDays.Plain(1, 3), ByOption));

    [Fact]
    public void Options_without_corrected_readings_leave_it_without_pairs() => Assert.Empty(Of(InventedDays.Plain(2, 2), (_, _) => double.NaN)!.Pairs);

    [Fact]
    public void Runs_without_any_scatter_have_no_standard_error() => Assert.True(double.IsNaN(Of(InventedDays.Plain(3, 2), (r, _) => ByOption(r, 0))!.Pairs[0].StandardErrorK));

    [Fact]
    public void A_table_with_everything_in_it_is_answered() => Assert.NotNull(Of(InventedDays.Rich(), (r, i) => ByOption(r, i)));
}
