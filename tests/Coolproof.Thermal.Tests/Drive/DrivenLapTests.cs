namespace Coolproof.Thermal.Tests;

public class DrivenLapTests
{
    private static readonly Car Buggy = new();
    private static readonly BrushlessMotor Motor = BrushlessMotor.OfTurns(13.5);
    private static readonly Pack Pack = new();

    private static DrivenLap Lap(int pinion = 24, double stepM = DrivenLap.UsualStepM, double timing = 30, Track? track = null, Car? car = null, Pack? pack = null) =>
        DrivenLap.Of(track ?? Track.OffRoad, car ?? Buggy, new GearTrain(pinion, 84, 2.6), Motor, timing, pack ?? Pack, 1, 80, stepM);

    public static TheoryData<int, double, bool> Laps => new() { { 16, 0, false }, { 24, 30, false }, { 36, 50, false }, { 20, 20, true }, { 40, 60, true } };

    [Theory]
    [MemberData(nameof(Laps))]
    public void What_the_pack_gives_on_a_lap_is_what_is_lost(int pinion, double timing, bool carpet)
    {
        DrivenLap lap = Lap(pinion, timing: timing, track: carpet ? Track.Carpet : null, car: carpet ? Car.Carpet : null);
        Close.Within(0, lap.Energy.Imbalance, 1e-9);
        Assert.True(lap.Energy.CopperJ > 0 && lap.Energy.IronJ > 0 && lap.Energy.ScrubJ > 0 && lap.ReturnedAh > 0);
    }

    // A lap that is never braked has to end as fast as it began, or the balance would miss the difference.
    [Fact]
    public void It_balances_where_nothing_is_braked_and_where_the_motor_alone_sets_the_speed()
    {
        DrivenLap oval = Lap(track: new([TrackPart.Straight(60), TrackPart.Corner(40, 180), TrackPart.Straight(60), TrackPart.Corner(40, 180)]));
        Close.Within(0, oval.Energy.Imbalance, 1e-9);
        Close.Within(0, oval.ReturnedAh, 1e-12);
    }

    // Grip and limits beyond reach: throttle and brakes are smooth in speed, so the steps show their order. Halved, errors fall to a sixteenth.
    [Fact]
    public void Steps_are_of_the_fourth_order_where_forces_are_smooth()
    {
        Track track = new([TrackPart.Straight(40), TrackPart.Corner(0.4, 180), TrackPart.Straight(40), TrackPart.Corner(0.4, 180)]);
        Car gripping = Buggy with { Grip = 8 };
        Pack free = Pack with { CurrentLimitA = 1000, BrakeLimitA = 60 };
        double exact = Of(0.01), coarse = Math.Abs(Of(0.25) - exact), fine = Math.Abs(Of(0.0625) - exact);
        Assert.InRange(Math.Log2(coarse / fine) / 2, 3.7, 4.3);

        double Of(double stepM) => Lap(30, stepM, track: track, car: gripping, pack: free).Seconds;
    }

    // Where grip gives way to the motor the force has a kink, and there the order falls to the second.
    [Fact]
    public void Steps_are_of_the_second_order_at_least_on_a_real_lap()
    {
        DrivenLap exact = Lap(stepM: 0.01), coarse = Lap(stepM: 2), fine = Lap(stepM: 0.125);
        Assert.InRange(Math.Log2(Math.Abs((coarse.Seconds - exact.Seconds) / (fine.Seconds - exact.Seconds))) / 4, 1.7, 5);
        Assert.InRange(Math.Log2(Math.Abs((coarse.IronW - exact.IronW) / (fine.IronW - exact.IronW))) / 4, 1.7, 5);
    }

    [Fact]
    public void The_usual_step_is_fine_enough()
    {
        DrivenLap exact = Lap(stepM: 0.01), usual = Lap();
        Close.Within(exact.Seconds, usual.Seconds, 2e-4);
        Close.Relative(exact.Copper25W, usual.Copper25W, 1e-4);
        Close.Relative(exact.IronW, usual.IronW, 1e-4);
        Close.Relative(exact.ChargeAh, usual.ChargeAh, 1e-4);
    }

    [Fact]
    public void A_longer_gear_costs_copper_and_spares_iron_until_it_no_longer_pays()
    {
        DrivenLap[] laps = [.. Enumerable.Range(14, 40).Select(p => Lap(p))];
        Assert.All(laps.Zip(laps.Skip(1)), pair =>
        {
            Assert.True(pair.Second.Copper25W > pair.First.Copper25W);
            Assert.True(pair.Second.IronW < pair.First.IronW);
        });
        int quickest = Array.IndexOf(laps, laps.MinBy(l => l.Seconds));
        Assert.InRange(quickest, 5, laps.Length - 1);
    }

    [Fact]
    public void More_timing_turns_the_motor_faster_and_gives_less_torque_for_an_ampere()
    {
        PermanentMagnetMachine little = Motor.At(10, 25), much = Motor.At(50, 25);
        Assert.True(much.NoLoadSpeed(7.4) > 1.2 * little.NoLoadSpeed(7.4));
        Assert.True(much.Torque(7.4, 0) < little.Torque(7.4, 0));
        Assert.True(much.Current(7.4, much.NoLoadSpeed(7.4)) > 1.3 * little.Current(7.4, little.NoLoadSpeed(7.4)));
        Close.Relative(4, Motor.At(30, 25) is var m ? m.Current(7.4, m.NoLoadSpeed(7.4)) : 0, 0.01); // as on its card; the ripple is in the resistance
    }

    // By hand: docs/gear.md. 7.998 V/(300 × 31.5 mΩ) - 10 mN·m = (1/(300² × 31.5 mΩ) + 10 µN·m·s) ω: 2305.68 rad/s; × 42.5 mm/9.1: 10.768 m/s. At a stand 7.998 V/31.5 mΩ: 253.90 A.
    [Fact]
    public void Top_speed_without_load_and_stall_current_agree_with_a_case_worked_by_hand()
    {
        Pack pack = new() { PackOhm = 0.004, LeadsOhm = 0.001, ControllerOhm = 0.0015, IdleA = 0.4, CurrentLimitA = 1000 };
        DriveTrain train = new(Buggy with { TyreDiameterM = 0.085 }, new GearTrain(24, 84, 2.6), new(300, 0.025, 0.010, 1e-5), pack, 7e-7, 8);
        double speed = 2305.684 * 0.0425 / 9.1;
        Close.Within(10.768, speed, 1e-3);
        Close.Within(0, train.FullThrottleN(speed), 1e-4);
        Close.Within(253.905, train.FullThrottleA(0), 1e-3);
        Close.Within(100, new DriveTrain(Buggy, new GearTrain(24, 84, 2.6), new(300, 0.025, 0.010, 1e-5), pack with { CurrentLimitA = 100 }, 7e-7, 8).FullThrottleA(0), 1e-12);
    }

    // By hand: docs/gear.md. 1.6 kg, grip 1.2, radius 3 m, rolling 0.06, cornering 0.1, 0.018 m², 1.18 kg/m³: 5.8992 m/s.
    [Fact]
    public void A_steady_corner_agrees_with_a_case_worked_by_hand()
    {
        Car car = new() { MassKg = 1.6, Grip = 1.2, Rolling = 0.06, Scrub = 0.1, DragAreaM2 = 0.018, AirDensity = 1.18 };
        double speed = car.CornerSpeed(3);
        Close.Within(5.8992, speed, 1e-4);
        Close.Relative(car.GripN, Math.Sqrt(Math.Pow(car.LateralN(speed, 3), 2) + Math.Pow(car.Resistance(speed, 3), 2)), 1e-12);
        DrivenLap ring = Lap(track: new([TrackPart.Corner(3, 360), TrackPart.Corner(3, 360)]), car: car);
        Close.Relative(4 * Math.PI * 3 / (0.995 * speed), ring.Seconds, 1e-9);
    }

    // A corner that is told by its speed alone is the corner of that speed's radius.
    [Fact]
    public void A_lap_told_by_its_corner_speeds_is_the_lap_told_by_its_radii()
    {
        DrivenLap paced = Lap(), seen = Lap(track: new([.. Track.OffRoad.Parts.Select(p => p.IsStraight ? p : TrackPart.Seen(p.LengthM, 0.995 * Buggy.CornerSpeed(p.RadiusM), 0.995 * Buggy.CornerSpeed(p.RadiusM)))]));
        Close.Relative(paced.Seconds, seen.Seconds, 1e-9);
        Close.Relative(paced.Copper25W, seen.Copper25W, 1e-9);
        Close.Relative(paced.Energy.ScrubJ, seen.Energy.ScrubJ, 1e-9);
    }

    // Brakes as hard as the trace shows, harder than they can be (the car then brakes before), and throttle partly open.
    [Theory]
    [InlineData(2.5)]
    [InlineData(1.2)]
    [InlineData(0.4)]
    public void Speeds_that_are_known_are_kept_to_as_far_as_grip_and_brakes_allow_and_the_lap_balances(double brakingM)
    {
        double lowest = double.PositiveInfinity, atRamp = 0;
        TrackPart[] parts = [TrackPart.Straight(30), TrackPart.Seen(brakingM, 9, 7), TrackPart.Seen(brakingM, 7, 5), TrackPart.Seen(9, 5, 5), TrackPart.Seen(4, 5, 6), TrackPart.Straight(20), TrackPart.Seen(2, 8, 6), TrackPart.Seen(8, 6, 6)];
        DrivenLap lap = DrivenLap.Of(new(parts), Buggy, new GearTrain(24, 84, 2.6), Motor, 30, Pack, 1, 80, seen: (part, way, speed) =>
        {
            lowest = Math.Min(lowest, speed);
            atRamp = part == 1 ? Math.Max(atRamp, speed) : atRamp;
            if (parts[part].Driven is { } known)
                Assert.True(speed * speed <= known.FromMS * known.FromMS + 2 * known.Acceleration(parts[part].LengthM) * way + 1e-6, $"{part} {way} {speed}");
        });
        Close.Within(0, lap.Energy.Imbalance, 1e-9);
        Close.Within(5, lowest, 1e-9);
        if (brakingM > 2)
            Close.Within(9, atRamp, 1e-9);
        else if (brakingM < 1)
            Assert.InRange(atRamp, 5, 8);
    }

    [Fact]
    public void Along_and_across_a_line_of_a_known_gain_take_all_of_the_grip()
    {
        foreach (double gain in new[] { -8.0, -3, 0, 2, 6 })
        {
            double radius = Buggy.LineRadius(6, gain), along = Buggy.MassKg * (1 + Buggy.TurningShare) * gain + Buggy.Resistance(6, radius);
            Close.Relative(Buggy.GripN, Math.Sqrt(Math.Pow(Buggy.LateralN(6, radius), 2) + along * along), 1e-12);
        }
        Assert.True(double.IsPositiveInfinity(Buggy.LineRadius(6, -16)));
        Assert.Contains("0.5 m/s or more", Track.Refusal([TrackPart.Straight(30), TrackPart.Seen(3, 5, 0)]));
    }

    [Fact]
    public void Typical_motors_are_those_of_common_practice()
    {
        Close.Within(3100, BrushlessMotor.OfTurns(13.5).SpeedConstantRpm, 1e-9);
        Close.Within(0.035, BrushlessMotor.OfTurns(17.5).ColdOhm, 1e-12);
        Close.Within(1850, BrushlessMotor.OfTurns(21.5).SpeedConstantRpm, 1e-9);
        Assert.InRange(BrushlessMotor.OfTurns(10.5).SpeedConstantRpm, 3700, 4500);
        Assert.InRange(BrushlessMotor.OfTurns(25.5).ColdOhm, 0.06, 0.08);
    }

    [Fact]
    public void A_race_draws_its_charge_from_the_pack_and_says_when_that_is_empty()
    {
        DrivenRace race = DrivenRace.Of(Track.OffRoad, Buggy, new(24, 84, 2.6), Motor, 30, Pack, 360, 80);
        Close.Relative(race.Laps * race.Lap.ChargeAh, race.ChargeAh, 1e-12);
        Close.Relative(Lap(24) is var at1 ? at1.Seconds : 0, race.Lap.Seconds, 0.01);
        LapException empty = Assert.Throws<LapException>(() => DrivenRace.Of(Track.OffRoad, Buggy, new(24, 84, 2.6), Motor, 30, Pack with { CapacityAh = 0.5 }, 360, 80));
        Assert.Contains("larger pack", empty.Message);
    }

    [Fact]
    public void Laps_that_cannot_be_driven_are_refused_with_a_remedy()
    {
        Assert.Contains("metres", Assert.Throws<ArgumentException>(() => new Track([TrackPart.Straight(5)])).Message);
        Assert.Contains("radius", Assert.Throws<ArgumentException>(() => new Track([TrackPart.Straight(50), new(3, 0.1)])).Message);
        Assert.Contains("no length", Assert.Throws<ArgumentException>(() => new Track([TrackPart.Straight(50), new(double.NaN, 3)])).Message);
        Assert.Contains("at least one", Assert.Throws<ArgumentException>(() => new Track([])).Message);
        Assert.Contains("get away", Assert.Throws<LapException>(() => Lap(car: Buggy with { Rolling = 2 })).Message);
        Assert.Contains("wider line", Assert.Throws<LapException>(() => Lap(car: Buggy with { Grip = 0.121, Rolling = 0.12, Scrub = 0 }, track: new([TrackPart.Straight(30), new(3, 0.3)]))).Message);
        Assert.Throws<ArgumentOutOfRangeException>(() => Motor.At(70, 25));
        Assert.Throws<ArgumentOutOfRangeException>(() => BrushlessMotor.OfTurns(1));
    }

    [Fact]
    public void Speeds_along_the_lap_are_told_and_never_leap()
    {
        double last = double.NaN, way = 0;
        Track track = Track.OffRoad;
        DrivenLap.Of(track, Buggy, new(24, 84, 2.6), Motor, 30, Pack, 1, 80, seen: (part, at, speed) =>
        {
            Assert.InRange(at, 0, track.Parts[part].LengthM + 1e-9);
            if (!double.IsNaN(last) && at > 0)
                Assert.InRange(Math.Abs(speed * speed - last * last), 0, 2 * 1.4 * 9.81 * (at - way) * 1.5 + 0.02);
            if (at == 0 && !double.IsNaN(last))
                Close.Within(last, speed, 1e-6);
            (last, way) = (speed, at);
        });
    }
}
