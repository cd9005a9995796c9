using Coolproof.Notebook;
using Coolproof.Thermal;

namespace Coolproof.Evidence.Guns;

/// <summary>How well what a gun is checked against is known. Uncertainties are common practice, no source; emissivities are the reference table's.</summary>
/// <param name="StandardUncertaintyK">Of its true temperature at the spot that was shot, K.</param>
/// <param name="Surface">What the gun looks at.</param>
public sealed record CheckTarget(double StandardUncertaintyK, SurfaceEmissivity Surface)
{
    /// <summary>
    /// One shot about the mean of many, K: the display's step, the hand, the gun's own noise. Three quick shots tell better.
    /// </summary>
    public const double ShotK = 0.5;

    /// <summary>By what a gun is checked against.</summary>
    public static CheckTarget Of(CheckedAgainst against) => against switch
    {
        // A stirred slush of crushed ice; lumps and warm water between them spoil it.
        CheckedAgainst.Ice => new(0.3, SurfaceEmissivity.Find("water")!),
        // Weather moves the pressure at an altitude by some 10 hPa, 0.3 K; steam cools the surface that is seen, and fogs the lens.
        CheckedAgainst.Boiling => new(0.7, SurfaceEmissivity.Find("water")!),
        // The matt tape on the mug is what is shot.
        CheckedAgainst.ProbeInWater => new(0.5, SurfaceEmissivity.Find("tape")!),
        // A probe on a can draws heat off the place that it touches.
        _ => new(0.7, SurfaceEmissivity.Find("tape")!),
    };

    /// <summary>Doubt of the surface's emissivity as a log-sd.</summary>
    public double LogEmissivitySd => Surface.StandardUncertainty / Surface.Middle;
}
