using Coolproof.Thermal.FullModel;
using static Coolproof.Thermal.Tests.FullModel.A_motor;

namespace Coolproof.Thermal.Tests.FullModel;

public class StopTests(ITestOutputHelper output)
{
    [Fact]
    public void With_its_fan_on_the_can_loses_3_to_11_K_in_the_first_30_s_after_the_stop() // common practice, no source
    {
        (double stop, double after, _) = CanAround(fanAfterStop: true);
        output.WriteLine($"{stop:f1} °C at the halt, {after:f1} °C 30 s later");
        Assert.InRange(stop - after, 3, 11);
    }

    [Fact]
    public void With_fan_and_wind_gone_the_can_rises_while_the_core_soaks_out() // common practice, no source
    {
        (double stop, double after, double peakAtS) = CanAround(fanAfterStop: false);
        output.WriteLine($"{stop:f1} °C at the halt, {after:f1} °C 30 s later, hottest after {peakAtS:f0} s");
        Assert.InRange(after - stop, 1, 8);
        Assert.InRange(peakAtS, 10, 120);
    }

    static (double StopC, double After30C, double PeakAtS) CanAround(bool fanAfterStop)
    {
        // A fan that does most of the work on a motor well loaded; wind and shell give little at standstill.
        CoolingOption option = FanOption with { FanWPerK = 1.0, MotionWPerK = 0.08 };
        double[] t = At(27);
        FastPath.Advance(Body, option, Lap.Averaged(Body, 27, 26, 26, 1), 360, t);
        FastPath.Advance(Body, option, Phase.Steady(27, 0, 4, 3, fanAfterStop ? 1 : 0), 6, t);
        double stop = t[(int)Node.Can], after = 0, best = stop, bestAt = 0;
        for (int s = 1; s <= 180; s++)
        {
            FastPath.Advance(Body, option, Phase.Steady(27, 0, 0, 0.5, fanAfterStop ? 1 : 0), 1, t);
            if (s == 30)
                after = t[(int)Node.Can];
            if (t[(int)Node.Can] > best)
                (best, bestAt) = (t[(int)Node.Can], s);
        }
        return (stop, after, bestAt);
    }
}
