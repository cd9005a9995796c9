namespace Coolproof.Thermal;

/// <summary>A lap as straights and corners in the order in which they are driven; after the last comes the first again.</summary>
public sealed record Track
{
    /// <summary>Shortest and longest lap that is reckoned, m.</summary>
    public const double ShortestM = 20, LongestM = 3000;

    /// <summary>Tightest line that a scale car drives, m.</summary>
    public const double TightestM = 0.3;

    /// <summary>Slowest that a car is reckoned to go on a flying lap, m/s.</summary>
    public const double SlowestMS = 0.5;

    /// <summary>A lap from its parts.</summary>
    /// <param name="parts">Straights and corners.</param>
    /// <exception cref="ArgumentException">A lap that can't be driven; the message says why and what would be right.</exception>
    public Track(IReadOnlyList<TrackPart> parts)
    {
        if (Refusal(parts) is { } refused)
            throw new ArgumentException(refused, nameof(parts));
        Parts = [.. parts];
        LengthM = parts.Sum(p => p.LengthM);
    }

    /// <summary>Parts in order.</summary>
    public IReadOnlyList<TrackPart> Parts { get; }

    /// <summary>Length of the driven line, m.</summary>
    public double LengthM { get; }

    /// <summary>Mean of the part of a lap that is straight, 0 to 1.</summary>
    public double StraightShare => Parts.Where(p => p.IsStraight).Sum(p => p.LengthM) / LengthM;

    /// <summary>An off-road lap of a 1:10 club track: invented.</summary>
    public static Track OffRoad { get; } = new(
    [
        TrackPart.Straight(34), TrackPart.Corner(3.0, 180), TrackPart.Straight(12), TrackPart.Corner(2.0, 90), TrackPart.Straight(7), TrackPart.Corner(2.2, 180),
        TrackPart.Straight(15), TrackPart.Corner(1.8, 120), TrackPart.Straight(6), TrackPart.Corner(2.5, 150), TrackPart.Straight(18), TrackPart.Corner(2.0, 180),
        TrackPart.Straight(10), TrackPart.Corner(4.0, 90), TrackPart.Straight(14), TrackPart.Corner(3.0, 150),
    ]);

    /// <summary>A lap of a carpet in a hall: invented.</summary>
    public static Track Carpet { get; } = new(
    [
        TrackPart.Straight(24), TrackPart.Corner(2.5, 180), TrackPart.Straight(8), TrackPart.Corner(1.2, 150), TrackPart.Straight(5), TrackPart.Corner(1.5, 180),
        TrackPart.Straight(9), TrackPart.Corner(2.0, 90), TrackPart.Straight(6), TrackPart.Corner(1.2, 180), TrackPart.Straight(11), TrackPart.Corner(1.8, 180),
    ]);

    /// <summary>The same lap, every length, radius and known speed times a factor.</summary>
    public Track Scaled(double factor) => new([.. Parts.Select(p => p.Scaled(factor))]);

    /// <summary>Why parts are no lap that can be driven, with what would be right; null where they are.</summary>
    public static string? Refusal(IReadOnlyList<TrackPart> parts)
    {
        if (parts.Count == 0)
            return "a lap without parts: give at least one straight or corner.";
        for (int i = 0; i < parts.Count; i++)
        {
            if (!(parts[i].LengthM > 0 && double.IsFinite(parts[i].LengthM)))
                return $"part {i + 1} of the lap has no length: give it in metres, above 0.";
            if (parts[i].Driven is { } speeds && !(Math.Min(speeds.FromMS, speeds.ToMS) >= SlowestMS && double.IsFinite(speeds.FastestMS)))
                return $"part {i + 1} of the lap goes from {speeds.FromMS:0.##} to {speeds.ToMS:0.##} m/s: give speeds of {SlowestMS} m/s or more.";
            if (parts[i].Driven is null && !(parts[i].RadiusM >= TightestM))
                return $"part {i + 1} of the lap has a radius of {parts[i].RadiusM:0.##} m, which no car drives: give that of the driven line, {TightestM} m or more.";
        }
        double length = parts.Sum(p => p.LengthM);
        return length is >= ShortestM and <= LongestM ? null : $"a lap of {length:0} m is not reckoned: expected {ShortestM:0} m to {LongestM:0} m. Are all lengths in metres?";
    }
}
