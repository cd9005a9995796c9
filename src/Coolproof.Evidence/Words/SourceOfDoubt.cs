namespace Coolproof.Evidence.Words;

/// <summary>A source of doubt in its words, wherever it is said: JSON, page, pictures, advice.</summary>
/// <param name="Name">As <see cref="DoubtShare.Source"/> and the JSON name it.</param>
/// <param name="Plain">As a racer would say it, fit to follow "the largest doubt is" and "comes from".</param>
/// <param name="Remedy">What makes it smaller, as a request without capital and full stop.</param>
/// <param name="SharedByRuns">Whether all runs share it, so that more of them make it no smaller.</param>
public sealed record SourceOfDoubt(string Name, string Plain, string Remedy, bool SharedByRuns = false)
{
    /// <summary>All sources, in the order in which the evidence reckons with them.</summary>
    public static IReadOnlyList<SourceOfDoubt> All { get; } =
    [
        new("delay", "the time between stop and reading", "note the seconds from halt to each reading"),
        new("reading scatter and aim", "scatter and aim of single readings", "take three readings at each stop, close up and square on the spot"),
        new("gun", "the gun itself", "tape one spot that every option leaves free, and check the gun against ice and boiling water", SharedByRuns: true),
        new("air", "the temperature of the air", "hang a thermometer in the shade by the track and note it at each run"),
        new("warmth brought along", "warmth brought along into a run", "note clock times and the can before each run, or wait longer between runs"),
        new("load run to run", "how hard each run was driven", "drive more runs, and note the charge put back after each"),
        new("mounting and day", "how it was mounted, and the day", "take each option off and refit it between its runs, on one day if you can"),
        new("motor constants and priors", "what is assumed of the motor", "vary the time of reading, one at once and one at 30 s", SharedByRuns: true),
    ];

    /// <summary>A source by its name.</summary>
    /// <exception cref="ArgumentOutOfRangeException">No such source.</exception>
    public static SourceOfDoubt Of(string name) =>
        All.FirstOrDefault(source => source.Name == name) ?? throw new ArgumentOutOfRangeException(nameof(name), name, "No such source of doubt.");
}
