namespace Coolproof.Thermal;

/// <summary>
/// A sensored brushless motor by what its card or a bench tells. Timing turns the field ahead of the magnet: the voltage that the turning magnet gives falls with
/// the cosine of the angle, so the motor turns faster for a volt and gives less torque for an ampere (handbook relation of a commutated machine driven off its neutral).
/// </summary>
/// <param name="SpeedConstantRpm">Speed for a volt of back voltage, rpm/V, at <paramref name="TimingDeg"/>.</param>
/// <param name="ColdOhm">Resistance of two phases in series with the winding at 25 °C, Ω.</param>
/// <param name="NoLoadA">Current without load, A, at <paramref name="NoLoadV"/> and <paramref name="TimingDeg"/>.</param>
/// <param name="NoLoadV">Voltage of that, V.</param>
/// <param name="TimingDeg">Timing at which these hold, degrees.</param>
public sealed record BrushlessMotor(double SpeedConstantRpm, double ColdOhm, double NoLoadA, double NoLoadV, double TimingDeg)
{
    /// <summary>Least and most timing that is reckoned, degrees.</summary>
    public const double LeastTimingDeg = 0, MostTimingDeg = 60;

    // Common practice, no source: turns, rpm/V, Ω at 25 °C.
    private static readonly (double Turns, double Rpm, double Ohm)[] Typical = [(13.5, 3100, 0.022), (17.5, 2300, 0.035), (21.5, 1850, 0.050)];

    /// <summary>Share of the no-load loss that is hysteresis (with friction of bearings) at the no-load speed; the rest is eddy currents.</summary>
    public double HysteresisShare { get; init; } = 0.5;

    /// <summary>Copper heat over that of an even current of the same mean square: 1.05 to 1.2 (common practice, no source).</summary>
    public double Ripple { get; init; } = 1.1;

    /// <summary>Moment of inertia of the rotor, kg m²: 35 g of 12.5 mm diameter.</summary>
    public double RotorInertia { get; init; } = 7e-7;

    /// <summary>A typical motor by its turns (common practice, no source): speed goes about with 1/turns, resistance with their square; 4 A without load at 7.4 V and 30°.</summary>
    /// <param name="turns">Turns, 3 to 40.</param>
    /// <exception cref="ArgumentOutOfRangeException">Turns outside their range.</exception>
    public static BrushlessMotor OfTurns(double turns)
    {
        if (!(turns is >= 3 and <= 40))
            throw new ArgumentOutOfRangeException(nameof(turns), turns, "expected 3 to 40 turns");
        int at = Math.Clamp(Array.FindIndex(Typical, t => t.Turns >= turns), 1, Typical.Length - 1);
        if (turns > Typical[^1].Turns)
            at = Typical.Length - 1;
        (double Turns, double Rpm, double Ohm) a = Typical[at - 1], b = Typical[at];
        double share = Math.Log(turns / a.Turns) / Math.Log(b.Turns / a.Turns);
        return new(a.Rpm * Math.Pow(b.Rpm / a.Rpm, share), a.Ohm * Math.Pow(b.Ohm / a.Ohm, share), 4, 7.4, 30);
    }

    /// <summary>The machine at a timing and a winding temperature; its resistance carries the ripple.</summary>
    /// <param name="timingDeg">Degrees, <see cref="LeastTimingDeg"/> to <see cref="MostTimingDeg"/>.</param>
    /// <param name="windingC">Mean temperature of the winding, °C.</param>
    /// <exception cref="ArgumentOutOfRangeException">A timing outside its range.</exception>
    public PermanentMagnetMachine At(double timingDeg, double windingC)
    {
        if (!(timingDeg is >= LeastTimingDeg and <= MostTimingDeg))
            throw new ArgumentOutOfRangeException(nameof(timingDeg), timingDeg, $"expected {LeastTimingDeg} to {MostTimingDeg} degrees");
        double k = SpeedConstantRpm * Math.PI / 30, noLoadSpeed = (NoLoadV - NoLoadA * ColdOhm) * k, torque = NoLoadA / k;
        return new(
            k * Math.Cos(TimingDeg * Math.PI / 180) / Math.Cos(timingDeg * Math.PI / 180), Ripple * Winding.Resistance(windingC, ColdOhm, 25),
            HysteresisShare * torque, (1 - HysteresisShare) * torque / noLoadSpeed);
    }
}
