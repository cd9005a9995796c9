namespace Coolproof.Thermal;

/// <summary>A straight, a corner of one radius, or a stretch whose speeds are known.</summary>
/// <param name="LengthM">Way along the driven line, m.</param>
/// <param name="RadiusM">Radius of the driven line, m; infinite for a straight, not a number where the speeds are known: it follows from them and the grip (<see cref="Car.LineRadius"/>).</param>
public readonly record struct TrackPart(double LengthM, double RadiusM)
{
    /// <summary>A straight of a length, m.</summary>
    public static TrackPart Straight(double lengthM) => new(lengthM, double.PositiveInfinity);

    /// <summary>A corner by the radius of its driven line, m, and the angle turned, degrees.</summary>
    public static TrackPart Corner(double radiusM, double turnDeg) => new(radiusM * turnDeg * Math.PI / 180, radiusM);

    /// <summary>A stretch on which driver and grip set the speed, whatever the gearing: seen in a trace.</summary>
    /// <param name="lengthM">Way along the driven line, m.</param>
    /// <param name="fromMS">Speed at its begin, m/s.</param>
    /// <param name="toMS">Speed at its end, m/s.</param>
    public static TrackPart Seen(double lengthM, double fromMS, double toMS) => new(lengthM, double.NaN) { Driven = new(fromMS, toMS) };

    /// <summary>Speeds that are known; null: those that grip and motor give.</summary>
    public SpeedRamp? Driven { get; init; }

    /// <summary>The same part, every length, radius and speed times a factor: what a trace is whose speeds were read too high or too low.</summary>
    public TrackPart Scaled(double factor) => new(LengthM * factor, RadiusM * factor) { Driven = Driven is { } speeds ? new(speeds.FromMS * factor, speeds.ToMS * factor) : null };

    /// <summary>Whether it is a straight.</summary>
    public bool IsStraight => double.IsPositiveInfinity(RadiusM);
}

/// <summary>Speeds along a stretch, gained or lost evenly in time.</summary>
/// <param name="FromMS">At its begin, m/s.</param>
/// <param name="ToMS">At its end, m/s.</param>
public readonly record struct SpeedRamp(double FromMS, double ToMS)
{
    /// <summary>The higher of the two, m/s.</summary>
    public double FastestMS => Math.Max(FromMS, ToMS);

    /// <summary>What is gained, m/s², over a length, m.</summary>
    public double Acceleration(double lengthM) => (ToMS * ToMS - FromMS * FromMS) / (2 * lengthM);
}
