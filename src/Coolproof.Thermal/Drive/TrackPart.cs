namespace Coolproof.Thermal;

/// <summary>A straight, or a corner of one radius.</summary>
/// <param name="LengthM">Way along the driven line, m.</param>
/// <param name="RadiusM">Radius of the driven line, m; infinite for a straight.</param>
public readonly record struct TrackPart(double LengthM, double RadiusM)
{
    /// <summary>A straight of a length, m.</summary>
    public static TrackPart Straight(double lengthM) => new(lengthM, double.PositiveInfinity);

    /// <summary>A corner by the radius of its driven line, m, and the angle turned, degrees.</summary>
    public static TrackPart Corner(double radiusM, double turnDeg) => new(radiusM * turnDeg * Math.PI / 180, radiusM);

    /// <summary>Whether it is a straight.</summary>
    public bool IsStraight => double.IsPositiveInfinity(RadiusM);
}
