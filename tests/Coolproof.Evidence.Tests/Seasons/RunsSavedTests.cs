using System.Globalization;
using Coolproof.Notebook;
using Coolproof.Rehearsal;
using MathNet.Numerics.Statistics;

namespace Coolproof.Evidence.Tests.Seasons;

/// <summary>
/// Runs that earlier days of the same motor save on a new one: seasons driven with the full model, judged together by the quick path. Options "a" and "b" are driven on every day, "c" is new on the last.
/// </summary>
public class RunsSavedTests(ITestOutputHelper output)
{
    // The quick path is too sure of ten days (docs/decisions/earlier-days.md): they are told, not promised.
    private const int Rounds = 4, MostTrusted = 3;
    private const double FairAirC = 25, FairDriveS = 360;
    private static readonly int[] Earlier = [1, 3, 10];

    [Fact]
    public void In_a_few_seasons_an_earlier_day_narrows_the_interval()
    {
        Cell[] cells = Seasons(6, [0, 1]);
        foreach (bool fresh in new[] { false, true })
            Assert.True(Width(cells, 1, Rounds, fresh) < Width(cells, 0, Rounds, fresh));
    }

    [Fact]
    [Trait("Suite", "long")]
    public void Earlier_days_save_runs()
    {
        Cell[] cells = Seasons(40, [0, .. Earlier]);
        List<string> missed = [];
        foreach (bool fresh in new[] { false, true })
        {
            double alone = Width(cells, 0, Rounds, fresh);
            foreach (int before in (int[])[0, .. Earlier])
            {
                double[] widths = [.. Enumerable.Range(0, Rounds + 1).Select(n => Width(cells, before, n, fresh))];
                int needed = Array.FindIndex(widths, w => w <= alone);
                Cell[] last = [.. cells.Where(c => c.Before == before && c.Rounds == Rounds && c.Fresh == fresh)];
                double covered = last.Average(c => c.Covers ? 1.0 : 0);
                output.WriteLine(string.Create(CultureInfo.InvariantCulture,
                    $"{(fresh ? "a new option against a known one" : "two known options")}, {before} earlier days: 90 % interval after 0 to {Rounds} runs an option {string.Join(", ", widths.Select(w => double.IsNaN(w) ? "-" : w.ToString("F1", CultureInfo.InvariantCulture)))} K; as narrow as {Rounds} runs alone after {needed}; covers the truth {covered:P0} of {last.Length}; rough {last.Average(c => c.Rough ? 1.0 : 0):P0}"));
                if (before > MostTrusted)
                    continue;
                // A share of 0.9 is met within three standard errors, pairs of a season counted as one.
                if (covered < 0.9 - 3 * Math.Sqrt(0.9 * 0.1 / 40))
                    missed.Add($"{before} days, {(fresh ? "new" : "known")}: covers {covered:P0}");
                if (before > 0 && (needed < 0 || needed >= Rounds))
                    missed.Add($"{before} days, {(fresh ? "new" : "known")}: no run saved");
            }
        }
        Assert.True(missed.Count == 0, string.Join(Environment.NewLine, missed));
    }

    private static double Width(Cell[] cells, int before, int rounds, bool fresh)
    {
        double[] widths = [.. cells.Where(c => c.Before == before && c.Rounds == rounds && c.Fresh == fresh).Select(c => c.WidthK)];
        return widths.Length == 0 ? double.NaN : widths.Median();
    }

    private static Cell[] Seasons(int seasons, int[] earlier)
    {
        List<Cell>[] cells = [.. Enumerable.Range(0, seasons).Select(_ => new List<Cell>())];
        Parallel.For(0, seasons, new ParallelOptions { MaxDegreeOfParallelism = 2 }, s =>
        {
            foreach (int before in earlier)
                cells[s].AddRange(Season(s + 1, before, earlier.Max() + 1));
        });
        return [.. cells.SelectMany(c => c)];
    }

    // Until the last day "c" goes by another name, so that its runs warm the motor and tell of it, but not of the new option.
    private static IEnumerable<Cell> Season(int seed, int before, int evenings)
    {
        SimulatedDay season = Rehearse.Day(new RehearsalSettings(6_100_000 + seed, [new("a"), new("b"), new("c")], Rounds) { Evenings = evenings });
        string[] days = [.. season.Table.Runs.Select(r => r.Day).Distinct()];
        Run[] today = [.. season.Table.Runs.Where(r => r.Day == days[^1])];
        Run[] old = [.. season.Table.Runs.Where(r => days[^(before + 1)..^1].Contains(r.Day)).Select(r => r.Option == "c" ? r with { Option = "c before" } : r)];
        Dictionary<string, double> truth = season.Truth.Peaks(FairAirC, FairDriveS).ToDictionary(p => p.Option, p => p.CanC);
        QuickVerdict? part = null;
        for (int rounds = old.Length > 0 ? 0 : 1; rounds <= Rounds; rounds++)
        {
            ReadingsTable table = season.Table with { Runs = [.. old, .. today.Take(3 * rounds)], Options = old.Length > 0 ? ["a", "b", "c", "c before"] : ["a", "b", "c"] };
            part = QuickJudge.Of(table, new JudgeSettings(Seed: seed) { AmbientC = FairAirC, DriveS = FairDriveS }, part: part)!;
            foreach ((string x, string y) in new[] { ("a", "b"), ("a", "c"), ("b", "c") })
            {
                int i = part.Options.ToList().IndexOf(x), j = part.Options.ToList().IndexOf(y);
                if (i < 0 || j < 0)
                    continue;
                double[] difference = part.Difference(i, j);
                double low = difference.Quantile(0.05), high = difference.Quantile(0.95), true_ = truth[x] - truth[y];
                yield return new(before, rounds, y == "c", high - low, low <= true_ && true_ <= high, part.Rough);
            }
        }
    }

    /// <summary>One pair of one season.</summary>
    /// <param name="Before">Earlier days.</param>
    /// <param name="Rounds">Runs of each option on the last day.</param>
    /// <param name="Fresh">Whether one of the pair is new.</param>
    /// <param name="WidthK">Of the 90 % interval of the difference of fair can peaks, K.</param>
    /// <param name="Covers">Whether it holds the true difference.</param>
    /// <param name="Rough">Whether the quick path calls itself rough.</param>
    private readonly record struct Cell(int Before, int Rounds, bool Fresh, double WidthK, bool Covers, bool Rough);
}
