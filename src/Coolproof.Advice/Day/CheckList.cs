namespace Coolproof.Advice.Day;

/// <summary>What to bring, to measure, to note, to leave alone, and what to beware of on a test day (common practice, no source, where no standard is named).</summary>
public static class CheckList
{
    /// <summary>The spot that all readings are taken on where the person names none.</summary>
    public const string DefaultSpot = "the can's band between mount and endbell, where every option leaves it free";

    /// <summary>To bring.</summary>
    public static IReadOnlyList<string> Bring { get; } =
    [
        "the gun with a fresh battery, matt tape, a thermometer for the air, a shade for it",
        "all options with their screws, charged packs, chargers, a pit fan",
        "tools to swap, a spare pinion, paper and pencil in case the phone dies",
    ];

    /// <summary>To measure.</summary>
    public static IReadOnlyList<string> Measure { get; } =
    [
        "the air in the shade near the track before every run, by thermometer and not by gun",
        "three readings after each halt on the same spot, the first within 20 seconds, the seconds stamped by the clock",
        "the can before each go",
        "the charge that goes back into each pack",
    ];

    /// <summary>To note.</summary>
    public static IReadOnlyList<string> Note { get; } =
    [
        "clock time of each go, crashes and waits, whether the fan ran on after the stop, when the power went off",
        "every refit: take the option off and fit it again between its runs, as it will be fitted in a race",
        "void runs and warm-up laps too: they warm the motor",
    ];

    /// <summary>To leave alone.</summary>
    public static IReadOnlyList<string> LeaveAlone { get; } =
    [
        "pinion, timing, tyres, controller profile, shell vents, driver: the same all day",
        "the order of the plan: a run out of turn brings back what it cancels",
        "blowing down only the can: the core stays warm behind it",
    ];

    /// <summary>To beware of. Bare metal at 65 °C burns within a second: ISO 13732-1 (value from memory).</summary>
    public static IReadOnlyList<string> Cautions { get; } =
    [
        "power off first; hot can: bare metal burns skin in a second from about 65 °C; fingers off the gears",
        "never aim the gun's laser at eyes or the drivers' stand; never step onto a live track",
        "no flammable duster or freeze spray on a hot motor; no full throttle with wheels in the air",
        "packs cool before they are charged, attended and fire-safe; tape clear of fan and rotor",
        "class rules, the venue's rules, makers' limits and local codes come first",
    ];
}
