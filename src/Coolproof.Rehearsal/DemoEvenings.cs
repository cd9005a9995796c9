using Coolproof.Notebook;
using NodaTime;

namespace Coolproof.Rehearsal;

/// <summary>
/// The demo's invented scenario: a 1:10 four-wheel-drive buggy with a 13.5-turn sensored motor on artificial turf, six cooling options, two
/// drivers, one gun, four evenings. Nothing of it was measured.
/// </summary>
public static class DemoEvenings
{
    const long Seed = 385;

    /// <summary>All four evenings.</summary>
    public static SimulatedDay AllFour() => Rehearse.Day(Scenario(Seed) with
    {
        Evenings = 4,
        AirFromC = [30, 28, 31, 27.5],
        Drivers = ["driver one", "driver two"],
    });

    /// <summary>
    /// The first of them for a first look: twelve runs, air that cools towards dusk, a few delays nobody noted. Same seed, same motor, options
    /// and gun, hence the same evening.
    /// </summary>
    public static SimulatedDay OneEvening() => Rehearse.Day(Scenario(Seed) with { AirFromC = [30], Drivers = ["driver one"] });

    // Watts shed per degree are invented so that peaks are what such a car shows (common practice): 55 to 85 °C.
    static RehearsalSettings Scenario(long seed) => new(seed,
    [
        new("bare can", 0.78, HasFan: false),
        new("clip-on finned clamp", 0.87, HasFan: false),
        new("clamp with a 25 mm fan", 1.06),
        new("nose-scoop duct", 0.93, HasFan: false),
        new("twin 30 mm fans in a printed duct", 1.36),
        new("rear blower", 1.20),
    ], RunsPerOption: 2)
    {
        MotorMassKg = 0.165,
        HeatW = 40,
        LoadSd = 0.04,
        ReadingsPerRun = 3,
        LastReadingMissed = 0.35,
        DelaysNoted = 0.8,
        CoolDownMin = 11,
        AirDriftK = -4,
        FirstGo = new LocalDateTime(2026, 6, 9, 16, 5),
        Notes = new LoadNotes(
            Surface: "artificial turf", Venue: "made-up coastal club", Vehicle: "1:10 four-wheel-drive buggy", Motor: "13.5-turn sensored",
            PinionTeeth: 24, SpurTeeth: 84),
        OneDriverAnEvening = true,
        Packs = ["pack 1", "pack 2", "pack 3"],
        ChargeNoted = true,
    };
}
