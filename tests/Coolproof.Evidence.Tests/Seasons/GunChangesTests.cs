using System.Globalization;
using Coolproof.Evidence.Earlier;
using Coolproof.Notebook;
using Coolproof.Rehearsal;
using MathNet.Numerics.Distributions;

namespace Coolproof.Evidence.Tests.Seasons;

/// <summary>A gun that reads 6 K more or less than before, in seasons driven with the full model: one or three earlier days, then one with two runs an option.</summary>
public class GunChangesTests(ITestOutputHelper output)
{
    private const int Runs = 2, FirstSeed = 7_300_001;
    private const double OffK = 6;

    [Fact]
    public void A_gun_is_set_beside_what_it_read_before_and_what_guns_are_off_by()
    {
        // By hand, without hot readings in threes: 1² + 0.7² + 1² = 2.49 a day, before it 0.05 × 24 × 1² more for wild shots; guns are off by 1.5. Before: two days at 1 K, precision 1/2.25 + 2/3.69 = 0.98645,
        // mean 0.54201/0.98645 = 0.54945. Off by 4.45055, sd √(2.49 + 1/0.98645) = 1.87186: 2.3776 of them. Chance 0.95 × 0.01743 + 0.05 × 2Φ(-4.45055/√27.504 = -0.8486) = 0.0364.
        GunChange change = Assert.Single(GunChanges.Of(Day("new", 5), [Day("a", 1), Day("b", 1)]));
        Assert.Equal((2, 5.0), (change.Days, change.NowK));
        Assert.Equal(0.54945, change.BeforeK, 1e-5);
        Assert.Equal(2.3776, change.Sds, 1e-3);
        Assert.Equal(0.0364, change.Chance, 5e-4);
        Assert.Equal(5 / Math.Sqrt(2.49 + 2.25), Assert.Single(GunChanges.Of(Day("new", 5), [])).Sds, 9);
    }

    [Fact]
    public void Where_nobody_read_the_cold_can_nothing_is_said() => Assert.Empty(GunChanges.Of(Day("new", null), [Day("a", 1)]));

    [Fact]
    [Trait("Suite", "long")]
    public void A_gun_six_kelvin_off_is_noticed()
    {
        const int Seasons = 200;
        int all = 0, asked = 0;
        foreach (Hands hands in new[] { Hands.Good, Hands.Bad })
        {
            foreach (int days in new[] { 1, 3 })
            {
                bool[][] said = new bool[Seasons][];
                Parallel.For(0, Seasons, s =>
                {
                    (ReadingsTable now, ReadingsTable before) = Season(s, hands, days);
                    said[s] = [IsNamed(now, before), IsNamed(Off(now, s % 2 == 0 ? OffK : -OffK), before)];
                });
                (int alarms, int noticed) = (said.Count(x => x[0]), said.Count(x => x[1]));
                (all, asked) = (all + noticed, asked + Seasons);
                output.WriteLine(string.Create(CultureInfo.InvariantCulture,
                    $"{hands} hands, {days} earlier {(days == 1 ? "day" : "days")}, {Runs} runs an option: {(double)noticed / Seasons:P1} of guns {OffK} K off noticed (bar 90 %), false alarms {(double)alarms / Seasons:P1} (bar 5 %)"));
                Assert.True(Binomial.CDF(0.05, Seasons, alarms) < 0.95, $"{alarms} false alarms in {Seasons}");
            }
        }

        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"all: {(double)all / asked:P1} (bar 90 %)"));
        Assert.True(Binomial.CDF(0.9, asked, all) > 0.05, $"{all} of {asked} noticed");
    }

    [Fact]
    public void All_cans_before_runs_are_set_beside_those_of_other_days()
    {
        // Two days, the same two kinds of cans: 5 and 7 K over what they should have been, before 1 and 2. By hand: the difference is 4.5, every residual a quarter; the scale's squares settle at s² = (0.25 w + 3 × 1.2²)/4 with
        // w = 5/(4 + 0.25²/s²): 1.15708; the sd is √(1.15708 × 7/5 + 2 × 0.7²) = 1.61243. A t of 2.791 with four degrees of freedom lies just beyond 2.776, which one in twenty passes (any handbook's table of t).
        ColdCan[] cans = [new("gun", "now", true, "a", 5), new("gun", "now", true, "b", 7), new("gun", "then", false, "a", 1), new("gun", "then", false, "b", 2)];
        ColdCanContrast contrast = ColdCanContrast.Of(cans, 0.7)!;
        Assert.Equal((1, 2, 1.5), (contrast.Days, contrast.Cans, contrast.BeforeK));
        Assert.Equal(4.5, contrast.DifferenceK, 1e-9);
        Assert.Equal(1.61243, contrast.Sd, 1e-5);
        Assert.InRange(contrast.Chance, 0.0485, 0.05);
    }

    [Fact]
    public void Cans_of_other_kinds_only_can_not_be_set_beside_each_other() =>
        Assert.Null(ColdCanContrast.Of([new("gun", "now", true, "a", 5), new("gun", "now", true, "a", 6), new("gun", "then", false, "b", 1), new("gun", "then", false, "b", 0)], 0.7));

    [Fact]
    public void A_wild_shot_at_one_can_does_not_name_the_gun()
    {
        ColdCan[] cans = [.. Enumerable.Range(0, 12).Select(i => new ColdCan("gun", i < 6 ? "now" : "then", i < 6, $"option {i % 3}", i == 2 ? 14 : 0.5 * Math.Sin(3 * i)))];
        Assert.True(ColdCanContrast.Of(cans, 0.7)!.Chance > 0.1);
    }

    private static bool IsNamed(ReadingsTable now, ReadingsTable before) => GunChanges.Most(GunChanges.Of(now, [before])) is not null;

    private static (ReadingsTable Now, ReadingsTable Before) Season(int seed, Hands hands, int earlier)
    {
        RehearsalSettings settings = new(FirstSeed + seed, [new("a"), new("b"), new("c")], Runs) { Evenings = earlier + 1, Hands = hands, StartNoted = true };
        ReadingsTable season = Rehearse.Day(settings).Table;
        string[] names = [.. season.Runs.Select(r => r.Day).Distinct()];
        ReadingsTable Part(string[] of) => season with { Runs = [.. season.Runs.Where(r => of.Contains(r.Day))] };
        return (Part(names[earlier..]), Part(names[..earlier]));
    }

    private static ReadingsTable Off(ReadingsTable table, double offK) => table with
    {
        Runs = [.. table.Runs.Select(r => r with { StartC = r.StartC + offK, Readings = [.. r.Readings.Select(x => x with { ReadC = x.ReadC + offK })] })],
    };

    private static ReadingsTable Day(string day, double? overAirK)
    {
        ReadingsTable table = Rehearse.Day(new RehearsalSettings(1, [new("a"), new("b")], 1)).Table;
        return table with { Runs = [.. table.Runs.Select((r, i) => r with { Day = day, AirC = 20, StartC = i == 0 ? 20 + overAirK : null, Readings = [r.Readings[0]] })] };
    }
}
