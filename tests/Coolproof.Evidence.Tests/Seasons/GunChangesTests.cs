using System.Globalization;
using Coolproof.Evidence.Earlier;
using Coolproof.Notebook;
using Coolproof.Rehearsal;
using MathNet.Numerics.Distributions;

namespace Coolproof.Evidence.Tests.Seasons;

/// <summary>A gun that reads 6 K more or less than before, in seasons driven with the full model: three earlier days, then one or two with two runs an option.</summary>
public class GunChangesTests(ITestOutputHelper output)
{
    private const int EarlierDays = 3, Runs = 2, FirstSeed = 7_300_001;
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
        const int Seasons = 600;
        foreach (Hands hands in new[] { Hands.Good, Hands.Bad })
        {
            foreach (int days in new[] { 1, 2 })
            {
                int alarms = 0, noticed = 0;
                for (int s = 0; s < Seasons; s++)
                {
                    (ReadingsTable now, ReadingsTable before) = Season(s, hands, days);
                    alarms += GunChanges.Most(GunChanges.Of(now, [before])) is not null ? 1 : 0;
                    noticed += GunChanges.Most(GunChanges.Of(Off(now, s % 2 == 0 ? OffK : -OffK), [before])) is not null ? 1 : 0;
                }

                output.WriteLine(string.Create(CultureInfo.InvariantCulture,
                    $"{hands} hands, {days} new {(days == 1 ? "day" : "days")} of {Runs} runs an option: {(double)noticed / Seasons:P1} of guns {OffK} K off noticed (bar 90 %), false alarms {(double)alarms / Seasons:P1} (bar 5 %)"));
                Assert.True(Binomial.CDF(0.05, Seasons, alarms) < 0.95, $"{alarms} false alarms in {Seasons}");
            }
        }
    }

    private static (ReadingsTable Now, ReadingsTable Before) Season(int seed, Hands hands, int days)
    {
        RehearsalSettings settings = new(FirstSeed + seed, [new("a"), new("b"), new("c")], Runs) { Evenings = EarlierDays + days, Hands = hands, StartNoted = true };
        ReadingsTable season = Rehearse.Day(settings).Table;
        string[] names = [.. season.Runs.Select(r => r.Day).Distinct()];
        ReadingsTable Part(string[] of) => season with { Runs = [.. season.Runs.Where(r => of.Contains(r.Day))] };
        return (Part(names[EarlierDays..]), Part(names[..EarlierDays]));
    }

    private static ReadingsTable Off(ReadingsTable table, double offK) => table with
    {
        Runs = [.. table.Runs.Select(r => r with { StartC = r.StartC + offK, Readings = [.. r.Readings.Select(x => x with { ReadC = x.ReadC + offK })] })],
    };

    private static ReadingsTable Day(string day, double? overAirK)
    {
        ReadingsTable table = Rehearse.Day(new RehearsalSettings(1, [new("a"), new("b")], 1)).Table;
        return table with { Runs = [.. table.Runs.Select(r => r with { Day = day, AirC = 20, StartC = 20 + overAirK, Readings = [r.Readings[0]] })] };
    }
}
