namespace Coolproof.Thermal.FullModel;

/// <summary>What a motor is made of, thermally: six heat capacities (J/K) and the conductances between them (W/K).</summary>
/// <param name="WindingJPerK">Copper.</param>
/// <param name="LaminationsJPerK">Stator iron.</param>
/// <param name="RotorJPerK">Magnets and shaft.</param>
/// <param name="CanJPerK">Can.</param>
/// <param name="EndbellJPerK">Endbell.</param>
/// <param name="ShellAirJPerK">Air in the shell and the film of shell that follows it.</param>
/// <param name="SlotWPerK">Winding to laminations through the slot lining.</param>
/// <param name="CoreToCanWPerK">Laminations to can.</param>
/// <param name="RotorToLaminationsWPerK">Across the air gap.</param>
/// <param name="CanToEndbellWPerK">Can to endbell.</param>
/// <param name="WindingToEndbellWPerK">End turns to the endbell through the air inside.</param>
/// <param name="WindingToCanWPerK">End turns to the can through the air inside.</param>
/// <param name="RotorToEndbellWPerK">Shaft and bearing.</param>
public sealed record MotorBody(
    double WindingJPerK, double LaminationsJPerK, double RotorJPerK, double CanJPerK, double EndbellJPerK, double ShellAirJPerK,
    double SlotWPerK, double CoreToCanWPerK, double RotorToLaminationsWPerK, double CanToEndbellWPerK,
    double WindingToEndbellWPerK, double WindingToCanWPerK, double RotorToEndbellWPerK)
{
    /// <summary>Mass of the motor that <see cref="OfMass"/> scales from, kg.</summary>
    public const double ReferenceMassKg = 0.165;

    /// <summary>Rise of copper's resistance at 25 °C, 1/K.</summary>
    public double CopperRisePerK { get; init; } = Winding.AlphaAt25;

    /// <summary>Part of their strength that magnets lose for each degree of the rotor over 25 °C, 1/K; 0: they keep it. The current for the same torque goes with its inverse, copper heat with that square.</summary>
    public double MagnetLossPerK { get; init; }

    /// <summary>Share of the iron heat that arises in the rotor. Few per cent in slotted machines (from memory).</summary>
    public double IronShareRotor { get; init; } = 0.05;

    /// <summary>Share of the iron heat that arises in the can; none where the can is only a shell around the stator.</summary>
    public double IronShareCan { get; init; }

    /// <summary>
    /// A motor of ordinary build. At 165 g: copper 31 g × 385 J/kgK, silicon steel 83 g × 460, NdFeB and shaft 14 J/K, aluminium can and
    /// endbell 44 g × 900; slot 0.5 K/W, laminations to can 3 W/K, air gap 0.3 W/K (design values; the small ones are from memory).
    /// </summary>
    /// <param name="massKg">Mass of the motor, kg; every figure goes with it.</param>
    /// <exception cref="ArgumentOutOfRangeException">The mass is not a positive number.</exception>
    public static MotorBody OfMass(double massKg)
    {
        if (!(massKg > 0) || !double.IsFinite(massKg))
            throw new ArgumentOutOfRangeException(nameof(massKg), massKg, "A motor's mass is a positive number of kilograms.");
        return Ordinary.Scaled(massKg / ReferenceMassKg);
    }

    /// <summary>All capacities and conductances times one factor: with heats scaled alike, every temperature stays as it is.</summary>
    /// <param name="factor">A positive factor.</param>
    public MotorBody Scaled(double factor) => this with
    {
        WindingJPerK = factor * WindingJPerK,
        LaminationsJPerK = factor * LaminationsJPerK,
        RotorJPerK = factor * RotorJPerK,
        CanJPerK = factor * CanJPerK,
        EndbellJPerK = factor * EndbellJPerK,
        ShellAirJPerK = factor * ShellAirJPerK,
        SlotWPerK = factor * SlotWPerK,
        CoreToCanWPerK = factor * CoreToCanWPerK,
        RotorToLaminationsWPerK = factor * RotorToLaminationsWPerK,
        CanToEndbellWPerK = factor * CanToEndbellWPerK,
        WindingToEndbellWPerK = factor * WindingToEndbellWPerK,
        WindingToCanWPerK = factor * WindingToCanWPerK,
        RotorToEndbellWPerK = factor * RotorToEndbellWPerK,
    };

    /// <summary>Heat capacity of one body, J/K.</summary>
    /// <param name="node">The body.</param>
    public double CapacityJPerK(Node node) => node switch
    {
        Node.Winding => WindingJPerK,
        Node.Laminations => LaminationsJPerK,
        Node.Rotor => RotorJPerK,
        Node.Can => CanJPerK,
        Node.Endbell => EndbellJPerK,
        _ => ShellAirJPerK,
    };

    static readonly MotorBody Ordinary = new(
        WindingJPerK: 12, LaminationsJPerK: 38, RotorJPerK: 14, CanJPerK: 31, EndbellJPerK: 9, ShellAirJPerK: 6,
        SlotWPerK: 2.0, CoreToCanWPerK: 3.0, RotorToLaminationsWPerK: 0.3, CanToEndbellWPerK: 0.8,
        WindingToEndbellWPerK: 0.05, WindingToCanWPerK: 0.03, RotorToEndbellWPerK: 0.05);
}
