namespace Coolproof.Thermal.FullModel;

/// <summary>How one cooling option carries heat from can and endbell to the air, and how the shell lets that air out.</summary>
/// <param name="FanWPerK">By the option's fan at full speed, W/K; 0 without a fan.</param>
/// <param name="MotionWPerK">By the car's motion at 1 m/s, W/K; goes with speed^0.6.</param>
/// <param name="NaturalWPerK125">Natural convection, W/K^1.25; the flow of heat goes with the difference to the power 1.25.</param>
/// <param name="RadiatingAreaM2">Surface times emissivity, m²; it faces surroundings at air temperature.</param>
/// <param name="EndbellShare">Share of all this that acts on the endbell, 0 to 1; the rest acts on the can.</param>
/// <param name="ShellStillWPerK">Exchange of the shell's air at standstill, W/K.</param>
/// <param name="ShellMotionWPerK">Further exchange per m/s of the car, W/K per m/s; grows with the vents.</param>
public sealed record CoolingOption(
    double FanWPerK, double MotionWPerK, double NaturalWPerK125, double RadiatingAreaM2, double EndbellShare,
    double ShellStillWPerK, double ShellMotionWPerK)
{
    /// <summary>Exponent of forced convection with speed (cylinder in cross flow at a small motor's Reynolds numbers, from memory).</summary>
    public const double SpeedExponent = 0.6;

    /// <summary>Exponent of heat flow with difference in laminar natural convection (1 + 1/4).</summary>
    public const double NaturalExponent = 1.25;

    /// <summary>Exchange with the shell lifted off, times the shell's exchange at standstill.</summary>
    public const double ShellOffFactor = 10;

    /// <summary>The same option shedding a factor more on every way except the shell's own exchange.</summary>
    /// <param name="factor">A positive factor.</param>
    public CoolingOption Times(double factor) => this with
    {
        FanWPerK = factor * FanWPerK,
        MotionWPerK = factor * MotionWPerK,
        NaturalWPerK125 = factor * NaturalWPerK125,
        RadiatingAreaM2 = factor * RadiatingAreaM2,
    };

    /// <summary>Watts shed per degree between can and free air with everything at one can temperature, shell exchange in series.</summary>
    /// <param name="phase">The conditions.</param>
    /// <param name="canRiseK">Can above the air, K; must be positive.</param>
    public double OverallWPerK(in Phase phase, double canRiseK)
    {
        double toShell = ForcedWPerK(phase) + NaturalWPerK125 * Math.Pow(canRiseK, NaturalExponent - 1);
        double exchange = ExchangeWPerK(phase);
        double radiated = HeatFlows.RadiatedW(RadiatingAreaM2, phase.AirC + canRiseK, phase.AirC) / canRiseK;
        return toShell * exchange / (toShell + exchange) + radiated;
    }

    internal double ForcedWPerK(in Phase phase) => phase.Fan * FanWPerK + phase.SpeedPower * MotionWPerK + phase.PitFanWPerK;

    internal double ExchangeWPerK(in Phase phase) =>
        (phase.ShellOff ? ShellOffFactor : 1) * ShellStillWPerK + phase.SpeedMS * ShellMotionWPerK;
}
