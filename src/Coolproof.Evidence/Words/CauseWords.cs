using Coolproof.Evidence.Causes;

namespace Coolproof.Evidence.Words;

/// <summary>Causes of a difference in plain words.</summary>
public static class CauseWords
{
    /// <summary>As it stands in a list, like "warmth at the start".</summary>
    public static string Name(Cause cause) => cause switch
    {
        Cause.Air => "air",
        Cause.Warmth => "warmth at the start",
        Cause.Length => "length of the drive",
        Cause.Driver => "driver",
        Cause.Surface => "surface and car",
        Cause.Gearing => "gearing",
        Cause.Timing => "timing",
        Cause.Day => "day",
        Cause.Option => "cooling option",
        Cause.Mounting => "mounting",
        Cause.Reading => "delay and aim",
        Cause.Load => "load of the run",
        _ => "not explained",
    };
}
