namespace Coolproof.Thermal;

/// <summary>Pack, controller, motor, gears and car put together at one voltage of the pack at rest: forces at the wheel and where the power goes.</summary>
public sealed class DriveTrain
{
    private readonly PermanentMagnetMachine _machine;
    private readonly double _perSpeed, _perForce, _efficiency, _source, _circuit, _idle, _openV, _limit, _brakeLimit;

    /// <summary>A drive train.</summary>
    /// <param name="car">The car.</param>
    /// <param name="gears">Its gears.</param>
    /// <param name="machine">The motor at its timing and temperature.</param>
    /// <param name="pack">Pack, leads and controller.</param>
    /// <param name="rotorInertia">Moment of inertia of the rotor, kg m².</param>
    /// <param name="openV">Voltage of the pack at rest, V.</param>
    public DriveTrain(Car car, GearTrain gears, PermanentMagnetMachine machine, Pack pack, double rotorInertia, double openV)
    {
        _machine = machine;
        _perSpeed = gears.FinalDriveRatio / (0.5 * car.TyreDiameterM);
        (_perForce, _efficiency) = (1 / _perSpeed, car.GearEfficiency);
        (_source, _circuit, _idle, _openV) = (pack.SourceOhm, machine.Resistance + pack.ControllerOhm, pack.IdleA, openV);
        (_limit, _brakeLimit) = (pack.CurrentLimitA, pack.BrakeLimitA);
        MovedKg = car.MassKg * (1 + car.TurningShare) + rotorInertia * _perSpeed * _perSpeed;
    }

    /// <summary>Mass that has to be sped up, with what turns, kg.</summary>
    public double MovedKg { get; }

    /// <summary>Speed of the motor, rad/s, at a speed of the car, m/s.</summary>
    public double MotorSpeed(double speed) => speed * _perSpeed;

    /// <summary>Motor current at full throttle, A, at a speed of the car (m/s), as far as the controller lets it.</summary>
    public double FullThrottleA(double speed) => Math.Min(_limit, (_openV - _source * _idle - BackV(speed)) / (_circuit + _source));

    /// <summary>Force at the wheels at full throttle, N, grip not looked at.</summary>
    public double FullThrottleN(double speed) => ForceOf(FullThrottleA(speed), speed);

    /// <summary>Force of the brakes, N, below 0: the motor shorted at most, grip not looked at.</summary>
    public double FullBrakeN(double speed) => ForceOf(Math.Max(-_brakeLimit, -BackV(speed) / _circuit), speed);

    /// <summary>Motor current for a force at the wheels, A.</summary>
    public double MotorA(double force, double speed)
    {
        double torque = force >= 0 ? force * _perForce / _efficiency : force * _perForce * _efficiency, turning = MotorSpeed(speed);
        return (torque + _machine.HysteresisDrag + _machine.EddyDrag * turning) * _machine.SpeedConstant;
    }

    /// <summary>Where the power goes at a force at the wheels (N) and a speed (m/s).</summary>
    public DrivePowers Powers(double force, double speed)
    {
        double motorA = MotorA(force, speed), turning = MotorSpeed(speed), atMotorW = motorA * (turning / _machine.SpeedConstant + motorA * _circuit);
        double batteryA = BatteryA(atMotorW), gear = force >= 0 ? force * speed * (1 / _efficiency - 1) : -force * speed * (1 - _efficiency);
        return new(
            motorA, batteryA, _openV * batteryA, batteryA * batteryA * _source,
            (_openV - _source * batteryA) * _idle + motorA * motorA * (_circuit - _machine.Resistance), motorA * motorA * _machine.Resistance, _machine.IronLoss(turning), gear);
    }

    // Duty times motor current, and what the electronics draw: (open - R I)(I - idle) = power at the motor, the root at the higher voltage.
    private double BatteryA(double atMotorW)
    {
        double sum = _openV + _source * _idle, asked = _openV * _idle + atMotorW;
        return 2 * asked / (sum + Math.Sqrt(Math.Max(0, sum * sum - 4 * _source * asked)));
    }

    private double BackV(double speed) => MotorSpeed(speed) / _machine.SpeedConstant;

    private double ForceOf(double motorA, double speed)
    {
        double torque = motorA / _machine.SpeedConstant - _machine.HysteresisDrag - _machine.EddyDrag * MotorSpeed(speed);
        return torque >= 0 ? torque * _perSpeed * _efficiency : torque * _perSpeed / _efficiency;
    }
}

/// <summary>Where the power goes at one instant.</summary>
/// <param name="MotorA">Motor current, A; below 0 in braking.</param>
/// <param name="BatteryA">Current of the pack, A; below 0 where it is charged.</param>
/// <param name="PackW">What the cells give, W.</param>
/// <param name="SourceW">Lost in pack, leads and plugs, W.</param>
/// <param name="ControllerW">Lost in the controller, and drawn by the electronics, W.</param>
/// <param name="CopperW">Lost in the winding, W.</param>
/// <param name="IronW">Lost in the iron, W.</param>
/// <param name="GearW">Lost in gears and joints, W.</param>
public readonly record struct DrivePowers(
    double MotorA, double BatteryA, double PackW, double SourceW, double ControllerW, double CopperW, double IronW, double GearW);
