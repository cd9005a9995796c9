using Coolproof.Advice.Day;
using Coolproof.Advice.Orders;

namespace Coolproof.Advice.Tests.Day;

public sealed class DayPlanTests
{
    private const double RoomForS = (360 + 120 + 900) * 8.1;

    private static readonly string[] Options = ["bare can", "clamp", "blower", "fan", "duct", "cut shell"];

    // Eight runs fit: four options twice each, so six take two evenings. What can't be undone makes the order shorter, not the day.
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_day_has_room_for_as_many_runs_with_something_that_cant_be_undone(bool cut)
    {
        DayLimits limits = DayLimits.Plain(Options.Length, RoomForS, 300) with { CantBeUndone = cut ? [5] : [] };
        DayPlan plan = DayPlan.Of(Options, limits, new(), 1);
        Assert.Equal(2, plan.Dropped.Count);
        Assert.Equal(2, plan.Evenings.Count);
        Assert.StartsWith("8 runs fit, too few for 6 options twice each", plan.Advice[0]);
    }

    // Whoever wants but one round of a long day isn't told that the day is too short.
    [Fact]
    public void One_round_by_choice_is_not_called_a_day_too_short()
    {
        DayPlan plan = DayPlan.Of(Options, DayLimits.Plain(Options.Length, 8 * 3600, 300) with { MostRounds = 1 }, new(), 1);
        Assert.Equal(Options.Length, plan.Runs.Count);
        Assert.Empty(plan.Dropped);
        Assert.StartsWith("Not every option comes twice", plan.Advice[0]);
    }
}
