namespace Coolproof.Thermal;

/// <summary>A pack and what lies between it and the motor. Typical figures: common practice, no source.</summary>
public sealed record Pack
{
    // A lithium polymer cell at rest, V: a line through the middle of its charge (common practice, no source).
    private const double EmptyCellV = 3.55, FullCellV = 4.2;

    /// <summary>Cells in series, 1 to 6.</summary>
    public int Cells { get; init; } = 2;

    /// <summary>Charge, Ah.</summary>
    public double CapacityAh { get; init; } = 5;

    /// <summary>Resistance of the pack, Ω: 2 to 8 mΩ with two cells.</summary>
    public double PackOhm { get; init; } = 0.004;

    /// <summary>Resistance of leads and plugs, Ω.</summary>
    public double LeadsOhm { get; init; } = 0.001;

    /// <summary>In series with the motor's current: the speed controller, Ω. With the leads 1 to 4 mΩ.</summary>
    public double ControllerOhm { get; init; } = 0.0015;

    /// <summary>What controller, receiver and servo draw, A.</summary>
    public double IdleA { get; init; } = 0.4;

    /// <summary>Most current that the controller lets into the motor (punch or current limit), A.</summary>
    public double CurrentLimitA { get; init; } = 150;

    /// <summary>Most motor current in braking, A.</summary>
    public double BrakeLimitA { get; init; } = 60;

    /// <summary>Resistance in front of the controller, Ω.</summary>
    public double SourceOhm => PackOhm + LeadsOhm;

    /// <summary>Voltage at rest with some charge drawn, V; no lower than empty.</summary>
    public double OpenV(double drawnAh) => Cells * (EmptyCellV + (FullCellV - EmptyCellV) * Math.Clamp(1 - drawnAh / CapacityAh, 0, 1));
}
