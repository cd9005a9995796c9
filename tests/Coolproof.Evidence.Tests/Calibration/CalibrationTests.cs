using System.Globalization;
using Coolproof.Rehearsal;

namespace Coolproof.Evidence.Tests.Calibration;

/// <summary>How often a verdict is right, over days simulated with the full model (docs/calibration.md).</summary>
public class CalibrationTests(ITestOutputHelper output)
{
    private const int ManyDays = 300, ManyTwins = 150, FewDays = 6, DaysOfStratum = 40;
    private const double MostNotConverged = 0.02, MostWrong = 0.025, MostTwinsParted = 0.05, MostOverOracle = 1.10, LeastFirm = 0.85, Doubtful = 0.05;

    [Fact]
    [Trait("Suite", "long")]
    public void Verdicts_are_right_as_often_as_they_say_over_three_hundred_days()
    {
        DayOutcome[] days = CalibrationRun.Of("calibration", CalibrationRun.Days(ManyDays), DayGenerator.Day, oracle: true, output);
        StratumFigures[] strata = [.. Stratification.All.Select((s, i) => new StratumFigures(s.Name, [.. days.Where(d => s.Holds(d.Stratum))], 100 + i))];
        output.WriteLine(CalibrationTable.Head);
        foreach (StratumFigures stratum in strata)
            output.WriteLine(CalibrationTable.Line(stratum));
        List<string> missed = Missed(strata[0]);
        missed.AddRange(strata.Skip(1).Where(s => s.Days >= DaysOfStratum).SelectMany(MissedIn));
        Assert.True(missed.Count == 0, string.Join(Environment.NewLine, missed));
    }

    [Fact]
    [Trait("Suite", "long")]
    public void One_option_under_two_names_is_seldom_called_cooler()
    {
        DayOutcome[] days = CalibrationRun.Of("same-option-twice", CalibrationRun.Days(ManyTwins), DayGenerator.SameOptionTwice, oracle: false, output);
        (int parted, int judged) = Twins(days);
        int same = days.Where(d => d.Judged).Count(d => Twin(d).Call == PairCall.Same);
        output.WriteLine(Text($"one of the twins is called cooler on {parted} of {judged} days, both the same on {same}; {days.Length - judged} days not judged"));
        Assert.True(judged > 0 && BinomialTest.AtLeast(parted, judged, MostTwinsParted) >= Doubtful, $"{parted} of {judged} days");
        Assert.True(BinomialTest.AtLeast(days.Length - judged, days.Length, MostNotConverged) >= Doubtful, $"{days.Length - judged} of {days.Length} days were not judged");
    }

    /// <summary>Few days: that the machinery runs, and nothing is absurd. Truths three sds off are rare on any six days.</summary>
    [Fact]
    public void On_a_few_days_verdicts_lie_near_the_truth()
    {
        DayOutcome[] days = CalibrationRun.Of("calibration-short", FewDays, DayGenerator.Day, oracle: false, output);
        StratumFigures all = new("all days", days, 1);
        output.WriteLine(CalibrationTable.Head);
        output.WriteLine(CalibrationTable.Line(all));
        Assert.InRange(all.NotConverged, 0, 1);
        Assert.InRange(all.PairCoverage.Value, 0.6, 1);
        Assert.InRange(all.WindingCoverage.Value, 0.5, 1);
        Assert.True(all.Wrong <= 1, $"{all.Wrong} of {all.Firm} firm calls are wrong");
        Assert.True(all.OverNaive.Value < 1.2, $"{all.OverNaive.Value} times the error of first reading minus air");
    }

    private static List<string> Missed(StratumFigures all)
    {
        List<string> missed = [];
        void Ask(bool met, FormattableString said)
        {
            if (!met)
                missed.Add(Text(said));
        }
        Ask(BinomialTest.AtLeast(all.NotConverged, all.Days, MostNotConverged) >= Doubtful, $"{all.NotConverged} of {all.Days} days were not judged");
        foreach ((string of, double share) in new[] { ("differences on the can", all.PairCoverage.Value), ("differences on the winding", all.WindingPairCoverage.Value), ("the winding", all.WindingCoverage.Value) })
            Ask(share is >= 0.85 and <= 0.95, $"90 % intervals of {of} hold {share:P1}");
        Ask(BinomialTest.AtLeast(all.Wrong, all.Firm, MostWrong) >= Doubtful, $"{all.Wrong} of {all.Firm} firm calls are wrong");
        Ask(all.FirmOverOracle.High >= LeastFirm, $"firm calls are {all.FirmOverOracle.Value:F2} of the oracle's");
        Ask(all.OverOracle.Low <= MostOverOracle, $"the error is {all.OverOracle.Value:F2} times the oracle's");
        Ask(Math.Abs(all.Slope.Value - 1) <= 2 * all.Slope.Error, $"the slope of probabilities is {all.Slope.Value:F2} ± {all.Slope.Error:F2}");
        return missed;
    }

    private static IEnumerable<string> MissedIn(StratumFigures s)
    {
        foreach ((string of, double share) in new[] { ("differences on the can", s.PairCoverage.Value), ("differences on the winding", s.WindingPairCoverage.Value), ("the winding", s.WindingCoverage.Value) })
        {
            if (share is not (>= 0.80 and <= 0.98))
                yield return Text($"{s.Name}: 90 % intervals of {of} hold {share:P1}");
        }
        if (!(s.OverOracle.Low <= MostOverOracle))
            yield return Text($"{s.Name}: the error is {s.OverOracle.Value:F2} times the oracle's");
    }

    private static PairOutcome Twin(DayOutcome day)
    {
        string last = $"option {(char)('A' + day.Stratum.Options - 1)}";
        return day.On(ComparedOn.Can).First(p => (p.A, p.B) == ("option A", last) || (p.B, p.A) == ("option A", last));
    }

    private static (int Parted, int Judged) Twins(DayOutcome[] days) => (days.Where(d => d.Judged).Count(d => Twin(d).Firm), days.Count(d => d.Judged));

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
