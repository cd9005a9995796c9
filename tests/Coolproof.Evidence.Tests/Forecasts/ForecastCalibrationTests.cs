using System.Globalization;
using MathNet.Numerics.Statistics;

namespace Coolproof.Evidence.Tests.Forecasts;

/// <summary>How often a forecast of a race day comes true, over races driven with the full model.</summary>
public class ForecastCalibrationTests(ITestOutputHelper output)
{
    // A notebook gives four cases; now and then one can't be judged.
    private const int ManyDays = 80, ManyDaysWithWinding = 90;

    [Fact]
    [Trait("Suite", "long")]
    public void Races_end_within_what_was_forecast_as_often_as_was_said()
    {
        ForecastCase[] cases = ManyCases(ForecastFrom.Can);
        // The bars are 85 to 95 %, with a point for chance, and 1.5 for the width, which is missed without readings of the winding (docs/forecast.md): here, that it gets no worse.
        Assert.InRange(Covered(cases, c => c.Can, c => c.TrueCanC), 0.85, 0.96);
        Assert.InRange(Covered(cases, c => c.Winding, c => c.TrueWindingC), 0.85, 0.96);
        Assert.InRange(Wider(cases, c => c.Can, c => c.IdealCanK), 0.5, 1.65);
    }

    [Fact]
    [Trait("Suite", "long")]
    public void Where_the_winding_was_measured_too_forecasts_are_at_most_half_as_wide_again_as_an_ideal_observer_s()
    {
        ForecastCase[] cases = ManyCases(ForecastFrom.CanAndWinding);
        Assert.InRange(Covered(cases, c => c.Can, c => c.TrueCanC), 0.85, 0.95);
        Assert.InRange(Covered(cases, c => c.Winding, c => c.TrueWindingC), 0.85, 0.95);
        Assert.InRange(Wider(cases, c => c.Can, c => c.IdealCanK), 0.5, 1.5);
        Assert.InRange(Wider(cases, c => c.Winding, c => c.IdealWindingK), 0.5, 1.5);
        // Odds are those that come, all told and where the forecast is in doubt, within three points and two errors.
        foreach (ForecastCase[] some in new[] { cases, [.. cases.Where(c => c.Odds is > 0.2 and < 0.8)] })
            Assert.InRange(some.Average(ToldLessPassed), -0.03 - 2 * Error(some, ToldLessPassed), 0.03 + 2 * Error(some, ToldLessPassed));
    }

    /// <summary>Few days: that nothing is absurd. With resistances a notebook takes two minutes, so those are in the long suite only.</summary>
    [Fact]
    public void On_a_few_days_races_end_near_what_was_forecast()
    {
        const int days = 5;
        using ForecastLog log = new(ForecastFrom.Can);
        ForecastCase[] cases = Cases(days, ForecastFrom.Can, log);
        Print(cases);
        Assert.True(cases.Length >= 4 * (days - 1));
        Assert.InRange(Covered(cases, c => c.Can, c => c.TrueCanC), 0.6, 1);
        Assert.InRange(Covered(cases, c => c.Winding, c => c.TrueWindingC), 0.6, 1);
    }

    private ForecastCase[] ManyCases(ForecastFrom from)
    {
        int many = from == ForecastFrom.Can ? ManyDays : ManyDaysWithWinding, days = int.TryParse(Environment.GetEnvironmentVariable("COOLPROOF_FORECAST_DAYS"), out int asked) ? asked : many;
        using ForecastLog log = new(from);
        output.WriteLine(Text($"{days} notebooks, {log.Path}"));
        ForecastCase[] cases = Cases(days, from, log);
        Print(cases);
        Assert.True(days < many || cases.Length >= 300, $"{cases.Length} cases");
        return cases;
    }

    private static ForecastCase[] Cases(int days, ForecastFrom from, ForecastLog log)
    {
        ForecastCase[][] all = new ForecastCase[days][];
        Parallel.For(0, days, new ParallelOptions { MaxDegreeOfParallelism = 2 }, d => all[d] = [.. log.Of(50_000 + d, seed => ForecastDay.Of(seed, from))]);
        return [.. all.SelectMany(c => c)];
    }

    private void Print(ForecastCase[] cases)
    {
        output.WriteLine(Text($"{cases.Length} cases of {cases.Select(c => c.Day).Distinct().Count()} days: 90 % intervals cover can {Covered(cases, c => c.Can, c => c.TrueCanC):P1}, winding {Covered(cases, c => c.Winding, c => c.TrueWindingC):P1}, magnet {Covered(cases, c => c.Magnet, c => c.TrueMagnetC):P1}"));
        output.WriteLine(Text($"forecast less what came, median: can {cases.Select(c => c.Can.Q50 - c.TrueCanC).Median():F2} K, winding {cases.Select(c => c.Winding.Q50 - c.TrueWindingC).Median():F2} K, magnet {cases.Select(c => c.Magnet.Q50 - c.TrueMagnetC).Median():F2} K"));
        output.WriteLine(Text($"width over an ideal observer's, median: can {Wider(cases, c => c.Can, c => c.IdealCanK):F2}, winding {Wider(cases, c => c.Winding, c => c.IdealWindingK):F2}; over one's who doesn't know the winding's own constants, winding {Wider(cases, c => c.Winding, c => c.CanReaderWindingK):F2}; widths {cases.Select(c => c.Can.Q95 - c.Can.Q05).Median():F1} and {cases.Select(c => c.Winding.Q95 - c.Winding.Q05).Median():F1} K"));
        ForecastCase[] with = [.. cases.Where(c => c.Without.Count > 0)];
        for (int i = 0; i < ForecastSources.Names.Count && with.Length > 0; i++)
            output.WriteLine(Text($"{with.Length} cases without {ForecastSources.Names[i]}: width over the whole's, median: can {with.Select(c => c.Without[i].CanK / c.Without[0].CanK).Median():F2}, winding {with.Select(c => c.Without[i].WindingK / c.Without[0].WindingK).Median():F2}; over the ideal's {with.Select(c => c.Without[i].CanK / c.IdealCanK).Median():F2} and {with.Select(c => c.Without[i].WindingK / c.IdealWindingK).Median():F2}"));
        output.WriteLine(Text($"a limit at the forecast's own 5, 50 and 95 % (told 95, 50 and 5 %) is passed: can {Passed(cases, c => c.Can, c => c.TrueCanC)}; winding {Passed(cases, c => c.Winding, c => c.TrueWindingC)}; magnet {Passed(cases, c => c.Magnet, c => c.TrueMagnetC)}"));
        foreach (IGrouping<int, ForecastCase> bin in cases.GroupBy(c => Math.Min((int)(5 * c.Odds), 4)).OrderBy(g => g.Key))
            output.WriteLine(Text($"odds told {bin.Average(c => c.Odds):P0}: passed in {bin.Average(c => c.Passed):P0} ± {Error([.. bin], c => c.Passed - c.Odds):P0} of the races of {bin.Count()} cases"));
        output.WriteLine(Text($"odds of all: told less passed {cases.Average(ToldLessPassed):P1} ± {Error(cases, ToldLessPassed):P1}; errors by notebooks: coverage ± {Error(cases, c => Holds(c.Can, c.TrueCanC)):P1} and {Error(cases, c => Holds(c.Winding, c.TrueWindingC)):P1}, can forecast less what came {cases.Average(c => c.Can.Q50 - c.TrueCanC):F2} ± {Error(cases, c => c.Can.Q50 - c.TrueCanC):F2} K on average"));
    }

    private static double ToldLessPassed(ForecastCase c) => c.Odds - c.Passed;

    // Standard error of a mean over cases: those of one notebook share its motor, so notebooks are what is drawn, not cases.
    private static double Error(ForecastCase[] cases, Func<ForecastCase, double> of)
    {
        double mean = cases.Average(of);
        double[] sums = [.. cases.GroupBy(c => c.Day).Select(g => g.Sum(c => of(c) - mean))];
        return Math.Sqrt(sums.Length / (sums.Length - 1.0) * sums.Sum(s => s * s)) / cases.Length;
    }

    private static double Holds(Summary said, double came) => came >= said.Q05 && came <= said.Q95 ? 1 : 0;

    private static double Covered(ForecastCase[] cases, Func<ForecastCase, Summary> said, Func<ForecastCase, double> came) =>
        cases.Average(c => Holds(said(c), came(c)));

    private static string Passed(ForecastCase[] cases, Func<ForecastCase, Summary> said, Func<ForecastCase, double> came) =>
        string.Join(", ", new Func<Summary, double>[] { s => s.Q05, s => s.Q50, s => s.Q95 }.Select(limit => Text($"{cases.Average(c => came(c) > limit(said(c)) ? 1.0 : 0):P1}")));

    private static double Wider(ForecastCase[] cases, Func<ForecastCase, Summary> said, Func<ForecastCase, double> ideal) =>
        cases.Select(c => (said(c).Q95 - said(c).Q05) / ideal(c)).Median();

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
