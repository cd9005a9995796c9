namespace Coolproof.Words;

/// <summary>A source of doubt as it is said, and what makes it smaller.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Remedy">What makes it smaller.</param>
internal sealed record DoubtWords(string Name, string Remedy)
{
    /// <summary>The words for a source as the evidence names it; an unknown one is said as it stands.</summary>
    public static DoubtWords Of(string source) => source switch
    {
        "delay" => new("how long after the stop each reading was taken", "note the seconds from halt to each shot"),
        "reading scatter and aim" => new("scatter and aim of the single shots", "three shots a stop, close up, on matt tape"),
        "gun" => new("the gun itself", "check it against ice and boiling water"),
        "air" => new("the temperature of the air", "a thermometer in the shade, noted each run"),
        "warmth brought along" => new("warmth brought along from before", "rest longer; note clock times and start_c"),
        "load run to run" => new("how hard each run was driven", "more runs; note the charge put back"),
        "mounting and day" => new("how an option sits after a refit, and the day", "refit each option at least once"),
        "motor constants and priors" => new("what isn't known of the motor", "one stop with shots for two minutes"),
        _ => new(source, ""),
    };
}
