namespace Coolproof.Thermal;

/// <summary>
/// A stream that leaves an opening and spreads in still air: its momentum stays, so its mean speed falls with the root of its area while the air that it carries grows with it.
/// </summary>
/// <param name="WidthM">Width at the opening, m.</param>
/// <param name="DepthM">Depth at the opening, across the width, m.</param>
/// <param name="AreaM2">Area that air leaves through, m²: less than width times depth where a hub or a grille is in it.</param>
public readonly record struct FreeJet(double WidthM, double DepthM, double AreaM2)
{
    /// <summary>Half-angle that a turbulent jet spreads by, degrees (11 to 12 for a plain one; fans spread wider by their swirl; from memory).</summary>
    public const double HalfAngleDeg = 13;

    /// <summary>The jet further on.</summary>
    /// <param name="distanceM">From the opening, m.</param>
    /// <param name="halfAngleDeg">Half-angle of its spread, degrees.</param>
    public FreeJet After(double distanceM, double halfAngleDeg = HalfAngleDeg)
    {
        double wider = 2 * distanceM * Math.Tan(halfAngleDeg * Math.PI / 180), width = WidthM + wider, depth = DepthM + wider;
        return new(width, depth, AreaM2 * width * depth / (WidthM * DepthM));
    }

    /// <summary>Mean speed further on, over the speed at the opening.</summary>
    /// <param name="further">The same jet further on.</param>
    public double SpeedShare(FreeJet further) => Math.Sqrt(AreaM2 / further.AreaM2);

    /// <summary>Length that two stretches of given middles have in common, over the second's: how much of a body lies within a stream.</summary>
    /// <param name="width">Length of the first.</param>
    /// <param name="aside">Middle of the first from the second's.</param>
    /// <param name="bodyWidth">Length of the second.</param>
    public static double Covered(double width, double aside, double bodyWidth)
    {
        double low = Math.Max(-bodyWidth / 2, aside - width / 2), high = Math.Min(bodyWidth / 2, aside + width / 2);
        return Math.Clamp((high - low) / bodyWidth, 0, 1);
    }
}
