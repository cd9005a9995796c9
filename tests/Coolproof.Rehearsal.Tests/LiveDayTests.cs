namespace Coolproof.Rehearsal.Tests;

/// <summary>A made-up motor that a person drives: physics that anybody can check, and no chance that isn't the seed's.</summary>
public sealed class LiveDayTests
{
    private static readonly RehearsalOption[] Options = [new("bare", HasFan: false), new("fan")];

    [Fact]
    public void The_same_presses_give_the_same_numbers_and_another_seed_gives_others()
    {
        double[] Reads(long seed) => [.. Day(seed).Drive([Run(0, 0, shots: [10, 30]), Run(1, 1500, shots: [10])]).SelectMany(run => run.ReadC)];
        Assert.Equal(Reads(3), Reads(3));
        Assert.NotEqual(Reads(3), Reads(4));
    }

    [Fact]
    public void A_shot_added_later_changes_no_number_before_it()
    {
        LiveDay day = Day(5);
        double[] before = [.. day.Drive([Run(1, 0, shots: [8, 25])])[0].ReadC], after = [.. day.Drive([Run(1, 0, shots: [8, 25, 60]), Run(0, 1500, shots: [9])])[0].ReadC];
        Assert.Equal(before, after[..2]);
    }

    [Fact]
    public void Who_goes_again_at_once_inherits_warmth_and_who_cools_longer_or_with_a_pit_fan_less()
    {
        for (long seed = 1; seed <= 20; seed++)
        {
            LiveDay day = Day(seed);
            double After(double seconds, params DrivenCooling[] coolings) =>
                day.Drive([Run(0, 0, shots: [10]) with { Coolings = coolings }, Run(0, 368 + seconds, shots: [10])])[1].InheritedK;
            double soon = After(120), later = After(1200), blown = After(1200, new DrivenCooling(400, 1568, Fan: false, Pit: true, 0)), cold = After(1200, new DrivenCooling(400, 1568, Fan: false, Pit: true, 8));
            Assert.True(soon > later && later > blown && blown > cold, $"seed {seed}: {soon:0.00}, {later:0.00}, {blown:0.00}, {cold:0.00} K");
            Assert.InRange(soon, 0.1, 40); // six minutes of driving forget most of it in a motor that is quick
        }
    }

    [Fact]
    public void The_core_stays_warm_behind_a_can_that_was_blown_down()
    {
        for (long seed = 1; seed <= 20; seed++)
        {
            DrivenTruth second = Day(seed).Drive([Run(0, 0, shots: [10]) with { Coolings = [new DrivenCooling(380, 620, Fan: false, Pit: true, 0)] }, Run(0, 620, shots: [10])])[1];
            Assert.True(second.CoreOverAirK > second.CanOverAirK, $"seed {seed}: core {second.CoreOverAirK:0.0}, can {second.CanOverAirK:0.0} K");
        }
    }

    [Fact]
    public void Fair_runs_end_where_the_truth_says_but_for_what_chance_adds()
    {
        // Refit, load and day are drawn with sds of a few per cent each: over seeds they cancel to about a kelvin.
        double[] off = [.. Enumerable.Range(1, 60).Select(seed =>
        {
            LiveDay day = Day(seed);
            DrivenTruth run = day.Drive([Run(0, 0, shots: [10])])[0];
            return run.CanAtStopC - run.InheritedK - day.Truth.Peaks(run.AirC, 360)[0].CanC;
        })];
        Assert.InRange(off.Average(), -2, 2);
        Assert.All(off, k => Assert.InRange(k, -25, 25));
    }

    private static LiveDay Day(long seed) => new(new RehearsalSettings(seed, Options));

    private static DrivenRun Run(int option, double goS, double[] shots) =>
        new(option, goS, goS + 360, goS + 368, double.PositiveInfinity, [.. shots.Select((after, i) => new DrivenShot(goS + 368 + after, (int)goS + 7 * i))], []);
}
