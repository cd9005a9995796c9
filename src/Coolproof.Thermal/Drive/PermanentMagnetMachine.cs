namespace Coolproof.Thermal;

/// <summary>
/// A permanent-magnet motor in steady turning, seen from its two driven phases: back voltage ω/k, torque I/k less the drag of the iron, whose loss is
/// hysteresis (∝ speed) and eddy currents (∝ speed²). Handbook equations of the direct-current machine, from memory.
/// </summary>
/// <param name="SpeedConstant">k, rad/s per volt.</param>
/// <param name="Resistance">Of the two driven phases, Ω, at the winding's present temperature.</param>
/// <param name="HysteresisDrag">Torque of the hysteresis loss, N·m.</param>
/// <param name="EddyDrag">Torque of the eddy loss per speed, N·m·s.</param>
public readonly record struct PermanentMagnetMachine(double SpeedConstant, double Resistance, double HysteresisDrag, double EddyDrag)
{
    /// <summary>Current (A) at this voltage (V) and speed (rad/s).</summary>
    public double Current(double voltage, double speed) => (voltage - speed / SpeedConstant) / Resistance;

    /// <summary>Current (A) with the rotor held, at this voltage (V).</summary>
    public double StallCurrent(double voltage) => voltage / Resistance;

    /// <summary>Heat in the iron, W, at this speed (rad/s).</summary>
    public double IronLoss(double speed) => (HysteresisDrag + EddyDrag * speed) * speed;

    /// <summary>Torque at the shaft while turning, N·m, at this voltage (V) and speed (rad/s).</summary>
    public double Torque(double voltage, double speed) => Current(voltage, speed) / SpeedConstant - HysteresisDrag - EddyDrag * speed;

    /// <summary>Speed (rad/s) at which the shaft gives no torque, at this voltage (V); 0 where the voltage can't overcome hysteresis.</summary>
    public double NoLoadSpeed(double voltage)
    {
        double start = voltage / (Resistance * SpeedConstant) - HysteresisDrag;
        return Math.Max(0, start / (1 / (Resistance * SpeedConstant * SpeedConstant) + EddyDrag));
    }
}
