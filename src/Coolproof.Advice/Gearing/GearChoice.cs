using Coolproof.Thermal;

namespace Coolproof.Advice.Gearing;

/// <summary>A pinion with its spur, and a timing.</summary>
/// <param name="Pinion">Teeth.</param>
/// <param name="Spur">Teeth.</param>
/// <param name="TimingDeg">Degrees.</param>
public readonly record struct GearChoice(int Pinion, int Spur, double TimingDeg);

/// <summary>What the class, the car and the box of pinions allow. Nothing outside is ever proposed.</summary>
/// <param name="LeastPinion">Fewest teeth of a pinion at hand.</param>
/// <param name="MostPinion">Most teeth.</param>
/// <param name="Spur">Teeth of the spur.</param>
/// <param name="LeastTimingDeg">Least timing allowed, degrees.</param>
/// <param name="MostTimingDeg">Most; the same: fixed.</param>
public sealed record GearCard(int LeastPinion, int MostPinion, int Spur, double LeastTimingDeg, double MostTimingDeg)
{
    /// <summary>Steps in which timing is tried, degrees.</summary>
    public const double TimingStepDeg = 5;

    /// <summary>Least final drive ratio allowed; null: free.</summary>
    public double? LeastRatio { get; init; }

    /// <summary>Most; null: free.</summary>
    public double? MostRatio { get; init; }

    /// <summary>Where pinion and spur have to mesh; null: not looked at.</summary>
    public GearSpace? Space { get; init; }

    /// <summary>Timings within the card: from the least on in steps, and the most.</summary>
    public IReadOnlyList<double> Timings()
    {
        int steps = (int)Math.Floor((MostTimingDeg - LeastTimingDeg) / TimingStepDeg + 1e-9);
        List<double> timings = [.. Enumerable.Range(0, steps + 1).Select(i => LeastTimingDeg + i * TimingStepDeg)];
        if (MostTimingDeg - timings[^1] > 0.1)
            timings.Add(MostTimingDeg);
        return timings;
    }

    /// <summary>Pinions within the card.</summary>
    /// <param name="internalRatio">Turns of the spur for one of the wheels.</param>
    public IReadOnlyList<int> Pinions(double internalRatio) => [.. Enumerable.Range(LeastPinion, MostPinion - LeastPinion + 1).Where(pinion =>
        new GearTrain(pinion, Spur, internalRatio).FinalDriveRatio is var ratio && (LeastRatio is not { } least || ratio >= least - 1e-9)
        && (MostRatio is not { } most || ratio <= most + 1e-9) && Space?.Meshes(pinion, Spur) != false)];

    /// <summary>Why nothing can be chosen, with what would be right; null where something can.</summary>
    /// <param name="internalRatio">Turns of the spur for one of the wheels.</param>
    public string? Refusal(double internalRatio)
    {
        if (Pinions(internalRatio).Count > 0)
            return null;
        if (Space is { } space && !Enumerable.Range(LeastPinion, MostPinion - LeastPinion + 1).Any(p => space.Meshes(p, Spur)))
            return $"no pinion of {LeastPinion} to {MostPinion} teeth meshes with a spur of {Spur} where the shafts are {space.LeastMm:0.0#} to {space.MostMm:0.0#} mm apart: {LeastPinion} teeth need "
                + $"{space.ApartMm(LeastPinion, Spur):0.0} mm, {MostPinion} need {space.ApartMm(MostPinion, Spur):0.0} mm at module {space.ModuleMm:0.###}. Give other pinions, another spur, or measure the distance again.";
        return $"no pinion of {LeastPinion} to {MostPinion} teeth gives a final drive ratio of {Allowed()} with a spur of {Spur}: it is {new GearTrain(MostPinion, Spur, internalRatio).FinalDriveRatio:0.00} to "
            + $"{new GearTrain(LeastPinion, Spur, internalRatio).FinalDriveRatio:0.00}. Give other pinions or another spur, or look at the ratio in the rule book again.";
    }

    private string Allowed() => (LeastRatio, MostRatio) switch
    {
        ({ } least, { } most) when least == most => $"{least:0.00}",
        ({ } least, { } most) => $"{least:0.00} to {most:0.00}",
        ({ } least, _) => $"{least:0.00} or more",
        _ => $"{MostRatio:0.00} or less",
    };
}

/// <summary>How far apart motor shaft and spur can be.</summary>
/// <param name="ModuleMm">Module of the teeth, mm: pitch diameter over number of teeth (ISO 54, ISO 21771; from memory); 25.4 over the diametral pitch.</param>
/// <param name="LeastMm">Nearest, mm.</param>
/// <param name="MostMm">Furthest, mm.</param>
public sealed record GearSpace(double ModuleMm, double LeastMm, double MostMm)
{
    // A tenth of a millimetre of backlash is set by hand.
    private const double BacklashMm = 0.1;

    /// <summary>Distance of the shafts of two gears that mesh, mm: half the sum of their pitch diameters.</summary>
    public double ApartMm(int pinion, int spur) => 0.5 * ModuleMm * (pinion + spur);

    /// <summary>Whether two gears can be set to mesh.</summary>
    public bool Meshes(int pinion, int spur) => ApartMm(pinion, spur) is var apart && apart >= LeastMm - BacklashMm && apart <= MostMm + BacklashMm;
}
