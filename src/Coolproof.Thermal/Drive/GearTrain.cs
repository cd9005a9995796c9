namespace Coolproof.Thermal;

/// <summary>Gears between motor and wheels: pinion on the motor, spur, then the car's own internal ratio (1 where the spur drives the axle).</summary>
public sealed record GearTrain
{
    /// <summary>A train of gears.</summary>
    /// <param name="pinion">Teeth of the pinion, at least 6.</param>
    /// <param name="spur">Teeth of the spur, at least 6.</param>
    /// <param name="internalRatio">Turns of the spur for one of the wheels, above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value outside its range.</exception>
    public GearTrain(int pinion, int spur, double internalRatio)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(pinion, 6);
        ArgumentOutOfRangeException.ThrowIfLessThan(spur, 6);
        if (!(internalRatio > 0 && double.IsFinite(internalRatio)))
        {
            throw new ArgumentOutOfRangeException(nameof(internalRatio), internalRatio, "must be finite and above 0");
        }

        (Pinion, Spur, InternalRatio) = (pinion, spur, internalRatio);
    }

    /// <summary>Teeth of the pinion.</summary>
    public int Pinion { get; }

    /// <summary>Teeth of the spur.</summary>
    public int Spur { get; }

    /// <summary>Turns of the spur for one turn of the wheels.</summary>
    public double InternalRatio { get; }

    /// <summary>Final drive ratio: turns of the motor for one turn of the wheels.</summary>
    public double FinalDriveRatio => InternalRatio * Spur / Pinion;

    /// <summary>Rollout, m: way of the car for one turn of the motor, on tyres of this diameter (m) as measured.</summary>
    public double Rollout(double tyreDiameter) => Math.PI * tyreDiameter / FinalDriveRatio;
}
