namespace Coolproof.Thermal;

/// <summary>One flying lap: what it takes, and where its energy goes.</summary>
/// <param name="Seconds">Lap time, s.</param>
/// <param name="FullThrottleS">Time with the throttle fully open (what grip holds back is not), s.</param>
/// <param name="LowestMS">Lowest speed, m/s.</param>
/// <param name="HighestMS">Highest speed, m/s.</param>
/// <param name="MeanMotorA">Mean motor current, A; braking counts below 0.</param>
/// <param name="RmsMotorA">Its root mean square, A.</param>
/// <param name="MeanBatteryA">Mean current of the pack, A.</param>
/// <param name="ChargeAh">Charge drawn in a lap, less what brakes return, Ah.</param>
/// <param name="ReturnedAh">What brakes return, Ah.</param>
/// <param name="CopperW">Mean copper heat with the winding as warm as asked, W.</param>
/// <param name="Copper25W">The same with the winding at 25 °C, W.</param>
/// <param name="IronW">Mean iron heat, W.</param>
/// <param name="Energy">Where the energy goes.</param>
public sealed record DrivenLap(
    double Seconds, double FullThrottleS, double LowestMS, double HighestMS, double MeanMotorA, double RmsMotorA, double MeanBatteryA, double ChargeAh, double ReturnedAh,
    double CopperW, double Copper25W, double IronW, LapEnergy Energy)
{
    /// <summary>Step along the line, m: halved, a lap time moves by less than 0.1 ms and heats by less than 0.01 % (the order of the steps is shown in the tests).</summary>
    public const double UsualStepM = 0.5;

    /// <summary>Drives a lap as fast as it goes.</summary>
    /// <param name="track">The lap.</param>
    /// <param name="car">The car.</param>
    /// <param name="gears">Its gears.</param>
    /// <param name="motor">Its motor.</param>
    /// <param name="timingDeg">Timing, degrees.</param>
    /// <param name="pack">Pack, leads, controller.</param>
    /// <param name="drawnAh">Charge drawn from the pack before, Ah.</param>
    /// <param name="windingC">Mean temperature of the winding, °C.</param>
    /// <param name="stepM">Longest step along the line, m.</param>
    /// <param name="seen">Told part, way within it (m) and speed (m/s) along the lap; null: nobody.</param>
    /// <exception cref="LapException">The car can't drive this lap.</exception>
    public static DrivenLap Of(
        Track track, Car car, GearTrain gears, BrushlessMotor motor, double timingDeg, Pack pack, double drawnAh, double windingC, double stepM = UsualStepM,
        Action<int, double, double>? seen = null)
    {
        PermanentMagnetMachine machine = motor.At(timingDeg, windingC);
        DriveTrain drive = new(car, gears, machine, pack, motor.RotorInertia, pack.OpenV(drawnAh));
        Check(track, car, drive);
        LineForces forces = new(car, drive);
        LapSums s = new();
        (double lowest, double highest) = new LapLine(track, car, forces, stepM).Drive(s, seen);
        if (!(s.Seconds > 0 && double.IsFinite(s.Seconds)))
            throw new LapException("no steady lap was found: look at the lap's lengths and radii, and at grip, mass and gearing.");
        double cold = motor.Ripple * motor.ColdOhm / machine.Resistance;
        return new(
            s.Seconds, s.OpenS, lowest, highest, s.MotorAs / s.Seconds, Math.Sqrt(s.MotorA2s / s.Seconds), s.BatteryAs / s.Seconds, s.BatteryAs / 3600, s.ReturnedAs / 3600,
            s.CopperJ / s.Seconds, cold * s.CopperJ / s.Seconds, s.IronJ / s.Seconds,
            new(s.PackJ, s.SourceJ, s.ControllerJ, s.CopperJ, s.IronJ, s.GearJ, s.DragJ, s.RollingJ, s.ScrubJ));
    }

    private static void Check(Track track, Car car, DriveTrain drive)
    {
        double push = Math.Min(drive.FullThrottleN(Track.SlowestMS), car.AlongN(Track.SlowestMS, double.PositiveInfinity)), back = car.Resistance(Track.SlowestMS, double.PositiveInfinity);
        if (push <= back)
            throw new LapException($"the car doesn't get away: {Math.Max(push, 0):0.0} N at the wheels against {back:0.0} N of rolling. Look at mass, grip, rolling resistance and the motor's figures.");
        foreach (TrackPart part in track.Parts)
            if (!part.IsStraight && part.Driven is null && car.CornerSpeed(part.RadiusM) < Track.SlowestMS)
                throw new LapException($"the corner of {part.RadiusM:0.##} m radius can't be driven with a grip of {car.Grip:0.##}: give a wider line or more grip.");
    }
}

/// <summary>Energy of a lap by where it goes, J.</summary>
/// <param name="PackJ">What the cells give, less what they are given back.</param>
/// <param name="SourceJ">Pack, leads, plugs.</param>
/// <param name="ControllerJ">Controller and electronics.</param>
/// <param name="CopperJ">Winding.</param>
/// <param name="IronJ">Iron.</param>
/// <param name="GearJ">Gears.</param>
/// <param name="DragJ">Air.</param>
/// <param name="RollingJ">Rolling.</param>
/// <param name="ScrubJ">Cornering tyres.</param>
public sealed record LapEnergy(
    double PackJ, double SourceJ, double ControllerJ, double CopperJ, double IronJ, double GearJ, double DragJ, double RollingJ, double ScrubJ)
{
    /// <summary>What is given less what is lost, over what is given.</summary>
    public double Imbalance => (PackJ - SourceJ - ControllerJ - CopperJ - IronJ - GearJ - DragJ - RollingJ - ScrubJ) / PackJ;
}

/// <summary>A lap that can't be driven; the message says why and what to look at.</summary>
public sealed class LapException : Exception
{
    /// <summary>A reason with its remedy.</summary>
    public LapException(string message) : base(message)
    {
    }
}
