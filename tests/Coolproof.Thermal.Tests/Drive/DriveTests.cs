namespace Coolproof.Thermal.Tests;

public class DriveTests
{
    // By hand: k = 300 rad/s/V, 25 mΩ, 10 mN·m, 10 µN·m·s. At 7.5 V: 7.5/7.5 - 0.01 = 0.99 N·m; 1/2250 + 1e-5 = 4.54444e-4; quotient 2178.484 rad/s.
    private static readonly PermanentMagnetMachine Machine = new(300, 0.025, 0.010, 1e-5);

    // By hand: 2.6 × 80/20 = 10.4; π × 85 mm / 10.4 = 25.6764 mm.
    [Fact]
    public void Ratio_and_rollout_agree_with_a_case_worked_by_hand()
    {
        GearTrain train = new(20, 80, 2.6);
        Close.Within(10.4, train.FinalDriveRatio, 1e-12);
        Close.Within(0.0256764, train.Rollout(0.085), 1e-7);
    }

    [Fact]
    public void Gears_that_cannot_be_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new GearTrain(5, 80, 2.6));
        Assert.Throws<ArgumentOutOfRangeException>(() => new GearTrain(20, 0, 2.6));
        Assert.Throws<ArgumentOutOfRangeException>(() => new GearTrain(20, 80, double.NaN));
    }

    [Fact]
    public void Top_speed_at_no_load_and_stall_current_agree_with_a_case_worked_by_hand()
    {
        Close.Within(300, Machine.StallCurrent(7.5), 1e-9);
        Close.Within(2178.484, Machine.NoLoadSpeed(7.5), 1e-3);
        Close.Within(0, Machine.Torque(7.5, Machine.NoLoadSpeed(7.5)), 1e-12);
        Assert.Equal(0, Machine.NoLoadSpeed(0.05));
    }

    [Fact]
    public void Electric_power_is_copper_heat_iron_heat_and_shaft_power()
    {
        for (double speed = 100; speed < 2100; speed += 100)
        {
            double current = Machine.Current(7.5, speed);
            double spent = current * current * Machine.Resistance + Machine.IronLoss(speed) + Machine.Torque(7.5, speed) * speed;
            Close.Relative(7.5 * current, spent, 1e-12);
        }
    }
}
