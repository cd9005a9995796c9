using Coolproof.Evidence;

namespace Coolproof.Words;

/// <summary>What must be said where a hot motor is handled.</summary>
internal static class Cautions
{
    /// <summary>
    /// Bare metal burns skin within a second from about here, °C (burn threshold for uncoated metal, ISO 13732-1; value from memory).
    /// </summary>
    public const double BurnsC = 65;

    /// <summary>The cautions for a verdict, for the stop and for what the forecast is not.</summary>
    public static string Of(Verdict verdict, DegreeWords degrees)
    {
        var burns = verdict.Options.Any(option => option.PeakCanC.Q95 >= BurnsC);
        var can = burns ? $"the can is hot enough to burn at a touch (from about {degrees.Say(BurnsC)})" : "mind the hot can";
        return $"power off first; {can}; fingers off the gears. Class rules, makers' limits and local codes come first.";
    }
}
