namespace Coolproof.Thermal;

/// <summary>
/// A fan's curve at one density: free flow, stall pressure, and between them p = stall (1 − (Q/free)²). A maker's curve often sags in between; nothing better is known of
/// a fan whose two ends alone are printed.
/// </summary>
/// <param name="FreeM3S">Flow against no resistance, m³/s.</param>
/// <param name="StallPa">Static pressure without flow, Pa, in air of <see cref="RatedDensity"/>.</param>
public readonly record struct Fan(double FreeM3S, double StallPa)
{
    /// <summary>Density that makers' curves are printed for, kg/m³ (ISO 5801: standard air, from memory).</summary>
    public const double RatedDensity = 1.2;

    /// <summary>Stall pressure over the velocity pressure of the free flow through the blades, for a small axial fan of which it isn't printed (common practice, no source).</summary>
    public const double TypicalStallHeads = 4;

    /// <summary>The same fan at another speed: flow goes with it, pressure with its square (the fan laws).</summary>
    /// <param name="ratio">Speed over rated speed.</param>
    public Fan AtSpeed(double ratio) => new(FreeM3S * ratio, StallPa * ratio * ratio);

    /// <summary>The same fan in air of a density: a fan moves volumes, its pressure goes with the density.</summary>
    /// <param name="density">kg/m³.</param>
    public Fan In(double density) => this with { StallPa = StallPa * density / RatedDensity };

    /// <summary>Pressure at a flow, Pa; below zero past the free flow, where the fan is in the way.</summary>
    /// <param name="flowM3S">Flow, m³/s.</param>
    public double PressurePa(double flowM3S) => StallPa * (1 - flowM3S / FreeM3S * (flowM3S / FreeM3S));

    /// <summary>Stall pressure of a small axial fan from its free flow and the area that its blades sweep, Pa.</summary>
    /// <param name="freeM3S">Free flow, m³/s.</param>
    /// <param name="sweptM2">Area between hub and rim, m².</param>
    public static double TypicalStallPa(double freeM3S, double sweptM2) => TypicalStallHeads * RatedDensity / 2 * (freeM3S / sweptM2) * (freeM3S / sweptM2);

    /// <summary>
    /// Flow where fans, pushed by a further pressure, meet a resistance: Q = √((Σ stall + ram)/(Σ stall/free² + ρ r)), exact for this curve.
    /// </summary>
    /// <param name="inRow">Fans one behind the other; none: the further pressure alone.</param>
    /// <param name="furtherPa">Further pressure, as by a duct that faces the wind, Pa; 0 or more.</param>
    /// <param name="resistance">Resistance r, 1/m⁴: the loss is ρ r Q².</param>
    /// <param name="density">Density of the air, kg/m³.</param>
    /// <returns>m³/s.</returns>
    public static double FlowM3S(ReadOnlySpan<Fan> inRow, double furtherPa, double resistance, double density)
    {
        double push = furtherPa, steepness = density * resistance;
        foreach (Fan fan in inRow)
        {
            push += fan.StallPa;
            steepness += fan.StallPa / (fan.FreeM3S * fan.FreeM3S);
        }
        return push <= 0 || double.IsPositiveInfinity(steepness) ? 0 : Math.Sqrt(push / steepness);
    }

    /// <summary>Fans side by side as one: flows add at each pressure; exact for fans alike, else the weaker's stall pressure is that of both, since past it air would run back.</summary>
    /// <param name="beside">One fan or more.</param>
    public static Fan SideBySide(ReadOnlySpan<Fan> beside)
    {
        double free = 0, stall = double.PositiveInfinity;
        foreach (Fan fan in beside)
        {
            free += fan.FreeM3S;
            stall = Math.Min(stall, fan.StallPa);
        }
        return new(free, stall);
    }
}
