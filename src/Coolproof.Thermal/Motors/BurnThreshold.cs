namespace Coolproof.Thermal;

/// <summary>
/// Temperatures of bare smooth metal from which skin burns (ISO 13732-1; from memory, the figure's band read at its lower edge; 1 s also 68 °C
/// in burn-institute data read from a secondary page).
/// </summary>
public static class BurnThreshold
{
    /// <summary>Contact of one second, °C.</summary>
    public const double MetalOneSecondC = 65;

    /// <summary>Contact of ten seconds, °C.</summary>
    public const double MetalTenSecondsC = 55;

    /// <summary>Contact of one minute, °C.</summary>
    public const double MetalOneMinuteC = 51;
}
