namespace Coolproof.Pages.Gears;

/// <summary>A number that the page of gearing takes; blank: by the notebook, else what is typical.</summary>
/// <param name="Name">Name in the address.</param>
/// <param name="Group">Group of the form: car, choice or mesh.</param>
/// <param name="Label">What it is.</param>
/// <param name="Unit">Its unit; empty: none.</param>
/// <param name="Least">Least that can be right.</param>
/// <param name="Most">Most.</param>
/// <param name="Whole">Whether it is a whole number.</param>
public sealed record GearField(string Name, string Group, string Label, string Unit, double Least, double Most, bool Whole = false)
{
    /// <summary>All of them; limits as for `coolproof gear`.</summary>
    public static IReadOnlyList<GearField> All { get; } =
    [
        new("lap", "car", "Mean lap time of the tests", "s", 4, 300),
        new("pinion", "car", "Pinion in the tests", "teeth", 6, 80, true),
        new("spur", "car", "Spur", "teeth", 20, 200, true),
        new("timing", "car", "Timing in the tests", "°", 0, 60),
        new("tyre", "car", "Driven tyres across", "mm", 30, 200),
        new("mass", "car", "The car as raced", "g", 300, 8000),
        new("internal", "car", "Turns of the spur for one of the wheels", "", 0.5, 10),
        new("turns", "car", "Turns of the motor", "", 3, 40),
        new("kv", "car", "Speed for a volt", "rpm", 300, 15000),
        new("mohm", "car", "Winding, two phases in series, cold", "mΩ", 1, 500),
        new("noload", "car", "Current without load at 7.4 V and 30°", "A", 0.3, 20),
        new("cells", "car", "Cells in series", "", 1, 6, true),
        new("capacity", "car", "Charge of the pack", "mAh", 200, 20000),
        new("most-a", "car", "The controller’s current limit", "A", 5, 500),
        new("from", "choice", "Smallest pinion at hand", "teeth", 6, 80, true),
        new("to", "choice", "Largest pinion at hand", "teeth", 6, 80, true),
        new("near", "mesh", "Shafts apart, at least", "mm", 5, 120),
        new("far", "mesh", "Shafts apart, at most", "mm", 5, 120),
        new("module", "mesh", "Module of the teeth", "mm", 0.2, 2),
    ];
}

/// <summary>A field of the form as it stands.</summary>
/// <param name="Field">Which.</param>
/// <param name="Value">What was typed or is known; null: neither.</param>
/// <param name="By">Where it is from when it was not typed; empty: typed, or not known.</param>
/// <param name="Assumed">What is taken for it where it isn't known; null: nothing, or not reckoned yet.</param>
public sealed record GearEntry(GearField Field, double? Value, string By, double? Assumed);
