using System.Globalization;
using MathNet.Numerics.Statistics;

namespace Coolproof.Advice.Tests.Gearing;

/// <summary>
/// Notebooks by the full model with a truth of their own (<see cref="GearNotebook"/>): whether the quickest safe choice is the one that brute force finds, what its true odds are, and whether forecasts
/// for another pinion come true (docs/gear.md).
/// </summary>
public class GearCalibrationTests(ITestOutputHelper output)
{
    private const int Notebooks = 200, Few = 4, Draws = 200, Threads = 2;

    // A lap time that no transponder tells apart.
    private const double SameLapS = 0.02;

    [Fact]
    [Trait("Suite", "long")]
    public void The_quickest_safe_choice_is_brute_force_s_and_forecasts_for_another_pinion_come_true()
    {
        int notebooks = Asked("COOLPROOF_GEAR_NOTEBOOKS", Notebooks);
        GearCase[] cases = Cases(notebooks, Asked("COOLPROOF_GEAR_DRAWS", Draws));
        Print(cases);
        Assert.True(cases.Length >= 0.97 * notebooks, $"{cases.Length} judged of {notebooks}");
        (double same, double of) = (cases.Count(Same), cases.Length);
        Assert.True(same / of + 1.645 * Error(same / of, of) >= 0.95, $"the same choice in {same} of {of}");
        Assert.All(cases.Where(Picked), c => Assert.True(c.Brute <= 2 * c.Accepted, $"{c.Seed}: {c.Brute} of {c.Accepted}"));
        GearCase[] come = Come(cases);
        Assert.InRange(come.Average(CanCame), 0.85 - 1.645 * Error(0.85, come.Length), 0.95 + 1.645 * Error(0.95, come.Length));
        Assert.InRange(come.Average(WindingCame), 0.85 - 1.645 * Error(0.85, come.Length), 0.95 + 1.645 * Error(0.95, come.Length));
    }

    /// <summary>Few notebooks: that nothing is absurd.</summary>
    [Fact]
    public void On_a_few_notebooks_sweep_and_brute_force_agree_and_races_end_near_what_was_forecast()
    {
        GearCase[] cases = Cases(Few, 60);
        Print(cases);
        Assert.True(cases.Length >= Few - 1);
        Assert.All(cases, c => Assert.True(c.OddsOff < 0.05 && c.LapOff < 0.05, $"{c.Seed}: odds off by {c.OddsOff}, laps by {c.LapOff}"));
        Assert.All(cases.Where(Picked), c => Assert.True(c.Brute <= 2 * c.Accepted));
        Assert.All(Come(cases), c => Assert.InRange(c.TrueCanC, c.Can50 - 2 * (c.Can95 - c.Can05), c.Can50 + 2 * (c.Can95 - c.Can05)));
    }

    private static GearCase[] Cases(int notebooks, int draws)
    {
        GearCase?[] cases = new GearCase?[notebooks];
        using StreamWriter log = new(Environment.GetEnvironmentVariable("COOLPROOF_GEAR_LOG") ?? Path.Combine(Path.GetTempPath(), $"coolproof-gear-{Environment.ProcessId}-{notebooks}.csv")) { AutoFlush = true };
        log.WriteLine(GearCase.Head);
        Lock writing = new();
        Parallel.For(0, notebooks, new ParallelOptions { MaxDegreeOfParallelism = Asked("COOLPROOF_GEAR_THREADS", Threads) }, i =>
        {
            if (GearNotebook.Of(70_000 + i) is not { } book)
                return;
            GearCase found = cases[i] = GearCase.Of(book, draws);
            lock (writing)
                log.WriteLine(found.Line);
        });
        return [.. cases.OfType<GearCase>()];
    }

    private void Print(GearCase[] cases)
    {
        GearCase[] picked = [.. cases.Where(Picked)], come = Come(cases);
        double same = cases.Count(Same), near = cases.Count(c => Same(c) || Math.Abs(c.PickLater) < SameLapS);
        output.WriteLine(Text($"{cases.Length} notebooks, {cases.Count(c => c.Pinions > 1)} with two pinions; a choice is made on {picked.Length}"));
        output.WriteLine(Text($"the choice of brute force: {Share(same, cases.Length)}; that, or one as quick within {SameLapS} s: {Share(near, cases.Length)}; odds off by {cases.Average(c => c.OddsOff):P2} on average, laps by {cases.Select(c => c.LapOff).Median():P2} (median of the largest)"));
        output.WriteLine(Text($"odds of the choice, mean: accepted {picked.Average(c => c.Accepted):P1}, told {picked.Average(c => c.Told):P1}, by brute force {picked.Average(c => c.Brute):P1} (over twice the accepted: {picked.Count(c => c.Brute > 2 * c.Accepted)})"));
        GearCase[] known = [.. picked.Where(c => !double.IsNaN(c.True))];
        output.WriteLine(Text($"true odds: mean {known.Average(c => c.True):P1} ± {known.Select(c => c.True).StandardDeviation() / Math.Sqrt(known.Length):P1}; over twice the accepted: {Share(known.Count(c => c.True > 2 * c.Accepted), known.Length)}; {picked.Length - known.Length} can't truly be driven"));
        foreach (IGrouping<string, GearCase> kind in come.GroupBy(_ => "all").Concat(come.GroupBy(c => c.Pinions > 1 ? "two pinions" : "one pinion")))
            PrintCome(kind.Key, [.. kind]);
    }

    private void PrintCome(string kind, GearCase[] cases)
    {
        double can = Ratio(c => (c.Can95 - c.Can05) / c.IdealCanK), winding = Ratio(c => (c.Winding95 - c.Winding05) / c.IdealWindingK), reader = Ratio(c => (c.Winding95 - c.Winding05) / c.CanReaderWindingK);
        output.WriteLine(Text($"another pinion, {kind}: 90 % intervals hold the can on {Share(cases.Sum(CanCame), cases.Length)}, the winding on {Share(cases.Sum(WindingCame), cases.Length)}"));
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

    private static string Share(double some, double of) => Text($"{some / of:P1} ± {Error(some / of, of):P1} ({some:0} of {of:0})");

    private static int Asked(string name, int otherwise) => int.TryParse(Environment.GetEnvironmentVariable(name), NumberStyles.None, CultureInfo.InvariantCulture, out int asked) ? asked : otherwise;

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
