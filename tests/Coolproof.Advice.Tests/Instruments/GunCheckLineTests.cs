using Coolproof.Advice.Instruments;
using Coolproof.Notebook;
using Coolproof.Thermal;

namespace Coolproof.Advice.Tests.Instruments;

public class GunCheckLineTests
{
    const double AirC = 22, Setting = 0.95;

    static CheckPair Pair(CheckedAgainst against, double trueC, Func<double, double> gun, double emissivity = 0.96) => new(against, [gun(Gun.Usual.ReadingC(trueC, Setting, emissivity, AirC))], trueC);

    [Theory]
    [InlineData(1, 0)]
    [InlineData(1, 4)]
    [InlineData(0.97, -1.5)]
    public void A_gun_of_known_gain_and_offset_is_found_again(double gain, double offset)
    {
        double Shown(double right) => GunCheckLine.PivotC + offset + gain * (right - GunCheckLine.PivotC);
        GunCheckLine line = GunCheckLine.Of([Pair(CheckedAgainst.Ice, 0, Shown), Pair(CheckedAgainst.Boiling, 98.2, Shown)], Setting, AirC);
        Assert.Equal(gain, line.ByLaw.Values[0], 9);
        Assert.Equal(offset, line.ByLaw.Values[1], 9);
        Assert.True(line.TellsGain);
        Assert.Null(line.Misfit);
        foreach (double right in new[] { 20.0, 60, 95 })
        {
            Assert.Equal(Shown(right) - right, line.TooMuchAt(right).K, 9);
            Assert.Equal(right, line.PutRight(Shown(right)).C, 9);
        }
    }

    // Source: JCGM 101, 8.1: the law of propagation is good where both ways' intervals agree within half a unit of the last digit told.
    [Fact]
    public void Both_ways_of_propagating_agree_to_a_tenth_of_a_kelvin_and_a_thousandth_of_gain()
    {
        GunCheckLine line = GunCheckLine.Of([new(CheckedAgainst.Ice, [0.9, 0.7, 1.0], 0), new(CheckedAgainst.Boiling, [95.1, 95.6, 95.0], 98.2)], Setting, AirC);
        (double low, double high) = line.ByChance.Symmetric(0.95, 1);
        // Means of three shots have tails of t with 2 degrees of freedom by JCGM 101, so the interval is a little wider than the law's two sds.
        double u = line.ByLaw.StandardUncertainty(1);
        Assert.Equal(line.ByLaw.Values[1], line.ByChance.Means[1], 0.05);
        Assert.InRange((high - low) / (2 * 1.96 * u), 0.95, 1.15);
        Assert.Equal(line.ByLaw.Values[0], line.ByChance.Means[0], 0.001);
        GunCheckLine single = GunCheckLine.Of([new(CheckedAgainst.Ice, [0.9], 0), new(CheckedAgainst.Boiling, [95.1], 98.2)], Setting, AirC);
        Assert.Equal(single.ByLaw.StandardUncertainty(0), single.ByChance.StandardUncertainty(0), 0.0002);
        Assert.Equal(single.ByLaw.StandardUncertainty(1), single.ByChance.StandardUncertainty(1), 0.01);
        Assert.Equal(single.ByLaw.Correlation(0, 1), single.ByChance.Correlation(0, 1), 0.02);
    }

    [Fact]
    public void Right_where_it_was_checked_and_the_less_sure_the_farther_from_it()
    {
        GunCheckLine mug = GunCheckLine.Of([new(CheckedAgainst.ProbeInWater, [62.1, 61.8, 62.0], 60)], Setting, AirC);
        Assert.False(mug.TellsGain);
        Assert.True(mug.TooMuchAt(60).StandardUncertaintyK < mug.TooMuchAt(90).StandardUncertaintyK);
        Assert.True(mug.TooMuchAt(90).StandardUncertaintyK < mug.TooMuchAt(0).StandardUncertaintyK);
        Assert.InRange(mug.TooMuchAt(60).StandardUncertaintyK, 0.5, 0.8);
    }

    [Fact]
    public void Three_pairs_that_lie_on_no_line_are_told_by_their_misfit()
    {
        GunCheckLine good = GunCheckLine.Of([new(CheckedAgainst.Ice, [0.5], 0), new(CheckedAgainst.ProbeInWater, [60.7], 60), new(CheckedAgainst.Boiling, [99.1], 98.2)], Setting, AirC);
        GunCheckLine bad = GunCheckLine.Of([new(CheckedAgainst.Ice, [0.5], 0), new(CheckedAgainst.ProbeInWater, [70.7], 60), new(CheckedAgainst.Boiling, [99.1], 98.2)], Setting, AirC);
        Assert.InRange(good.Misfit!.Value, 0, 2);
        Assert.True(bad.Misfit > 4);
    }

    [Fact]
    public void Three_quick_shots_give_their_own_scatter_and_one_takes_the_usual()
    {
        CheckPair three = new(CheckedAgainst.Ice, [0.9, 0.7, 1.1], 0);
        Assert.Equal(0.2, three.RepeatabilityK!.Value, 9);
        Assert.Equal(2, three.Read.DegreesOfFreedom);
        Assert.Null(new CheckPair(CheckedAgainst.Ice, [0.9, 0.7], 0).RepeatabilityK);
        Assert.Equal(0.5, new CheckPair(CheckedAgainst.Ice, [0.9], 0).Read.StandardUncertainty, 9);
    }
}
