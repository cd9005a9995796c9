namespace Coolproof.Pages.Mounts;

/// <summary>Where in a file of mounts a field stands.</summary>
public enum MountPart
{
    /// <summary>The file itself: air and car.</summary>
    Car,
    /// <summary>The can.</summary>
    Can,
    /// <summary>The mount.</summary>
    Mount,
    /// <summary>The shell over the fan.</summary>
    Shell,
    /// <summary>The fan.</summary>
    Fan,
    /// <summary>The shroud.</summary>
    Shroud,
    /// <summary>The duct.</summary>
    Duct,
}

/// <summary>A number of the mount's form.</summary>
/// <param name="Name">Name in the address.</param>
/// <param name="Part">Where it belongs.</param>
/// <param name="InFile">Its name in a file of mounts.</param>
/// <param name="Label">What it is.</param>
/// <param name="Unit">Its unit.</param>
/// <param name="Least">Left end of its slider.</param>
/// <param name="Most">Right end.</param>
/// <param name="Step">From one value to the next.</param>
/// <param name="Usual">Where it starts.</param>
/// <param name="MayBeBlank">Whether it may be left out; it is typed then, without a slider.</param>
public sealed record MountField(string Name, MountPart Part, string InFile, string Label, string Unit, double Least, double Most, double Step, double Usual, bool MayBeBlank = false)
{
    /// <summary>All of them, starting at the demo's fan through the shell (docs/mount.md; made up).</summary>
    public static IReadOnlyList<MountField> All { get; } =
    [
        new("size", MountPart.Fan, "sizeMm", "Size of the fan", "mm", 15, 60, 1, 30),
        new("flow", MountPart.Fan, "freeFlowM3H", "Free flow", "m³/h", 1, 40, 0.5, 8),
        new("gap", MountPart.Mount, "gapMm", "From can to fan or duct", "mm", 1, 60, 0.5, 10),
        new("angle", MountPart.Mount, "angleDeg", "Angle off straight at the can", "°", 0, 60, 1, 0),
        new("shell", MountPart.Shell, "shellFromCanMm", "From can to shell", "mm", 5, 100, 1, 24),
        new("stall", MountPart.Fan, "stallPa", "Stall pressure", "Pa", 0.5, 5000, 0.5, 45, true),
        new("hub", MountPart.Fan, "hubMm", "Hub", "mm", 1, 80, 0.5, 15, true),
        new("thick", MountPart.Fan, "thicknessMm", "Thickness", "mm", 4, 40, 1, 10),
        new("rated", MountPart.Fan, "ratedV", "Rated for", "V", 1, 60, 0.1, 6, true),
        new("supplied", MountPart.Fan, "suppliedV", "Runs on", "V", 0.5, 60, 0.1, 6, true),
        new("aside", MountPart.Mount, "asideMm", "Beside the middle of the can", "mm", -50, 50, 1, 0),
        new("hole", MountPart.Shell, "shellHoleCm2", "Hole in the shell over the fan", "cm²", 0, 20, 0.5, 6),
        new("rim", MountPart.Shell, "rimOpenPercent", "Of the fan’s rim is open", "%", 5, 100, 5, 100),
        new("grille", MountPart.Mount, "grilleOpenPercent", "Of the grille is free", "%", 10, 100, 5, 65),
        new("vents", MountPart.Mount, "shellVentsCm2", "Vents of the shell", "cm²", 0.1, 500, 0.1, 25, true),
        new("clearance", MountPart.Shroud, "clearanceMm", "Between can and shroud", "mm", 0.5, 15, 0.5, 3),
        new("covers", MountPart.Shroud, "coversPercent", "Of the can’s length is in it", "%", 5, 100, 5, 80),
        new("leak", MountPart.Shroud, "leakCm2", "Leaks of the shroud", "cm²", 0, 10, 0.1, 0.8),
        new("mouth", MountPart.Duct, "mouthCm2", "Mouth of the duct", "cm²", 0.5, 40, 0.5, 8),
        new("outlet", MountPart.Duct, "outletCm2", "Outlet of the duct", "cm²", 0.5, 40, 0.5, 5),
        new("long", MountPart.Duct, "lengthMm", "Length of the duct", "mm", 0, 500, 10, 120),
        new("bends", MountPart.Duct, "bends", "Quarter turns", "", 0, 6, 1, 1),
        new("fins", MountPart.Mount, "finsCm2", "Fins, both sides", "cm²", 0, 200, 5, 0),
        new("clamp", MountPart.Mount, "clampCoversPercent", "Of the can is under a clamp", "%", 0, 95, 5, 0),
        new("diameter", MountPart.Can, "diameterMm", "Diameter of the can", "mm", 15, 80, 0.5, 36),
        new("length", MountPart.Can, "lengthMm", "Length of the can", "mm", 15, 100, 0.5, 52),
        new("mass", MountPart.Car, "motorMassG", "Mass of the motor", "g", 20, 500, 5, 165),
        new("speed", MountPart.Car, "carSpeedKmh", "Mean speed of the car", "km/h", 0, 80, 1, 22),
        new("air", MountPart.Car, "airC", "Air", "°C", 0, 45, 1, 28),
        new("can", MountPart.Car, "canC", "The can at", "°C", 40, 110, 1, 70),
        new("humidity", MountPart.Car, "humidityPercent", "Humidity", "%", 0, 100, 5, 60),
        new("altitude", MountPart.Car, "altitudeM", "Altitude", "m", 0, 3000, 50, 0),
    ];

    /// <summary>Whether it is a temperature, shown and typed in the person's degrees.</summary>
    public bool IsTemperature => Unit == "°C";

    /// <summary>Where a file of one mount has it.</summary>
    public string Path => Part switch
    {
        MountPart.Car => InFile,
        MountPart.Can => $"can.{InFile}",
        MountPart.Fan => $"mounts[0].fans[0].{InFile}",
        MountPart.Shroud => $"mounts[0].shroud.{InFile}",
        MountPart.Duct => $"mounts[0].duct.{InFile}",
        _ => $"mounts[0].{InFile}",
    };
}
