using System.Globalization;
using Figure = Coolproof.Evidence.Tests.Calibration.DayBootstrap.Figure;

namespace Coolproof.Evidence.Tests.Calibration;

/// <summary>What the trace of a can probe is worth in place of three readings by the gun, over days simulated with the full model (docs/traces.md).</summary>
public class TraceCalibrationTests(ITestOutputHelper output)
{
    private const int ManyDays = 200;
    private const double MostOverIdeal = 1.5, Doubtful = 0.05, MostNotConverged = 0.02, MostWrong = 0.025;

    [Fact]
    [Trait("Suite", "long")]
    public void A_trace_in_place_of_three_readings_keeps_its_promises_over_two_hundred_days()
    {
        int days = CalibrationRun.Days(ManyDays);
        DayOutcome[] gun = CalibrationRun.Of("three-readings", days, (seed, day) => DayJudging.Of(seed, day, oracle: false), TraceDays.ThreeReadings, output);
        DayOutcome[] trace = CalibrationRun.Of("can-trace", days, TraceDays.Judged, TraceDays.ThreeReadings, output);
        int[] both = [.. Enumerable.Range(0, days).Where(i => gun[i].Judged && trace[i].Judged)];
        StratumFigures with3 = new("three readings", [.. both.Select(i => gun[i])], 1), withTrace = new("can trace", [.. both.Select(i => trace[i])], 2);
        output.WriteLine(CalibrationTable.Head);
        output.WriteLine(CalibrationTable.Line(with3));
        output.WriteLine(CalibrationTable.Line(withTrace));
        int notJudged = trace.Count(day => !day.Judged);
        Figure error = Ratio(both, i => gun[i], i => trace[i], day => day.On(ComparedOn.Can).Sum(p => (p.Said.Mean - p.Truth) * (p.Said.Mean - p.Truth)), Math.Sqrt);
        Figure windingError = Ratio(both, i => gun[i], i => trace[i], day => day.On(ComparedOn.Winding).Sum(p => (p.Said.Mean - p.Truth) * (p.Said.Mean - p.Truth)), Math.Sqrt);
        Figure winding = Ratio(both, i => gun[i], i => trace[i], day => day.Options.Average(o => o.Winding.Q95 - o.Winding.Q05), x => x);
        Figure can = Ratio(both, i => gun[i], i => trace[i], day => day.On(ComparedOn.Can).Average(p => p.Said.Q95 - p.Said.Q05), x => x);
        double overIdeal = Median(both.SelectMany(i => trace[i].On(ComparedOn.Can)).Where(p => p.Oracle is not null).Select(p => (p.Said.Q95 - p.Said.Q05) / (p.Oracle!.Q95 - p.Oracle.Q05)));
        output.WriteLine(Text($"trace over three readings, {both.Length} days: error of pair differences on the can {Said(error)}, on the winding {Said(windingError)}; width of 90 % intervals of the winding {Said(winding)}, of pair differences {Said(can)}"));
        output.WriteLine(Text($"median width of a pair's interval over the ideal observer's {overIdeal:F2}; {notJudged} of {days} days not judged with a trace, {gun.Count(day => !day.Judged)} with three readings"));
        List<string> missed = [];
        foreach ((string of, double share) in new[] { ("differences on the can", withTrace.PairCoverage.Value), ("differences on the winding", withTrace.WindingPairCoverage.Value), ("the winding", withTrace.WindingCoverage.Value) })
            if (share is not (>= 0.85 and <= 0.95)) missed.Add(Text($"90 % intervals of {of} hold {share:P1}"));
        if (!(overIdeal <= MostOverIdeal)) missed.Add(Text($"intervals are {overIdeal:F2} times as wide as the ideal observer's"));
        if (BinomialTest.AtLeast(withTrace.Wrong, withTrace.Firm, MostWrong) < Doubtful) missed.Add(Text($"{withTrace.Wrong} of {withTrace.Firm} firm calls are wrong"));
        if (BinomialTest.AtLeast(notJudged, days, MostNotConverged) < Doubtful) missed.Add(Text($"{notJudged} of {days} days were not judged"));
        Assert.True(missed.Count == 0, string.Join(Environment.NewLine, missed));
    }

    private static Figure Ratio(int[] days, Func<int, DayOutcome> below, Func<int, DayOutcome> above, Func<DayOutcome, double> of, Func<double, double> last) =>
        DayBootstrap.OfSums([.. days.Select(i => new[] { of(above(i)), of(below(i)) })], s => last(s[0] / s[1]), 5);

    private static double Median(IEnumerable<double> values)
    {
        double[] ordered = [.. values.Order()];
        return ordered.Length == 0 ? double.NaN : ordered[ordered.Length / 2];
    }

    private static string Said(Figure figure) => Text($"{figure.Value:F3} ± {figure.Error:F3}");

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
