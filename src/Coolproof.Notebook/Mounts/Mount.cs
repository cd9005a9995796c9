namespace Coolproof.Notebook;

/// <summary>Mounts that nobody has driven yet, and what they have in common. SI units but for °C.</summary>
/// <param name="AirC">Air outside the car, °C.</param>
/// <param name="Humidity">Relative humidity, 0 to 1.</param>
/// <param name="AltitudeM">Altitude, m.</param>
/// <param name="CarSpeedMS">Mean speed of the car while driving, m/s.</param>
/// <param name="Can">The motor.</param>
/// <param name="Mounts">The mounts, one at least.</param>
public sealed record MountSheet(double AirC, double Humidity, double AltitudeM, double CarSpeedMS, MotorCan Can, IReadOnlyList<Mount> Mounts);

/// <summary>The motor's can.</summary>
/// <param name="DiameterM">Diameter, m.</param>
/// <param name="LengthM">Length, m.</param>
/// <param name="MassKg">Mass of the whole motor, kg.</param>
/// <param name="CanC">Temperature of the can that the prediction is for, °C.</param>
public sealed record MotorCan(double DiameterM, double LengthM, double MassKg, double CanC);

/// <summary>One cooling mount as it is measured with a ruler.</summary>
public sealed record Mount
{
    /// <summary>Its name.</summary>
    public required string Name { get; init; }
    /// <summary>Its fans; none where only the car's wind or a duct cools.</summary>
    public IReadOnlyList<MountFan> Fans { get; init; } = [];
    /// <summary>Whether several fans stand one behind the other instead of side by side along the can.</summary>
    public bool InRow { get; init; }
    /// <summary>From the can's surface to where the air leaves fan or duct, m.</summary>
    public double GapM { get; init; }
    /// <summary>Angle between the stream and the straight way to the can's axis, degrees.</summary>
    public double AngleDeg { get; init; }
    /// <summary>From the middle of the can's length to the middle of the stream, m.</summary>
    public double AsideM { get; init; }
    /// <summary>From the can's surface to the shell over the fan, m; null where nothing stands before the inlet.</summary>
    public double? ShellFromCanM { get; init; }
    /// <summary>Share of the inlet's rim that air can come in at between fan and shell, 0 to 1.</summary>
    public double RimOpen { get; init; } = 1;
    /// <summary>A hole in the shell right over the inlet, m².</summary>
    public double ShellHoleM2 { get; init; }
    /// <summary>Free share of a grille before or behind the blades, 0 to 1; 1 for none.</summary>
    public double GrilleOpen { get; init; } = 1;
    /// <summary>Whether the fan takes its air from within the shell.</summary>
    public bool AirFromShell { get; init; }
    /// <summary>Openings that let the air out of the shell, m²; null where there is no shell or they were not measured.</summary>
    public double? VentsM2 { get; init; }
    /// <summary>A shroud that leads the air round the can; null for none.</summary>
    public MountShroud? Shroud { get; init; }
    /// <summary>A duct that brings the air; null for none.</summary>
    public MountDuct? Duct { get; init; }
    /// <summary>Surface of fins on the can, both sides of each, m².</summary>
    public double FinsM2 { get; init; }
    /// <summary>Share of the can's side that a clamp covers, 0 to 1.</summary>
    public double ClampCovers { get; init; }

    /// <summary>From the can's surface to the far edge of the fans, m.</summary>
    public double FanEdgeM => GapM + (Fans.Count == 0 ? 0 : InRow ? Fans.Sum(f => f.ThicknessM) : Fans.Max(f => f.ThicknessM));

    /// <summary>From the fans' inlet to the shell, m; null where nothing stands before it.</summary>
    public double? ShellGapM => ShellFromCanM - FanEdgeM;
}

/// <summary>A fan as it is printed on its box.</summary>
/// <param name="SizeM">Side of its frame, m.</param>
/// <param name="HubM">Diameter of its hub, m.</param>
/// <param name="ThicknessM">Thickness, m.</param>
/// <param name="FreeM3S">Free flow at the rated voltage, m³/s.</param>
/// <param name="StallPa">Stall pressure at the rated voltage, Pa; null where it isn't known.</param>
/// <param name="SpeedRatio">Supplied over rated voltage.</param>
public sealed record MountFan(double SizeM, double HubM, double ThicknessM, double FreeM3S, double? StallPa, double SpeedRatio)
{
    /// <summary>Diameter that the blades sweep, m: the frame takes a millimetre on either side.</summary>
    public double BladesM => SizeM - 0.002;

    /// <summary>Area between hub and rim, m².</summary>
    public double SweptM2 => Math.PI / 4 * (BladesM * BladesM - HubM * HubM);
}

/// <summary>A shroud about the can.</summary>
/// <param name="ClearanceM">Between can and shroud, m.</param>
/// <param name="Covers">Share of the can's length within it, 0 to 1.</param>
/// <param name="LeakM2">Gaps that let air out before it has passed the can, m².</param>
public sealed record MountShroud(double ClearanceM, double Covers, double LeakM2);

/// <summary>A duct.</summary>
/// <param name="MouthM2">Area of its mouth, m².</param>
/// <param name="OutletM2">Area of its outlet, m².</param>
/// <param name="LengthM">Length, m.</param>
/// <param name="Bends">Bends of a quarter turn.</param>
/// <param name="FacesForward">Whether its mouth faces the wind of the car.</param>
public sealed record MountDuct(double MouthM2, double OutletM2, double LengthM, int Bends, bool FacesForward);
