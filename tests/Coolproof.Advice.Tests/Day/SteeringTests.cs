using Coolproof.Advice.Day;
using Coolproof.Evidence;

namespace Coolproof.Advice.Tests.Day;

public class SteeringTests
{
    [Fact]
    public void A_clear_lead_is_settled() => Assert.Equal(GoOn.Settled, Steering.After(Believed(1, 0, 20), ["o0", "o1"], 4, new()).Call);

    [Fact]
    public void An_open_lead_is_driven_on() => Assert.Equal(GoOn.DriveOn, Steering.After(Believed(4, 0, 6), ["o0", "o1"], 6, new()).Call);

    [Fact]
    public void Without_runs_left_the_day_is_over() => Assert.Equal(GoOn.DayOver, Steering.After(Believed(4, 0, 6), ["o0", "o1"], 0, new()).Call);

    [Fact]
    public void A_rough_judging_settles_nothing() => Assert.NotEqual(GoOn.Settled, Steering.After(Believed(1, 0, 20) with { Rough = true }, ["o0", "o1"], 4, new()).Call);

    [Fact]
    public void An_option_not_driven_yet_comes_first()
    {
        DayAdvice advice = Steering.After(Believed(4, 0, 6), ["o0", "o1", "new"], 6, new());
        Assert.Equal("new", advice.Next[0].Option);
        Assert.Equal(["new"], advice.Unseen);
    }

    [Fact]
    public void A_run_of_the_two_in_question_tells_more_than_one_of_a_third()
    {
        DayAdvice advice = Steering.After(Believed(4, 0, 3, 30), ["o0", "o1", "o2"], 6, new());
        Assert.Equal("o2", advice.Next[^1].Option);
        Assert.True(advice.Next[0].NarrowsK > 0);
    }

    [Fact]
    public void The_option_that_is_still_fitted_is_not_driven_again_at_once()
    {
        string first = Steering.After(Believed(4, 0, 3, 30), ["o0", "o1", "o2"], 6, new()).Next[0].Option;
        DayAdvice advice = Steering.After(Believed(4, 0, 3, 30), ["o0", "o1", "o2"], 6, new(), fitted: first.ToUpperInvariant());
        Assert.NotEqual(first, advice.Next[0].Option);
        Assert.Equal(first, advice.Next[^1].Option);
    }

    [Fact]
    public void More_runs_left_give_a_narrower_end_and_a_better_chance()
    {
        DayAdvice few = Steering.After(Believed(4, 0, 6), ["o0", "o1"], 2, new()), many = Steering.After(Believed(4, 0, 6), ["o0", "o1"], 12, new());
        Assert.True(many.IntervalThenK < few.IntervalThenK && few.IntervalThenK < few.IntervalK);
        Assert.True(many.ChanceSettled >= few.ChanceSettled);
    }

    [Fact]
    public void Before_any_reading_every_option_is_still_to_be_driven() =>
        Assert.Equal(["a", "b"], Steering.After(null, ["a", "b"], 4, new()).Next.Select(n => n.Option));

    // Independent normal beliefs about each option's can peak.
    private static QuickVerdict Believed(double sdK, params double[] peaksC)
    {
        Coolproof.Sampling.RandomStream chance = new(5);
        return new(new(25, 360), [.. peaksC.Select((_, k) => $"o{k}")], [.. peaksC.Select(p => Enumerable.Range(0, 1000).Select(_ => 60 + p + sdK * chance.NextNormal()).ToArray())], [], false);
    }
}
