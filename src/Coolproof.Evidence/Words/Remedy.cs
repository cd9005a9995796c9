namespace Coolproof.Evidence.Words;

/// <summary>What makes a source of doubt smaller.</summary>
internal static class Remedy
{
    /// <summary>One sentence of advice.</summary>
    /// <param name="source">A source as <see cref="DoubtShare.Source"/> names it.</param>
    /// <exception cref="ArgumentOutOfRangeException">No such source.</exception>
    public static string Of(string source) => source switch
    {
        "delay" => "Note the seconds from halt to each reading: when the readings were taken is the largest doubt.",
        "reading scatter and aim" => "Take three readings at each stop, close up and square on the spot: how single readings scatter is the largest doubt.",
        "gun" => "Tape one spot that every option leaves free, and check the gun against ice and boiling water: the gun is the largest doubt.",
        "air" => "Hang a thermometer in the shade by the track and note it at each run: the air is the largest doubt.",
        "warmth brought along" => "Note clock times and the can before each run, or wait longer between runs: warmth brought along is the largest doubt.",
        "load run to run" => "Drive more runs, and note the charge put back after each: how hard each run was driven is the largest doubt.",
        "mounting and day" => "Take each option off and refit it between its runs, on one day if you can: how it sits and what day it is are the largest doubt.",
        "motor constants and priors" => "Vary the time of reading, one at once and one at 30 s: how the motor itself warms and cools is the largest doubt.",
        _ => throw new ArgumentOutOfRangeException(nameof(source), source, "No such source of doubt."),
    };
}
