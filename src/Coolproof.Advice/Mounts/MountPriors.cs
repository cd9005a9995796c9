namespace Coolproof.Advice.Mounts;

/// <summary>What is believed of mounts beyond what was entered, with its doubt. Common practice, no source, unless a line says otherwise.</summary>
internal static class MountPriors
{
    /// <summary>By motor plate, chassis, shaft and the air that the rotor pumps through the endbell's windows, W/K for a motor of 165 g; goes with its mass.</summary>
    public const double PlateWPerK = 0.35, PlateLogSd = 0.45;

    /// <summary>Wind at the can over the car's speed, under a shell.</summary>
    public const double WindShare = 0.15, WindLogSd = 0.5;

    /// <summary>Log-sd of a mean speed as people know it.</summary>
    public const double SpeedLogSd = 0.12;

    /// <summary>The shell's air: exchange at standstill, W/K, and per m/s of the car, W/K per m/s, for vents that were not measured (the full model's range).</summary>
    public const double ShellStillWPerK = 3, ShellMotionWPerK = 1.2, ShellLogSd = 0.25;

    /// <summary>Share of the car's speed at which air leaves by vents that were measured, times what a sharp hole lets through.</summary>
    public const double VentSpeedShare = 0.35;

    /// <summary>Emissivity of a can with paint, print or anodising, and its sd; it stays between bare metal and paint.</summary>
    public const double Emissivity = 0.6, EmissivitySd = 0.2, EmissivityLow = 0.08, EmissivityHigh = 0.95;

    /// <summary>Log-sd of a correlation of the can's own draught.</summary>
    public const double DraughtLogSd = 0.2;

    /// <summary>Log-sd of a flow or a pressure as it is printed.</summary>
    public const double PrintedLogSd = 0.14;

    /// <summary>Log-sd of a stall pressure that isn't printed.</summary>
    public const double UnprintedStallLogSd = 0.4;

    /// <summary>Log-sd of an area on the way as it was measured, and of a distance.</summary>
    public const double RulerLogSd = 0.14;

    /// <summary>Log-sd of the loss factors of a way together.</summary>
    public const double LossLogSd = 0.2;

    /// <summary>Log-sd of a jet's half-angle.</summary>
    public const double SpreadLogSd = 0.2;

    /// <summary>Share of the wind's pressure that a mouth facing forward takes up in the wake of wheels, wings and bodywork, and its log-sd.</summary>
    public const double RamShare = 0.6, RamLogSd = 0.3;

    /// <summary>Fins' heat over that of as much bare can: contact, tips, and the stream between them; its log-sd.</summary>
    public const double FinShare = 0.7, FinLogSd = 0.25;

    /// <summary>Log-sd of a correlation within its published range: 10 to 25 % about measurements (Churchill and Bernstein 1977; Martin 1977; from memory).</summary>
    public const double WithinLogSd = 0.2;

    /// <summary>Log-sd outside any published range.</summary>
    public const double OutsideLogSd = 0.4;

    /// <summary>Share of the variance of a correlation's error that all mounts of a sheet have in common: the same can, the same swirl of small fans, the same turbulence.</summary>
    public const double CommonShare = 0.4;

    /// <summary>Log-sd of what a prediction misses of a mount where both it and a verdict are at hand, beside all that is drawn.</summary>
    public const double MissedLogSd = 0.08;
}
