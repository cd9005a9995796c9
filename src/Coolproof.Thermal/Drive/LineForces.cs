namespace Coolproof.Thermal;

/// <summary>What the driver asks for.</summary>
internal enum Asked
{
    /// <summary>All that grip and motor give.</summary>
    Throttle,

    /// <summary>The speed that it has, or one that rises or falls as is known.</summary>
    Hold,

    /// <summary>All that grip and brakes give.</summary>
    Brake,
}

/// <summary>Energy of motion along the line by Runge-Kutta steps of the way (fourth order), with what is gained and lost summed by the same stages, so that the two balance.</summary>
internal sealed class LineForces(Car car, DriveTrain drive)
{
    /// <summary>Energy of motion at a speed, J.</summary>
    public double Energy(double speed) => 0.5 * drive.MovedKg * speed * speed;

    /// <summary>Speed, m/s.</summary>
    public double Speed(double energy) => Math.Sqrt(2 * energy / drive.MovedKg);

    /// <summary>Force at the wheels, N, and whether the throttle is fully open; <paramref name="rise"/> is what a held speed gains in energy over the way, J/m.</summary>
    public (double Force, bool Open) Wheel(Asked asked, double speed, double radiusM, double rise = 0)
    {
        switch (asked)
        {
            case Asked.Throttle:
                double motor = drive.FullThrottleN(speed), grip = car.AlongN(speed, radiusM);
                return (Math.Min(motor, grip), motor <= grip);
            case Asked.Brake:
                return (Math.Max(drive.FullBrakeN(speed), -car.AlongN(speed, radiusM)), false);
            default:
                return (car.Resistance(speed, radiusM) + rise, false);
        }
    }

    /// <summary>Force that speeds the car up, N.</summary>
    public double Net(Asked asked, double energy, double radiusM)
    {
        double speed = Speed(Math.Max(energy, 1e-9));
        return Wheel(asked, speed, radiusM).Force - car.Resistance(speed, radiusM);
    }

    /// <summary>Energy after some way (m, below 0: before it).</summary>
    public double Step(Asked asked, double energy, double wayM, double radiusM)
    {
        double k1 = Net(asked, energy, radiusM), k2 = Net(asked, energy + 0.5 * wayM * k1, radiusM), k3 = Net(asked, energy + 0.5 * wayM * k2, radiusM);
        return energy + wayM / 6 * (k1 + 2 * k2 + 2 * k3 + Net(asked, energy + wayM * k3, radiusM));
    }

    /// <summary>The same; what is gained and lost is added to sums.</summary>
    public double Step(Asked asked, double energy, double wayM, double radiusM, LapSums sums)
    {
        double way = Math.Abs(wayM), k1 = Add(asked, energy, radiusM, way / 6, sums), k2 = Add(asked, energy + 0.5 * wayM * k1, radiusM, way / 3, sums);
        double k3 = Add(asked, energy + 0.5 * wayM * k2, radiusM, way / 3, sums), k4 = Add(asked, energy + wayM * k3, radiusM, way / 6, sums);
        return energy + wayM / 6 * (k1 + 2 * k2 + 2 * k3 + k4);
    }

    /// <summary>A way along which the energy of motion rises evenly by <paramref name="rise"/> (J/m, below 0: falls), summed by Simpson's rule as the steps are; at 0 the speed is even.</summary>
    public void Hold(double energy, double rise, double wayM, double radiusM, LapSums sums)
    {
        if (rise == 0)
        {
            Add(Asked.Hold, energy, radiusM, wayM, sums);
            return;
        }
        Add(Asked.Hold, energy, radiusM, wayM / 6, sums, rise);
        Add(Asked.Hold, energy + 0.5 * rise * wayM, radiusM, wayM * 2 / 3, sums, rise);
        Add(Asked.Hold, energy + rise * wayM, radiusM, wayM / 6, sums, rise);
    }

    private double Add(Asked asked, double energy, double radiusM, double wayM, LapSums sums, double rise = 0)
    {
        double speed = Speed(Math.Max(energy, 1e-9)), seconds = wayM / speed;
        (double force, bool open) = Wheel(asked, speed, radiusM, rise);
        DrivePowers p = drive.Powers(force, speed);
        sums.Seconds += seconds;
        sums.OpenS += open ? seconds : 0;
        sums.MotorAs += p.MotorA * seconds;
        sums.MotorA2s += p.MotorA * p.MotorA * seconds;
        sums.BatteryAs += p.BatteryA * seconds;
        sums.ReturnedAs += Math.Min(p.BatteryA, 0) * -seconds;
        sums.PackJ += p.PackW * seconds;
        sums.SourceJ += p.SourceW * seconds;
        sums.ControllerJ += p.ControllerW * seconds;
        sums.CopperJ += p.CopperW * seconds;
        sums.IronJ += p.IronW * seconds;
        sums.GearJ += p.GearW * seconds;
        sums.DragJ += car.DragN(speed) * wayM;
        sums.RollingJ += car.RollingN * wayM;
        sums.ScrubJ += car.ScrubN(speed, radiusM) * wayM;
        return force - car.Resistance(speed, radiusM);
    }
}

/// <summary>What a lap adds up to.</summary>
internal sealed class LapSums
{
    public double Seconds, OpenS, MotorAs, MotorA2s, BatteryAs, ReturnedAs, PackJ, SourceJ, ControllerJ, CopperJ, IronJ, GearJ, DragJ, RollingJ, ScrubJ;
}
