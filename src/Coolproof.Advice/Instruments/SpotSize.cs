using Coolproof.Thermal;

namespace Coolproof.Advice.Instruments;

/// <summary>What a gun's spot covers at a distance.</summary>
/// <param name="DistanceM">Distance from the gun to the motor, m.</param>
/// <param name="Ratio">Distance to spot size, such as 12 for 12:1.</param>
/// <param name="SmallestM">Diameter below which the spot doesn't shrink, m.</param>
/// <param name="TargetM">Width of what is to be read, m.</param>
/// <param name="IsBand">Whether that is a band across the can; else a round spot of tape.</param>
public sealed record SpotSize(double DistanceM, double Ratio, double SmallestM, double TargetM, bool IsBand)
{
    /// <summary>
    /// The spot should be at most this share of what it reads: makers state the spot for 90 or 95 % of the energy, and hands are not steady. Common practice, no source.
    /// </summary>
    public const double BestShare = 0.5;

    // A can and air to say the loss of (the demo's).
    private const double CanC = 70, AirC = 25, Tape = 0.95;

    /// <summary>Diameter of the spot, m.</summary>
    public double SpotM => MeasuringSpot.DiameterM(DistanceM, Ratio, SmallestM);

    /// <summary>Share of the spot that lies off, 0 to 1, with the spot centred.</summary>
    public double ShareOff => IsBand ? MeasuringSpot.ShareOffBand(SpotM, TargetM) : MeasuringSpot.ShareOffDisc(SpotM, TargetM);

    /// <summary>What a can of 70 °C in 25 °C air reads too little by, K.</summary>
    public double LossK => CanC - Gun.Usual.ReadingC(CanC, Tape, Tape, AirC, ShareOff);

    /// <summary>Farthest distance at which the spot is small enough, m; 0 where the lens itself is too large.</summary>
    public double BestWithinM => SmallestM > BestShare * TargetM ? 0 : BestShare * TargetM * Ratio;

    /// <summary>Whether the spot is small enough to be held on the target by hand.</summary>
    public bool IsSmallEnough => SpotM <= BestShare * TargetM;

    /// <summary>The same at another distance.</summary>
    public SpotSize At(double distanceM) => this with { DistanceM = distanceM };
}
