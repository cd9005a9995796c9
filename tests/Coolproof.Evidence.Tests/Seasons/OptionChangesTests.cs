using System.Globalization;
using Coolproof.Evidence.Earlier;
using Coolproof.Notebook;
using Coolproof.Rehearsal;
using MathNet.Numerics.Distributions;

namespace Coolproof.Evidence.Tests.Seasons;

/// <summary>An option altered between days, in seasons driven with the full model: three earlier days of three runs an option, then one or two days with "b" altered by a quarter, or not.</summary>
public class OptionChangesTests(ITestOutputHelper output)
{
    private const int EarlierDays = 3, EarlierRounds = 3;
    private static readonly (int Days, int RunsADay)[] Cells = [(1, 2), (1, 3), (1, 4), (1, 6), (2, 2), (2, 3)];

    [Fact]
    public void An_option_halved_is_noticed_and_the_same_option_is_not()
    {
        Assert.True(Change(1, 0.5, 1, 4).Change.Sds > OptionChanges.Limit(1));
        Assert.True(Change(1, 1, 1, 4).Change.Sds < OptionChanges.Limit(3));
    }

    [Fact]
    public void The_limit_is_that_of_the_normal_for_all_options_together()
    {
        // Two-sided 5 % point of the normal distribution; three together: 1 - 0.95^(1/3) = 1.695 %, 2.388 (tables of the normal, from memory).
        Assert.Equal(1.960, OptionChanges.Limit(1), 3);
        Assert.Equal(2.388, OptionChanges.Limit(3), 3);
    }

    [Fact]
    [Trait("Suite", "long")]
    public void Altered_options_are_noticed()
    {
        const int Seasons = 40;
        foreach ((int days, int runs) in Cells)
        {
            int[] alarms = [0, 0];
            int noticed = 0, noticedOfThree = 0;
            double ideal = 0, sd = 0;
            Parallel.For(0, Seasons, new ParallelOptions { MaxDegreeOfParallelism = 2 }, s =>
            {
                (OptionChange same, _) = Change(s + 1, 1, days, runs);
                (OptionChange altered, double idealSd) = Change(s + 1, s % 2 == 0 ? 1.25 : 0.75, days, runs);
                double size = Math.Abs(Math.Log(s % 2 == 0 ? 1.25 : 0.75));
                lock (alarms)
                {
                    alarms[0] += same.Sds > OptionChanges.Limit(1) ? 1 : 0;
                    alarms[1] += same.Sds > OptionChanges.Limit(3) ? 1 : 0;
                    noticed += altered.Sds > OptionChanges.Limit(1) ? 1 : 0;
                    noticedOfThree += altered.Sds > OptionChanges.Limit(3) ? 1 : 0;
                    ideal += Normal.CDF(0, 1, size / idealSd - OptionChanges.Limit(1)) / Seasons;
                    sd += altered.Sd / Seasons;
                }
            });
            output.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"{days} days of {runs} runs: noticed {noticed} of {Seasons} (limit for three options {noticedOfThree}), false alarms {alarms[0]} ({alarms[1]}), sd {sd:F3}, ideal observer {ideal:P0}"));
            // A twentieth of 40 is exceeded by this much once in a hundred times.
            Assert.True(alarms[0] <= 6, $"{alarms[0]} false alarms in {Seasons}");
        }
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
