using Coolproof.Evidence.Guns;
using Coolproof.Evidence.Model;
using Coolproof.Evidence.Words;
using Coolproof.Notebook;
using Coolproof.Thermal;

namespace Coolproof.Evidence.Tests.Guns;

/// <summary>What a check of a gun leaves to believe of it; all numbers invented.</summary>
public class GunBeliefTests
{
    private static ReadingsTable Table(params GunCheck[] checks) => InventedDays.Plain(2, 2) with { GunChecks = checks };

    private static GunBelief Of(params GunCheck[] checks) => GunBelief.Of("gun", Table(checks));

    private static double Water(double trueC) => Gun.Usual.ReadingC(trueC, 0.95, 0.96, GunBelief.CheckAirC);

    [Fact]
    public void Without_a_check_of_that_gun_it_is_what_guns_are_at_all()
    {
        Assert.Same(GunBelief.Unchecked, Of());
        Assert.Same(GunBelief.Unchecked, Of(new GunCheck("another gun", CheckedAgainst.Ice, 5, 0)));
        Assert.Equal((0, Priors.OffsetSd, 0), (GunBelief.Unchecked.OffsetK, GunBelief.Unchecked.OffsetSdK, GunBelief.Unchecked.TapeTilt));
    }

    [Fact]
    public void A_gun_four_kelvin_off_at_ice_and_boiling_water_is_four_kelvin_off_in_between()
    {
        (double k, double sd) = Of(new("gun", CheckedAgainst.Ice, Water(0) + 4, 0), new("Gun", CheckedAgainst.Boiling, Water(99) + 4, 99)).TooMuchAt(60);
        Assert.Equal(4, k, 0.15);
        Assert.InRange(sd, 0.8, 1.6);
    }

    // Linear in offset and log gain, so it is what weighted sums by hand give: one check at 60 °C beside the tape with an sd of √(0.5² + 0.7²).
    [Fact]
    public void One_check_beside_the_tape_is_worth_what_the_normal_law_says()
    {
        GunBelief one = Of(new GunCheck("gun", CheckedAgainst.BesideTape, 63, 60));
        double rise = 60 - GunBelief.CheckAirC, prior = 25 + rise * rise * 0.03 * 0.03, noise = 0.25 + 0.49;
        (double k, double sd) = one.TooMuchAt(60);
        Assert.Equal(3 * prior / (prior + noise), k, 0.02);
        Assert.Equal(Math.Sqrt(prior * noise / (prior + noise) + 0.25), sd, 0.02);
        Assert.True(one.TapeTilt < 0, "offset and gain make up for one another");
    }

    [Fact]
    public void Three_quick_shots_narrow_the_shots_scatter_and_not_the_doubt_of_what_was_shot()
    {
        GunCheck one = new("gun", CheckedAgainst.BesideTape, 63, 60);
        double rise = 60 - GunBelief.CheckAirC, prior = 25 + rise * rise * 0.03 * 0.03, noise = 0.25 / 3 + 0.49;
        Assert.Equal(Math.Sqrt(prior * noise / (prior + noise) + 0.25), Of(one with { ReadC = 62.8 }, one, one with { ReadC = 63.2 }).TooMuchAt(60).SdK, 0.02);
    }

    [Fact]
    public void Checks_that_can_t_all_be_right_are_not_used()
    {
        GunBelief odd = Of(new("gun", CheckedAgainst.Ice, 0.5, 0), new("gun", CheckedAgainst.Boiling, 80, 99));
        Assert.True(odd.Contradiction);
        Assert.Equal(Priors.OffsetSd, odd.OffsetSdK);
        Assert.True(Of(new GunCheck("gun", CheckedAgainst.Ice, 30, 0)).Contradiction);
    }

    [Fact]
    public void A_setting_that_one_side_doesn_t_note_is_taken_from_the_other()
    {
        GunBelief noted = Of(new GunCheck("gun", CheckedAgainst.BesideTape, 60, 60, 1)), blank = Of(new GunCheck("gun", CheckedAgainst.BesideTape, 60, 60));
        Assert.Equal(1, noted.Setting);
        // At a setting of 1 a sound gun shows less on tape; one that shows the truth shows too much at 0.95.
        Assert.True(noted.TooMuchAt(60).K > blank.TooMuchAt(60).K + 1);
        ReadingsTable table = Table(new GunCheck("gun", CheckedAgainst.BesideTape, 60, 60));
        table = table with { Runs = [.. table.Runs.Select(r => r with { Readings = [.. r.Readings.Select(x => x with { EmissivitySet = 1 })] })] };
        Assert.Equal(noted.TooMuchAt(60).K, GunBelief.Of("gun", table).TooMuchAt(60).K, 9);
    }

    [Fact]
    public void A_check_leaves_a_table_s_model_as_large_as_it_was_and_moves_its_gun_only()
    {
        DayModel plain = DayModelBuilder.Build(Table()), told = DayModelBuilder.Build(Table(new GunCheck("gun", CheckedAgainst.BesideTape, 63, 60)));
        Assert.Equal(plain.Parameters.Select(p => p.Name), told.Parameters.Select(p => p.Name));
        Assert.Equal((0, Priors.OffsetSd), (plain.Instruments[0].OffsetK, plain.Instruments[0].OffsetSdK));
        Assert.True(told.Instruments[0].OffsetK > 2);
        Assert.Equal(0, plain.Gains[0].Tilt);
        Assert.NotEqual(0, told.Gains[0].Tilt);
    }

    [Fact]
    public void It_is_said_which_guns_were_checked_and_which_not()
    {
        Assert.Equal("All readings are by one gun that was not checked: temperatures may be off by 3 K together, differences hardly.", Assert.Single(GunWords.Of(Table(), ["gun"])));
        string one = Assert.Single(GunWords.Of(Table(new GunCheck("gun", CheckedAgainst.BesideTape, 64, 60)), ["gun"]));
        Assert.StartsWith("All readings are by one gun that was checked: it shows 3.9 K too much at 60 °C, give or take 1.6 K", one);
        string two = Assert.Single(GunWords.Of(Table(new GunCheck("gun", CheckedAgainst.BesideTape, 60.2, 60)), ["gun", "other gun"]));
        Assert.Contains("gun: right at 60 °C", two);
        Assert.Contains("other gun: not checked, may be off by 3 K", two);
        Assert.Contains("can't all be right", Assert.Single(GunWords.Of(Table(new GunCheck("gun", CheckedAgainst.Ice, 30, 0)), ["gun"])));
        Assert.Empty(GunWords.Of(Table(), []));
    }

    // The issue's own case: a gun 4 K off that was checked gives the right peaks; what one gun shows of differences is untouched.
    [Fact]
    public void A_checked_gun_four_kelvin_off_gives_the_peaks_of_a_sound_one_and_the_same_differences()
    {
        ReadingsTable sound = InventedDays.Plain(2, 4, clock: true), off = sound with { Runs = [.. sound.Runs.Select(r => r with { Readings = [.. r.Readings.Select(x => x with { ReadC = x.ReadC + 4 })] })] };
        GunCheck[] zero = [new("gun", CheckedAgainst.Ice, Water(0), 0), new("gun", CheckedAgainst.BesideTape, 60, 60)], four = [.. zero.Select(c => c with { ReadC = c.ReadC + 4 })];
        QuickVerdict right = QuickJudge.Of(sound with { GunChecks = zero }, new())!, put = QuickJudge.Of(off with { GunChecks = four }, new())!, unchecked4 = QuickJudge.Of(off, new())!;
        double Peak(QuickVerdict v, int option) => v.CanC[option].Average();
        for (int option = 0; option < 2; option++)
        {
            Assert.Equal(Peak(right, option), Peak(put, option), 0.4);
            Assert.True(Peak(unchecked4, option) > Peak(right, option) + 2.5, "without its check the gun's 4 K stay");
        }
        Assert.Equal(Peak(right, 1) - Peak(right, 0), Peak(put, 1) - Peak(put, 0), 0.15);
        Assert.Equal(Peak(unchecked4, 1) - Peak(unchecked4, 0), Peak(put, 1) - Peak(put, 0), 0.4);
    }
}
