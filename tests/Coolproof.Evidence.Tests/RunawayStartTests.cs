using Coolproof.Rehearsal;

namespace Coolproof.Evidence.Tests;

public class RunawayStartTests
{
    /// <summary>Four evenings without delays, on one of which a run was all but free: a chain that began far out began with a motor that runs away, and found no step.</summary>
    [Fact]
    public void A_chain_that_would_begin_with_a_motor_that_runs_away_begins_nearer()
    {
        SimulatedDay evenings = Rehearse.Day(DayGenerator.Settings(91_031, sameOptionTwice: false) with { Evenings = 4, RunsPerOption = 2 });
        Assert.IsType<Judged>(Judge.Of(evenings.Table, new(25, 360)));
    }
}
