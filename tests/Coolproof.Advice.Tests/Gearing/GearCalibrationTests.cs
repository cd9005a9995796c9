using System.Globalization;
using Coolproof.Advice.Gearing;
using MathNet.Numerics.Statistics;

namespace Coolproof.Advice.Tests.Gearing;

/// <summary>
/// Notebooks by the full model with a truth of their own (<see cref="GearNotebook"/>): whether the quickest safe choice is the one that brute force finds, what its true odds are, and whether forecasts
/// for another pinion come true (docs/gear.md).
/// </summary>
public class GearCalibrationTests(ITestOutputHelper output)
{
    private const int Notebooks = 40, Few = 4, Questions = 3, Draws = 200, Threads = 2;

    // A lap time that no transponder tells apart.
    private const double SameLapS = 0.02;

    /// <summary>Three questions to each of 40 notebooks of a kind: 240 choices, of which half are of six evenings, whose forecasts for another pinion are held to the bar of width too.</summary>
    [Fact]
    [Trait("Suite", "long")]
    public void The_quickest_safe_choice_is_brute_force_s_and_forecasts_for_another_pinion_come_true()
    {
        int notebooks = Asked("COOLPROOF_GEAR_NOTEBOOKS", Notebooks), draws = Asked("COOLPROOF_GEAR_DRAWS", Draws);
        GearCase[] six = Cases(notebooks, GearFrom.SixEvenings, draws), cases = [.. six, .. Cases(notebooks, GearFrom.TwoEvenings, draws)];
        Print(cases);
        Assert.True(cases.Length >= 0.97 * 2 * Questions * notebooks, $"{cases.Length} cases of {2 * notebooks} notebooks");
        (double same, double of) = (cases.Count(Same), cases.Length);
        Assert.True(same / of + 1.645 * Error(same / of, of) >= 0.95, $"the same choice in {same} of {of}");
        Assert.All(cases.Where(Picked), c => Assert.True(c.Brute <= 2 * c.Accepted, $"{c.Seed}: {c.Brute} of {c.Accepted}"));
        GearCase[] come = Come(cases), rich = Come(six);
        Assert.InRange(come.Average(CanCame), 0.85 - 1.645 * Error(come, CanCame), 0.95 + 1.645 * Error(come, CanCame));
        Assert.InRange(come.Average(WindingCame), 0.85 - 1.645 * Error(come, WindingCame), 0.95 + 1.645 * Error(come, WindingCame));
        Assert.InRange(rich.Select(c => (c.Can95 - c.Can05) / c.IdealCanK).Median(), 0.5, 1.5);
        Assert.InRange(rich.Select(c => (c.Winding95 - c.Winding05) / c.IdealWindingK).Median(), 0.5, 1.5);
    }

    /// <summary>Few notebooks: that nothing is absurd.</summary>
    [Fact]
    public void On_a_few_notebooks_sweep_and_brute_force_agree_and_races_end_near_what_was_forecast()
    {
        GearCase[] cases = Cases(Few, GearFrom.TwoEvenings, 60, questions: 1);
        Print(cases);
        Assert.True(cases.Length >= Few - 1);
        Assert.All(cases, c => Assert.True(c.OddsOff < 0.05 && c.LapOff < 0.05, $"{c.Seed}: odds off by {c.OddsOff}, laps by {c.LapOff}"));
        Assert.All(cases.Where(Picked), c => Assert.True(c.Brute <= 2 * c.Accepted));
        Assert.All(Come(cases), c => Assert.InRange(c.TrueCanC, c.Can50 - 2 * (c.Can95 - c.Can05), c.Can50 + 2 * (c.Can95 - c.Can05)));
    }

    private static GearCase[] Cases(int notebooks, GearFrom from, int draws, int questions = Questions)
    {
        GearCase[][] cases = new GearCase[notebooks][];
        using StreamWriter log = new((Environment.GetEnvironmentVariable("COOLPROOF_GEAR_LOG") ?? Path.Combine(Path.GetTempPath(), $"coolproof-gear-{Environment.ProcessId}-{notebooks}")) + $"-{from}.csv") { AutoFlush = true };
        log.WriteLine(GearCase.Head);
        Lock writing = new();
        Parallel.For(0, notebooks, new ParallelOptions { MaxDegreeOfParallelism = Asked("COOLPROOF_GEAR_THREADS", Threads) }, i =>
        {
            Dictionary<GearChoice, LapFigures[]> laps = [];
            cases[i] = GearNotebook.Of(70_000 + i, from) is { } book ? [.. Enumerable.Range(0, questions).Select(asked => GearCase.Of(book, asked, draws, laps))] : [];
            lock (writing)
                foreach (GearCase found in cases[i])
                    log.WriteLine(found.Line);
        });
        return [.. cases.SelectMany(c => c)];
    }

    private void Print(GearCase[] cases)
    {
        GearCase[] picked = [.. cases.Where(Picked)], come = Come(cases);
        output.WriteLine(Text($"{cases.Length} questions to {cases.DistinctBy(c => (c.Seed, c.Evenings)).Count()} notebooks; a choice is made in {picked.Length}"));
        output.WriteLine(Text($"the choice of brute force: {Share(cases, c => Same(c) ? 1 : 0)}; that, or one as quick within {SameLapS} s: {Share(cases, c => Same(c) || Math.Abs(c.PickLater) < SameLapS ? 1 : 0)}; odds off by {cases.Average(c => c.OddsOff):P2} on average, laps by {cases.Select(c => c.LapOff).Median():P2} (median of the largest)"));
        output.WriteLine(Text($"odds of the choice, mean: accepted {picked.Average(c => c.Accepted):P1}, told {picked.Average(c => c.Told):P1}, by brute force {picked.Average(c => c.Brute):P1} (over twice the accepted: {picked.Count(c => c.Brute > 2 * c.Accepted)})"));
        foreach (GearCase[] known in picked.Where(c => !double.IsNaN(c.True)).GroupBy(c => c.Evenings).Select(g => g.ToArray()))
            output.WriteLine(Text($"{known[0].Evenings} evenings: odds accepted on average {known.Average(c => c.Accepted):P1}, told {known.Average(c => c.Told):P1}, true {known.Average(c => c.True):P1} ± {Error(known, c => c.True):P1}; true over twice the accepted: {Share(known, c => c.True > 2 * c.Accepted ? 1 : 0)}"));
        output.WriteLine(Text($"{picked.Count(c => double.IsNaN(c.True))} choices can't truly be driven"));
        foreach (IGrouping<string, GearCase> kind in come.GroupBy(_ => "all").Concat(come.GroupBy(c => Text($"{c.Evenings} evenings, {c.Pinions} pinions"))))
            PrintCome(kind.Key, [.. kind]);
    }

    private void PrintCome(string kind, GearCase[] cases)
    {
        double can = Ratio(c => (c.Can95 - c.Can05) / c.IdealCanK), winding = Ratio(c => (c.Winding95 - c.Winding05) / c.IdealWindingK), reader = Ratio(c => (c.Winding95 - c.Winding05) / c.CanReaderWindingK);
        output.WriteLine(Text($"another pinion, {kind}: 90 % intervals hold the can on {Share(cases, CanCame)}, the winding on {Share(cases, WindingCame)}"));
        output.WriteLine(Text($"  width over an ideal observer's, median: can {can:F2}, winding {winding:F2} (over one's who doesn't know the winding's own constants {reader:F2}); widths {Ratio(c => c.Can95 - c.Can05):F1} and {Ratio(c => c.Winding95 - c.Winding05):F1} K; with the notebook's own gearing the can's is {Ratio(c => c.OwnCanK / c.IdealCanK):F2} times that ideal"));
        output.WriteLine(Text($"  forecast less what came, median: can {Ratio(c => c.Can50 - c.TrueCanC):F1} K, winding {Ratio(c => c.Winding50 - c.TrueWindingC):F1} K; log heat of the gearing off by an sd of {cases.Select(c => c.LogHeatOff).StandardDeviation():F3} (mean {cases.Average(c => c.LogHeatOff):F3}), told {cases.Average(c => c.HeatSd):F3}"));
        double Ratio(Func<GearCase, double> of) => cases.Select(of).Median();
    }

    private static bool Picked(GearCase c) => !double.IsNaN(c.Pick);

    private static bool Same(GearCase c) => c.Pick.Equals(c.BrutePick);

    private static GearCase[] Come(GearCase[] cases) => [.. cases.Where(c => !double.IsNaN(c.Can05))];

    private static double CanCame(GearCase c) => c.TrueCanC >= c.Can05 && c.TrueCanC <= c.Can95 ? 1 : 0;

    private static double WindingCame(GearCase c) => c.TrueWindingC >= c.Winding05 && c.TrueWindingC <= c.Winding95 ? 1 : 0;

    private static double Error(double share, double of) => Math.Sqrt(share * (1 - share) / of);

    // Questions to one notebook share its motor, so notebooks are what is drawn.
    private static double Error(GearCase[] cases, Func<GearCase, double> of)
    {
        double mean = cases.Average(of);
        double[] sums = [.. cases.GroupBy(c => (c.Seed, c.Evenings)).Select(g => g.Sum(c => of(c) - mean))];
        return Math.Sqrt(sums.Length / (sums.Length - 1.0) * sums.Sum(s => s * s)) / cases.Length;
    }

    private static string Share(GearCase[] cases, Func<GearCase, double> of) => Text($"{cases.Average(of):P1} ± {Error(cases, of):P1} ({cases.Sum(of):0} of {cases.Length})");

    private static int Asked(string name, int otherwise) => int.TryParse(Environment.GetEnvironmentVariable(name), NumberStyles.None, CultureInfo.InvariantCulture, out int asked) ? asked : otherwise;

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
