using Coolproof.Evidence.Curves;

namespace Coolproof.Evidence.Tests.Curves;

public class MisfitTests
{
    [Fact]
    public void Heat_is_odd_only_when_far_out_for_its_kind_and_more_than_a_tenth()
    {
        Assert.Equal("the motor made 20 % more heat than the other runs let expect", Misfit.OfHeat(Math.Log(1.2), 3));
        Assert.Equal("the motor made 20 % less heat than the other runs let expect", Misfit.OfHeat(Math.Log(0.8), -3));
        Assert.Null(Misfit.OfHeat(Math.Log(1.2), 2.4));
        Assert.Null(Misfit.OfHeat(Math.Log(1.09), 4));
    }

    [Fact]
    public void A_wild_reading_is_named_with_its_side_and_size()
    {
        Assert.Equal("the second reading (line 14) is 8 K above the rest of its run", Misfit.OfReading(0.9, 8.2, 2, 14, false));
        Assert.Equal("the reading number 7 is 2.4 K below the rest of its run", Misfit.OfReading(0.9, -2.4, 7, 0, false));
        Assert.Equal("the only reading (line 3) is 12 K below what the other runs let expect", Misfit.OfReading(0.81, -12, 1, 3, true));
        Assert.Null(Misfit.OfReading(0.8, 8, 2, 14, false));
        Assert.Null(Misfit.OfReading(double.NaN, 8, 2, 14, false));
    }
}
