namespace Coolproof.Thermal;

/// <summary>A car as a point mass. Typical figures of a 1:10 four-wheel-drive buggy on turf unless it is told otherwise; all common practice, no source.</summary>
public sealed record Car
{
    /// <summary>A 1:10 four-wheel-drive buggy on artificial turf or dirt.</summary>
    public static Car OffRoad { get; } = new();

    /// <summary>A 1:10 touring car on carpet.</summary>
    public static Car Carpet { get; } = new()
    {
        MassKg = 1.35,
        Grip = 2.0,
        TyreDiameterM = 0.063,
        DragAreaM2 = 0.022,
        Rolling = 0.06,
        Scrub = 0.15,
        GearEfficiency = 0.8,
    };

    /// <summary>Mass as raced, kg.</summary>
    public double MassKg { get; init; } = 1.6;

    /// <summary>Grip: largest force on the ground over weight; 0.6 on loose dirt to 2.2 on carpet with additive.</summary>
    public double Grip { get; init; } = 1.4;

    /// <summary>Diameter of the driven tyres as they run, m: measured, less wear, with what they grow.</summary>
    public double TyreDiameterM { get; init; } = 0.085;

    /// <summary>Drag area (coefficient times frontal area), m²: shell and wing.</summary>
    public double DragAreaM2 { get; init; } = 0.03;

    /// <summary>Rolling resistance over weight, with jumps and bumps: carpet 0.04 to 0.08, turf and dirt 0.1 to 0.2.</summary>
    public double Rolling { get; init; } = 0.15;

    /// <summary>Drag of a cornering tyre over its lateral force: about the tangent of the slip angle.</summary>
    public double Scrub { get; init; } = 0.22;

    /// <summary>Share of the weight on driven (and braked) wheels: 1 with four, about 0.65 with two.</summary>
    public double DrivenShare { get; init; } = 1;

    /// <summary>Share of the mass more that wheels and shafts make by turning.</summary>
    public double TurningShare { get; init; } = 0.06;

    /// <summary>Share of the power that gears, belts, joints and slipping tyres pass on.</summary>
    public double GearEfficiency { get; init; } = 0.75;

    /// <summary>Density of the air, kg/m³.</summary>
    public double AirDensity { get; init; } = 1.18;

    /// <summary>Largest force on the ground, N.</summary>
    public double GripN => Grip * MassKg * PhysicalConstants.StandardGravity;

    /// <summary>What holds the car back at a speed (m/s) on a line of a radius (m), N: air, rolling, cornering tyres.</summary>
    public double Resistance(double speed, double radiusM) => DragN(speed) + RollingN + ScrubN(speed, radiusM);

    /// <summary>Drag of the air, N.</summary>
    public double DragN(double speed) => 0.5 * AirDensity * DragAreaM2 * speed * speed;

    /// <summary>Rolling resistance, N.</summary>
    public double RollingN => Rolling * MassKg * PhysicalConstants.StandardGravity;

    /// <summary>Drag of cornering tyres, N.</summary>
    public double ScrubN(double speed, double radiusM) => Scrub * LateralN(speed, radiusM);

    /// <summary>Force that is left along the line, N, beside the one that keeps the car on it.</summary>
    public double AlongN(double speed, double radiusM)
    {
        double lateral = LateralN(speed, radiusM), left = GripN * GripN - lateral * lateral;
        return left > 0 ? DrivenShare * Math.Sqrt(left) : 0;
    }

    /// <summary>Force that keeps the car on a line of a radius, N.</summary>
    public double LateralN(double speed, double radiusM) => MassKg * speed * speed / radiusM;

    /// <summary>
    /// Highest steady speed in a corner, m/s: the force along the line that holds it there and the force across make up the grip. Infinite on a straight.
    /// </summary>
    public double CornerSpeed(double radiusM)
    {
        if (double.IsPositiveInfinity(radiusM))
            return double.PositiveInfinity;
        // (a u)² + ((b u + c)/share)² = grip² with u = speed².
        double a = MassKg / radiusM, b = (0.5 * AirDensity * DragAreaM2 + Scrub * a) / DrivenShare, c = RollingN / DrivenShare, grip = GripN;
        double square = a * a + b * b, half = b * c, rest = c * c - grip * grip;
        return rest >= 0 ? 0 : Math.Sqrt((-half + Math.Sqrt(half * half - square * rest)) / square);
    }

    /// <summary>
    /// Radius of the line, m, on which a speed that gains or loses so much takes all of the grip: what the force along the line leaves goes across it. Infinite where the force along needs all of it.
    /// </summary>
    /// <param name="speed">Speed, m/s.</param>
    /// <param name="acceleration">What it gains, m/s²; below 0 in braking. Turning parts are counted, the rotor is not.</param>
    public double LineRadius(double speed, double acceleration)
    {
        // across² + ((c + scrub × across)/share)² = grip².
        double c = (MassKg * (1 + TurningShare) * acceleration + DragN(speed) + RollingN) / DrivenShare, scrub = Scrub / DrivenShare, rest = c * c - GripN * GripN;
        if (rest >= 0)
            return double.PositiveInfinity;
        double square = 1 + scrub * scrub, half = scrub * c, across = (-half + Math.Sqrt(half * half - square * rest)) / square;
        return MassKg * speed * speed / across;
    }
}
