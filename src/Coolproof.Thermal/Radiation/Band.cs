namespace Coolproof.Thermal;

/// <summary>A band of wavelengths over which an instrument responds evenly.</summary>
/// <param name="LowerM">Lower edge, m.</param>
/// <param name="UpperM">Upper edge, m.</param>
public readonly record struct Band(double LowerM, double UpperM)
{
    /// <summary>8 to 14 µm, the window of the air in which hand-held guns work.</summary>
    public static Band Gun { get; } = new(8e-6, 14e-6);

    /// <summary>All wavelengths: a signal that goes with T⁴.</summary>
    public static Band All { get; } = new(0, double.PositiveInfinity);
}
