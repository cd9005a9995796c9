namespace Coolproof.Notebook;

/// <summary>Where on the motor (or beside it) a reading was taken.</summary>
public enum Spot
{
    /// <summary>The band of the can between mount and endbell: the spot that options are compared on.</summary>
    Can,
    /// <summary>A fin of a clamp-on heat sink; never taken for the can.</summary>
    Fin,
    /// <summary>The endbell.</summary>
    Endbell,
    /// <summary>Through a vent, on whatever lies behind it; never taken for the can.</summary>
    ThroughVent,
    /// <summary>The winding itself.</summary>
    Winding,
    /// <summary>The speed controller; never taken for the can.</summary>
    Esc,
}

/// <summary>What the gun's spot lay on.</summary>
public enum SpotSurface
{
    /// <summary>Not noted.</summary>
    Unknown,
    /// <summary>Matt tape.</summary>
    Tape,
    /// <summary>Matt paint.</summary>
    Paint,
    /// <summary>Bare metal.</summary>
    Bare
}

/// <summary>What the number on the display was.</summary>
public enum Hold
{
    /// <summary>One shot.</summary>
    Single,
    /// <summary>The maximum over a sweep of shots.</summary>
    Max,
    /// <summary>An average of shots.</summary>
    Average
}

/// <summary>Terminal pair of a three-phase winding.</summary>
public enum WindingPair
{
    /// <summary>A to B.</summary>
    AB,
    /// <summary>B to C.</summary>
    BC,
    /// <summary>C to A.</summary>
    CA
}

/// <summary>A four-wire winding resistance taken after the halt, with its cold value.</summary>
/// <param name="HotMilliohm">Resistance after the halt, mΩ.</param>
/// <param name="AtS">Seconds from halt to the hot measurement; null when not noted.</param>
/// <param name="ColdMilliohm">Resistance of the same pair, cold, mΩ.</param>
/// <param name="ColdC">Temperature of the winding at the cold measurement, °C.</param>
/// <param name="Pair">Terminal pair; null when not noted.</param>
public sealed record WindingResistance(double HotMilliohm, double? AtS, double ColdMilliohm, double ColdC, WindingPair? Pair);

/// <summary>One row of a readings table: a temperature read after a run, or a winding resistance, or both.</summary>
/// <param name="Line">Line of the source file, 1-based, header included; 0 when it did not come from a file.</param>
/// <param name="ReadC">The number on the display, °C; null when the row holds only a winding resistance.</param>
/// <param name="StopToReadS">Seconds from halt to the reading; null when not noted.</param>
/// <param name="Instrument">Name of the instrument; "gun" when not noted.</param>
/// <param name="EmissivitySet">The instrument's own emissivity setting, 0 to 1; null when unknown (then it is not undone).</param>
/// <param name="Surface">What the spot lay on.</param>
/// <param name="Spot">Where the spot lay.</param>
/// <param name="Hold">What the number on the display was.</param>
/// <param name="Winding">Winding resistance in the same row, if any.</param>
/// <param name="ExcludedBecause">Reason for leaving the reading out; null when it counts.</param>
/// <param name="Note">Free text, and unknown columns as "column: value" joined by "; ".</param>
public sealed record Reading(
    int Line,
    double? ReadC,
    double? StopToReadS,
    string Instrument = "gun",
    double? EmissivitySet = null,
    SpotSurface Surface = SpotSurface.Unknown,
    Spot Spot = Spot.Can,
    Hold Hold = Hold.Single,
    WindingResistance? Winding = null,
    string? ExcludedBecause = null,
    string? Note = null);
