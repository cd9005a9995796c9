namespace Coolproof.Thermal.FullModel;

/// <summary>
/// What holds between two events (go, end of hard driving, halt, power off, blown, rest): heat, air and how it moves. Nothing changes within it.
/// </summary>
/// <param name="AirC">Free air, °C.</param>
/// <param name="CopperW25">Copper heat with the winding at 25 °C and this current, W.</param>
/// <param name="IronW">Iron heat, W.</param>
/// <param name="SpeedMS">Mean speed of the car, or of the breeze where it stands, m/s.</param>
/// <param name="SpeedPower">Mean of speed^0.6: over a lap it is less than the mean speed to the power 0.6.</param>
/// <param name="Fan">The option's fan: 1 running, 0 off.</param>
/// <param name="PitFanWPerK">By a pit fan blowing on can and endbell, W/K.</param>
/// <param name="ShellOff">The body shell is lifted off.</param>
public readonly record struct Phase(
    double AirC, double CopperW25, double IronW, double SpeedMS, double SpeedPower, double Fan, double PitFanWPerK = 0, bool ShellOff = false)
{
    /// <summary>A phase at one steady speed.</summary>
    /// <param name="airC">Free air, °C.</param>
    /// <param name="copperW25">Copper heat with the winding at 25 °C, W.</param>
    /// <param name="ironW">Iron heat, W.</param>
    /// <param name="speedMS">Speed, m/s.</param>
    /// <param name="fan">The option's fan: 1 running, 0 off.</param>
    public static Phase Steady(double airC, double copperW25, double ironW, double speedMS, double fan) =>
        new(airC, copperW25, ironW, speedMS, Math.Pow(speedMS, CoolingOption.SpeedExponent), fan);
}
