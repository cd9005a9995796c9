using System.Globalization;
using Coolproof.Evidence.Earlier;
using Coolproof.Notebook;
using Coolproof.Rehearsal;
using MathNet.Numerics.Distributions;

namespace Coolproof.Evidence.Tests.Seasons;

/// <summary>An option altered between days, in seasons driven with the full model: three earlier days of three runs an option, then one or two days with "b" altered by a quarter, or not.</summary>
public class OptionChangesTests(ITestOutputHelper output)
{
    // Other seasons than those that the limit was measured on.
    private const int EarlierDays = 3, EarlierRounds = 3, FirstSeed = 3001;
    private static readonly (int Days, int RunsADay)[] Cells = [(1, 2), (1, 3), (1, 4), (1, 6), (2, 2), (2, 3)];

    [Fact]
    public void An_option_halved_is_noticed_and_the_same_option_is_not()
    {
        Assert.True(Change(1, 0.5, 1, 4).Change.LogEvidence > OptionChanges.Limit(3));
        Assert.True(Change(1, 1, 1, 4).Change.LogEvidence < OptionChanges.Limit(1));
    }

    [Theory]
    // Two normal densities by hand: sd 0.08 is a part of 0.75 of the readings' own precision, so they say x = m / 0.75 with sd 0.0924; at m = 0.15 ½(N(0.2 - 0.2) + N(0.2 + 0.2)) / N(0.2) = ½(e^2.344 + e^-7.03) = 5.21.
    [InlineData(0.15, 0.08, 5.21)]
    [InlineData(-0.15, 0.08, 5.21)]
    // At no change e^(-0.04 × 0.75 / 0.0128) = 0.096.
    [InlineData(0, 0.08, 0.096)]
    public void How_much_likelier_a_change_of_a_fifth_is_agrees_with_the_densities(double mean, double sd, double times) =>
        Assert.Equal(times, Math.Exp(new OptionChange("a", mean, sd).LogEvidence), times / 100);

    [Fact]
    [Trait("Suite", "long")]
    public void Altered_options_are_noticed()
    {
        const int Seasons = 300;
        int alarmsInAll = 0, noticedInAll = 0;
        foreach ((int days, int runs) in Cells)
        {
            int alarms = 0, alarmsOfThree = 0, noticed = 0, noticedOfThree = 0;
            double ideal = 0, sd = 0;
            Parallel.For(0, Seasons, new ParallelOptions { MaxDegreeOfParallelism = 2 }, s =>
            {
                double factor = s % 2 == 0 ? 1.25 : 0.75;
                (OptionChange same, _) = Change(s + FirstSeed, 1, days, runs);
                (OptionChange altered, double idealSd) = Change(s + FirstSeed, factor, days, runs);
                lock (output)
                {
                    alarms += same.LogEvidence > OptionChanges.Limit(1) ? 1 : 0;
                    alarmsOfThree += same.LogEvidence > OptionChanges.Limit(3) ? 1 : 0;
                    noticed += altered.LogEvidence > OptionChanges.Limit(1) ? 1 : 0;
                    noticedOfThree += altered.LogEvidence > OptionChanges.Limit(3) ? 1 : 0;
                    ideal += Normal.CDF(0, 1, Math.Abs(Math.Log(factor)) / idealSd - Normal.InvCDF(0, 1, 0.975)) / Seasons;
                    sd += altered.Sd / Seasons;
                }
            });
            output.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"{days} days of {runs} runs: noticed {noticed} of {Seasons} (limit for three options {noticedOfThree}), false alarms {alarms} ({alarmsOfThree}), sd {sd:F3}, ideal observer {ideal:P0}"));
            alarmsInAll += alarms;
            noticedInAll += noticed;
        }

        int all = Seasons * Cells.Length;
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"all: noticed {(double)noticedInAll / all:P1} (bar 90 %), false alarms {(double)alarmsInAll / all:P1} (bar 5 %)"));
        // One-sided 95 % points of the binomial: what a chance of 5 %, or of 90 %, still gives of so many.
        Assert.True(Binomial.CDF(0.05, all, alarmsInAll) < 0.95, $"{alarmsInAll} false alarms in {all}");
        Assert.True(Binomial.CDF(0.9, all, noticedInAll) > 0.05, $"{noticedInAll} noticed of {all}");
    }

    // Before, the altered "d" counts by another name; on the new days it stands for "b", and "b" is driven by another name. The ideal observer knows all but each run's load and mounting.
    private static (OptionChange Change, double IdealSd) Change(int seed, double factor, int days, int runs)
    {
        RehearsalSettings settings = new(6_200_000 + seed, [new("a"), new("b"), new("c"), new("d", SameAs: "b")], 6) { Evenings = EarlierDays + 2 };
        if (factor != 1)
        {
            double watts = Rehearse.Day(settings).Truth.Options[1].WattsPerKelvin;
            settings = settings with { Options = [new("a"), new("b"), new("c"), new("d", factor * watts)] };
        }
        SimulatedDay season = Rehearse.Day(settings);
        string[] names = [.. season.Table.Runs.Select(r => r.Day).Distinct()];
        ReadingsTable Part(IEnumerable<string> of, int rounds, Func<string, string> named) => season.Table with
        {
            Runs = [.. of.SelectMany(day => season.Table.Runs.Where(r => r.Day == day).Take(4 * rounds)).Select(r => r with { Option = named(r.Option) })],
            Options = [.. new[] { "a", "b", "c", "d" }.Select(named)],
        };
        ReadingsTable before = Part(names[..EarlierDays], EarlierRounds, o => o == "d" ? "d before" : o);
        ReadingsTable now = Part(names[EarlierDays..(EarlierDays + days)], runs, o => o == "d" ? "b" : o == "b" ? "b as it was" : o);
        Hyperparameters h = season.Truth.Hyperparameters;
        double ideal = Math.Sqrt((h.LoadSd * h.LoadSd + h.MountingSd * h.MountingSd) * (1.0 / (days * runs) + 1.0 / (EarlierDays * EarlierRounds)));
        return (OptionChanges.Of(now, [before], new JudgeSettings(Seed: seed)).Single(c => c.Option == "b"), ideal);
    }
}
