using System.Diagnostics;
using Coolproof.Evidence.Curves;
using Coolproof.Notebook;
using Coolproof.Rehearsal;
using Coolproof.Thermal.FullModel;

namespace Coolproof.Evidence.Tests.Curves;

public class CorrectedAgainstTruthTests(ITestOutputHelper output)
{
    [Fact]
    public void Corrected_readings_of_rehearsed_days_lie_closer_to_the_true_can_than_raw_ones()
    {
        double rawSquares = 0, correctedSquares = 0, within = 0, bands = 0;
        int count = 0;
        foreach (SimulatedDay day in new[] { DemoEvenings.OneEvening(), DayGenerator.Day(3), DayGenerator.Day(11) })
        {
            foreach ((RunCurve curve, double trueC) in WithTruth(day, RunCurves.Of(SampledDay.Of(day.Table))))
            {
                rawSquares += curve.Readings.Sum(r => Math.Pow(r.ReadC - trueC, 2));
                correctedSquares += curve.Readings.Sum(r => Math.Pow(r.CorrectedC - trueC, 2));
                count += curve.Readings.Count;
                bands++;
                within += trueC >= curve.CanC[0].Q05 && trueC <= curve.CanC[0].Q95 ? 1 : 0;
            }
        }
        double raw = Math.Sqrt(rawSquares / count), corrected = Math.Sqrt(correctedSquares / count);
        output.WriteLine($"{count} readings: raw {raw:0.00} K, corrected {corrected:0.00} K off; true can within the 90 % band in {within} of {bands} runs");
        // A gun's common offset (sd 1.5 K) no table tells of: it stays in what is corrected.
        Assert.True(corrected < 0.85 * raw, $"raw {raw} K, corrected {corrected} K");
        Assert.True(within / bands > 0.7, $"{within} of {bands}");
    }

    [Fact]
    public void A_reading_made_wild_and_a_run_made_hot_are_called_out_and_the_rest_are_not()
    {
        ReadingsTable table = InventedDays.Plain(3, 5, clock: true);
        Run[] runs = [.. table.Runs];
        runs[4] = runs[4] with { Readings = [.. runs[4].Readings.Select((r, i) => i == 1 ? r with { ReadC = r.ReadC + 15 } : r)] };
        runs[9] = runs[9] with { Readings = [.. runs[9].Readings.Select(r => r with { ReadC = r.ReadC + 25 })] };
        IReadOnlyList<RunCurve> curves = RunCurves.Of(SampledDay.Of(table with { Runs = runs }));
        foreach (RunCurve curve in curves)
            output.WriteLine($"{curve.Run}: {curve.Outlier ?? "fits"}");
        Assert.Matches(@"^the second reading \(line 15\) is 1[2-7] K above the rest of its run$", curves[4].Outlier);
        Assert.Matches(@"^the motor made [2-9]\d % more heat than the other runs let expect$", curves[9].Outlier);
        Assert.Equal(2, curves.Count(c => c.Outlier is not null));
    }

    [Fact]
    public void The_time_for_thirty_runs_is_measured()
    {
        Dictionary<string, double>[] points = [.. Enumerable.Range(0, 1000).Select(i => new Dictionary<string, double> { ["core to can"] = Math.Sin(i) })];
        Posterior posterior = ChosenPoints.Of(InventedDays.Plain(6, 5, delays: false), points);
        double[] ms = [.. Enumerable.Range(0, 25).Select(_ =>
        {
            long from = Stopwatch.GetTimestamp();
            Assert.Equal(30, RunCurves.Of(posterior).Count);
            return Stopwatch.GetElapsedTime(from).TotalMilliseconds;
        })];
        output.WriteLine($"30 runs with 90 unknown delays: first {ms[0]:0.0}, median {ms.Order().ElementAt(12):0.0}, least {ms.Min():0.0} ms");
    }

    private static IEnumerable<(RunCurve Curve, double TrueC)> WithTruth(SimulatedDay day, IReadOnlyList<RunCurve> curves) =>
        curves.Select(c => (c, day.Truth.Runs[day.Table.Runs.ToList().FindIndex(r => r.Day == c.Day && r.Name == c.Run)].EndC[(int)Node.Can]));
}
