using Coolproof.Evidence;
using Coolproof.Thermal;

namespace Coolproof.Words;

/// <summary>What must be said where a hot motor is handled.</summary>
internal static class Cautions
{
    /// <summary>The cautions for a verdict, for the stop and for what the forecast is not.</summary>
    public static string Of(Verdict verdict, DegreeWords degrees)
    {
        var burns = verdict.Options.Any(option => option.PeakCanC.Q95 >= BurnThreshold.MetalOneSecondC);
        var can = burns ? $"the can is hot enough to burn at a touch (from about {degrees.Say(BurnThreshold.MetalOneSecondC)})" : "mind the hot can";
        return $"power off first; {can}; fingers off the gears. Class rules, makers' limits and local codes come first.";
    }
}
