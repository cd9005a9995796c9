using Coolproof.Advice.Orders;

namespace Coolproof.Advice.Tests.Orders;

public class OrderSearchTests(ITestOutputHelper output)
{
    private static readonly RunNoise Noise = new();

    [Theory]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(6)]
    [InlineData(7)]
    [InlineData(8)]
    public void The_search_beats_random_rounds_in_expected_width(int options)
    {
        Random random = new(options);
        double sumOfSearch = 0, sumOfRandom = 0;
        const int days = 6, draws = 20;
        for (int day = 0; day < days; day++)
        {
            DayLimits limits = RandomSwaps(options, random);
            PlannedOrder best = OrderSearch.Best(limits, Noise, day);
            double[] randomised = [.. Enumerable.Range(0, draws).Select(i => OrderSearch.Randomised(limits, Noise, 1000 + i).ExpectedWidthK)];
            Assert.True(best.ExpectedWidthK <= randomised.Average());
            sumOfSearch += best.ExpectedWidthK / days;
            sumOfRandom += randomised.Average() / days;
        }
        output.WriteLine($"{options} options: expected width {sumOfSearch:F2} K by the search, {sumOfRandom:F2} K by random rounds");
        Assert.True(sumOfSearch < sumOfRandom);
    }

    [Fact]
    public void Every_whole_round_holds_each_option_once()
    {
        PlannedOrder plan = OrderSearch.Best(DayLimits.Plain(5, 8 * 3600, 600), Noise, 3);
        for (int from = 0; from + 5 <= plan.Options.Count; from += 5)
            Assert.Equal(Enumerable.Range(0, 5), plan.Options.Skip(from).Take(5).Order());
        Assert.Equal(plan.Options.Count / 5, plan.WidthAfterRoundK.Count);
        Assert.Equal(plan.WidthAfterRoundK.OrderDescending(), plan.WidthAfterRoundK);
    }

    [Fact]
    public void What_cant_be_undone_comes_last_and_as_often_as_the_rest()
    {
        PlannedOrder plan = OrderSearch.Best(DayLimits.Plain(4, 6 * 3600, 600) with { CantBeUndone = [1] }, Noise, 1);
        int first = plan.Options.ToList().IndexOf(1);
        Assert.All(plan.Options.Skip(first), o => Assert.Equal(1, o));
        Assert.Single(plan.Options.GroupBy(o => o).Select(g => g.Count()).Distinct());
    }

    [Fact]
    public void A_reference_is_driven_first_and_last()
    {
        DayLimits limits = DayLimits.Plain(3, 9 * (360 + 120 + 900), 300) with { Reference = 2 };
        PlannedOrder plan = OrderSearch.Best(limits, Noise, 1);
        Assert.Equal(2, plan.Options[0]);
        Assert.Equal(2, plan.Options[^1]);
    }

    [Fact]
    public void Packs_and_chargers_hold_the_day_up()
    {
        DayLimits limits = DayLimits.Plain(3, 5 * 3600, 300);
        Assert.Equal(2, DaySchedule.Of([0, 1, 2, 0, 1, 2], limits with { Packs = 2, Chargers = 0 }).Runs);
        DaySchedule slow = DaySchedule.Of([0, 1, 2, 0, 1, 2], limits with { Packs = 1, Chargers = 1 });
        Assert.Equal(360 + 900 + 2700, slow.StartS[1] - slow.StartS[0], 9);
        Assert.True(slow.WaitedForPackS > 0);
    }

    [Fact]
    public void Blocks_are_expected_to_be_wider_than_the_search()
    {
        DayLimits limits = DayLimits.Plain(2, 6 * (360 + 120 + 900), 300);
        PlannedOrder blocks = OrderSearch.Given([0, 0, 0, 1, 1, 1], limits, Noise), best = OrderSearch.Best(limits, Noise, 1);
        Assert.Equal(blocks.Options.Count, best.Options.Count);
        Assert.True(best.ExpectedWidthK < 0.8 * blocks.ExpectedWidthK, $"{best.ExpectedWidthK} against {blocks.ExpectedWidthK}");
    }

    [Fact]
    public void More_runs_narrow_the_answer_and_none_leaves_the_prior()
    {
        ExpectedWidth width = new(Noise);
        double none = width.Of([], [], 2), two = width.Of([0, 1], [0, 1500], 2), four = width.Of([0, 1, 1, 0], [0, 1500, 3000, 4500], 2);
        Assert.Equal(2 * 1.6448536269514722 * Math.Sqrt(2) * Noise.OptionK, none, 9);
        Assert.True(four < two && two < none);
    }

    private static DayLimits RandomSwaps(int options, Random random)
    {
        DayLimits limits = DayLimits.Plain(options, 8 * 3600, 0);
        for (int a = 0; a < options; a++)
            for (int b = 0; b < options; b++)
                limits.SwapS[a, b] = a == b ? 0 : 120 + 1500 * random.NextDouble();
        return limits;
    }
}
