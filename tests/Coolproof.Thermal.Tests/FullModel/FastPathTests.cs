using Coolproof.Thermal.FullModel;
using static Coolproof.Thermal.Tests.FullModel.A_motor;

namespace Coolproof.Thermal.Tests.FullModel;

public class FastPathTests(ITestOutputHelper output)
{
    [Theory]
    [InlineData(true, false)]
    [InlineData(false, false)]
    [InlineData(false, true)]
    public void The_fast_path_follows_the_reference_path_through_a_whole_run_within_a_tenth_of_a_kelvin(bool fanAfterStop, bool magnetsWeaken)
    {
        MotorBody body = magnetsWeaken ? Weakening : Body;
        double worst = 0;
        double[] fast = At(27), slow = At(27);
        foreach ((Phase phase, double seconds) in Run(27, fanAfterStop))
        {
            FastPath.Advance(body, FanOption, phase, seconds, fast);
            ReferencePath.Advance(body, FanOption, phase, seconds, slow);
            worst = Math.Max(worst, fast.Zip(slow, (a, b) => Math.Abs(a - b)).Max());
        }
        output.WriteLine($"worst difference {worst:e2} K, at the end {string.Join(' ', slow.Select(x => x.ToString("f2")))}");
        Assert.InRange(worst, 0, 0.1);
    }

    [Fact]
    public void Averaged_laps_end_within_a_tenth_of_a_kelvin_of_laps_driven_burst_by_burst()
    {
        // The winding swings by kelvins within a lap, so its mean over the last lap is what is compared; laps end with the drive here.
        double seconds = 17 * Lap.Seconds;
        double[] fast = At(27), slow = At(27);
        FastPath.Advance(Body, FanOption, Lap.Averaged(Body, 27, 18, 20, 1), seconds - Lap.Seconds / 2, fast);
        double canSum = 0, windingSum = 0, windingMin = 1e9, windingMax = 0, at = 0;
        int n = 0;
        foreach ((Phase phase, double part) in Lap.Driven(seconds, 27, 18, 20, 1))
        {
            for (int i = 0; i < 20; i++)
            {
                ReferencePath.Advance(Body, FanOption, phase, part / 20, slow, 1e-8);
                at += part / 20;
                if (at <= seconds - Lap.Seconds + 1e-9)
                    continue;
                double weight = part / 20 / Lap.Seconds;
                canSum += weight * slow[(int)Node.Can];
                windingSum += weight * slow[(int)Node.Winding];
                windingMin = Math.Min(windingMin, slow[(int)Node.Winding]);
                windingMax = Math.Max(windingMax, slow[(int)Node.Winding]);
                n++;
            }
        }
        output.WriteLine($"can {canSum:f3} against {fast[3]:f3}, winding {windingSum:f3} against {fast[0]:f3}, swing {windingMax - windingMin:f1} K over {n}");
        Assert.Equal(canSum, fast[(int)Node.Can], 0.1);
        Assert.Equal(windingSum, fast[(int)Node.Winding], 0.1);
        Assert.True(windingMax - windingMin > 1);
    }

    [Fact]
    public void Halving_the_step_quarters_the_error()
    {
        Phase phase = Phase.Steady(20, 25, 20, 0.5, 0);
        CoolingOption passive = FanOption with { NaturalWPerK125 = 0.08, RadiatingAreaM2 = 0.02, FanWPerK = 0 };
        double[] exact = Apart();
        ReferencePath.Advance(Body, passive, phase, 240, exact, 1e-12);
        double[] errors = [.. new[] { 20.0, 10, 5, 2.5 }.Select(step =>
        {
            double[] t = Apart();
            FastPath.Advance(Body, passive, phase, 240, t, step);
            return Math.Abs(t[(int)Node.Can] - exact[(int)Node.Can]);
        })];
        output.WriteLine(string.Join(' ', errors.Select(e => e.ToString("e2"))));
        for (int i = 1; i < errors.Length; i++)
            Assert.InRange(Math.Log2(errors[i - 1] / errors[i]), 1.7, 2.4);

        // Can and air apart: where they are equally warm, natural convection has no second derivative to be of second order in.
        static double[] Apart() => [90, 80, 75, 70, 65, 25];
    }

    [Fact]
    public void Without_bends_one_long_step_is_as_good_as_many()
    {
        CoolingOption straight = FanOption with { NaturalWPerK125 = 0, RadiatingAreaM2 = 0 };
        Phase phase = Lap.Averaged(Body, 27, 18, 20, 1);
        double[] one = At(27), many = At(27);
        FastPath.Advance(Body, straight, phase, 360, one, 360);
        FastPath.Advance(Body, straight, phase, 360, many, 0.7);
        for (int i = 0; i < one.Length; i++)
            Assert.Equal(many[i], one[i], 1e-8);
    }

    [Fact]
    public void A_motor_that_runs_away_has_an_exact_answer_all_the_same()
    {
        CoolingOption shut = FanOption with { FanWPerK = 0, MotionWPerK = 0.01 };
        Phase phase = Phase.Steady(30, 250, 20, 5, 0);
        double[] fast = At(30), slow = At(30);
        FastPath.Advance(Body, shut, phase, 90, fast, 1);
        ReferencePath.Advance(Body, shut, phase, 90, slow);
        output.WriteLine($"winding {slow[0]:f0} °C");
        Assert.True(slow[0] > 400);
        for (int i = 0; i < fast.Length; i++)
            Assert.Equal(1, fast[i] / slow[i], 1e-3);
    }

    [Fact]
    public void Scaling_every_capacity_conductance_and_heat_by_one_factor_changes_no_temperature()
    {
        const double Factor = 1.37;
        double[] plain = At(27), scaled = At(27);
        CoolingOption big = FanOption.Times(Factor) with
        {
            ShellStillWPerK = Factor * FanOption.ShellStillWPerK,
            ShellMotionWPerK = Factor * FanOption.ShellMotionWPerK,
        };
        FastPath.Advance(Body, FanOption, Lap.Averaged(Body, 27, 18, 20, 1), 360, plain);
        FastPath.Advance(Body.Scaled(Factor), big, Lap.Averaged(Body.Scaled(Factor), 27, Factor * 18, Factor * 20, 1), 360, scaled);
        for (int i = 0; i < plain.Length; i++)
            Assert.Equal(plain[i], scaled[i], 1e-9);
    }

    [Fact]
    public void Time_that_runs_backward_is_refused_with_its_value() =>
        Assert.Contains("-1", Assert.Throws<ArgumentOutOfRangeException>(() => FastPath.Advance(Body, FanOption, default, -1, At(20))).Message);
}
