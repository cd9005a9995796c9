using Coolproof.Evidence.Curves;
using Coolproof.Evidence.Model;
using CsCheck;

namespace Coolproof.Evidence.Tests.Curves;

public class RunGridTests
{
    private static readonly ModelRun Run = DayModelBuilder.Build(InventedDays.Plain(1, 1)).Runs[0];

    [Fact]
    public void A_grid_rises_from_the_end_of_driving_through_the_halt_past_the_last_reading() =>
        Gen.Select(Gen.Double[0.001, 40], Gen.Double[0, 900]).Sample((rollIn, last) =>
        {
            RunGrid grid = RunGrid.Of(Run, rollIn, last);
            Assert.Equal(RunGrid.Points, grid.Seconds.Length);
            Assert.Equal(-rollIn, grid.Seconds[0]);
            Assert.Equal(0, grid.Seconds[grid.Halt]);
            Assert.Equal(Math.Max(90, 1.3 * last), grid.Seconds[^1], 1e-9);
            Assert.All(grid.Seconds.Zip(grid.Seconds.Skip(1)), pair => Assert.True(pair.First < pair.Second));
        });

    [Fact]
    public void The_instant_when_the_fan_stops_is_on_the_grid()
    {
        ModelRun run = DayModelBuilder.Build(InventedDays.Rich()).Runs.First(r => !double.IsNaN(r.FanStopsS));
        RunGrid grid = RunGrid.Of(run, 5, 30);
        Assert.Contains(run.FanStopsS, grid.Seconds);
        Assert.Equal(grid.Seconds.Order(), grid.Seconds);
    }
}
