using Coolproof.Evidence.Words;
using Coolproof.Notebook;

namespace Coolproof.Evidence.Tests.Words;

public class WarningsTests
{
    private static readonly ReadingsTable Table = InventedDays.Plain(2, 3, clock: true).With((r, _) => Read(r, x => x with { Surface = SpotSurface.Tape }));

    private static Run Read(Run run, Func<Reading, Reading> change) => run with { Readings = [.. run.Readings.Select(change)] };

    private static IReadOnlyList<string> Of(ReadingsTable table)
    {
        IReadOnlyList<string> warnings = Warnings.Of(table, Said.Options(table));
        Assert.All(warnings, Said.AssertPlain);
        return warnings;
    }

    public static TheoryData<string, Func<Run, int, Run>> Flaws => new()
    {
        { "The spot was on tape or paint for one option", (r, i) => i % 2 == 0 ? Read(r, x => x with { Surface = SpotSurface.Bare }) : r },
        { "No reading is known to be on matt tape or paint", (r, _) => Read(r, x => x with { Surface = SpotSurface.Unknown }) },
        { "Option A and option B share no day", (r, i) => r with { Day = i % 2 == 0 ? "first" : "second" } },
        { "Option A and option B can't be compared", (r, i) => i % 2 == 0 ? Read(r, x => x with { Spot = Spot.Endbell }) : r },
        { "Option A is not ranked: it was read only on a fin", (r, i) => i % 2 == 0 ? Read(r, x => x with { Spot = Spot.Fin }) : r },
        { "Option A is not ranked: its fan failed in every run", (r, i) => i % 2 == 0 ? r with { Fan = FanInRun.Failed } : r },
        { "Option A is not ranked: all of its runs are warm-ups or void", (r, i) => i % 2 == 0 ? r with { Kind = RunKind.Void } : r },
        { "All 18 readings have no seconds from halt: a wide guess stands in, and it widens everything", (r, _) => Read(r, x => x with { StopToReadS = null }) },
        { "3 of 18 readings have no seconds from halt: a wide guess stands in.", (r, i) => i == 0 ? Read(r, x => x with { StopToReadS = null }) : r },
        { "No air was noted at all", (r, _) => r with { AirC = null } },
        { "1 of 6 runs has no air noted", (r, i) => i == 1 ? r with { AirC = null } : r },
        { "The air of all 6 runs is from a forecast, which is good to about 2 K", (r, _) => r with { AirBy = AirSource.Forecast } },
        { "The air of 1 of 6 runs is by the gun", (r, i) => i == 0 ? r with { AirBy = AirSource.Gun } : r },
        { "All 6 runs have neither a clock time nor the can before the run", (r, _) => r with { StartedAt = null } },
        { "Readings are by 2 instruments", (r, i) => Read(r, x => x with { Instrument = i == 0 ? "old gun" : "new gun" }) },
        { "There is only one run of option A.", (r, i) => i is 0 or 1 or 3 or 5 ? r : r with { Kind = RunKind.Void } },
        { "2 void runs and 1 warm-up stay out of the ranking", (r, i) => r with { Kind = i == 0 ? RunKind.WarmUp : i < 3 ? RunKind.Void : RunKind.Test } },
        { "1 run with a fan that failed stays out", (r, i) => i == 0 ? r with { Fan = FanInRun.Failed } : r },
        { "1 race counts as weak evidence", (r, i) => i == 0 ? r with { Kind = RunKind.Race } : r },
        { "3 readings are left out as the table asks: 3 for \"glare\".", (r, i) => i == 0 ? Read(r, x => x with { ExcludedBecause = "glare" }) : r },
        { "All 18 readings are the same number", (r, _) => Read(r, x => x with { ReadC = 60 }) },
        { "All 6 runs have no driving time noted", (r, _) => r with { DriveAssumed = true } },
        { "For all 6 runs it was not noted whether the fan ran on", (r, _) => r with { FanAfterStop = FanAfterStop.Unknown } },
    };

    [Theory]
    [MemberData(nameof(Flaws), DisableDiscoveryEnumeration = true)]
    public void Each_flaw_of_a_table_has_its_warning_and_a_table_without_it_has_not(string begins, Func<Run, int, Run> flaw)
    {
        Assert.DoesNotContain(Of(Table), w => w.StartsWith(begins, StringComparison.Ordinal));
        Assert.Contains(Of(Table.With(flaw)), w => w.StartsWith(begins, StringComparison.Ordinal));
    }

    [Fact]
    public void A_careful_table_is_told_only_how_far_any_verdict_reaches() => Assert.Equal(
        [
            "All readings are by one gun that was not checked: temperatures may be off by 3 K together, differences hardly.",
            "The winding is reckoned from the motor's usual make-up, give or take 7 K: a reading of its resistance would tell.",
            "Watts shed per degree take their scale from the motor's mass; what the readings give is how the options compare.",
        ], Of(Table));

    [Fact]
    public void A_winding_read_by_resistance_is_not_said_to_be_reckoned() =>
        Assert.DoesNotContain(Of(Table.With((r, _) => Read(r, x => x with { Winding = new(61, 20, 50, 25, null) }))), w => w.StartsWith("The winding is reckoned", StringComparison.Ordinal));
}
