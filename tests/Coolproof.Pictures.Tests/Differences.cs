using Coolproof.Evidence.Causes;

namespace Coolproof.Pictures.Tests;

/// <summary>Differences between runs with made-up numbers, nothing measured.</summary>
internal static class Differences
{
    public static RunDifference Of()
    {
        (Cause Cause, double Mean, double Sd)[] parts =
        [
            (Cause.Air, 3.1, 0.4), (Cause.Warmth, 1.2, 0.6), (Cause.Length, 0.3, 0.05), (Cause.Driver, -1.4, 1.3), (Cause.Day, 0.4, 1.8), (Cause.Option, -7.2, 2.1), (Cause.Mounting, 0.2, 1.1),
            (Cause.Reading, 1.9, 0.9), (Cause.Load, 2.2, 1.7),
        ];
        return new(68.4, 67.5, [.. parts.Append((Cause.Rest, 0.9 - parts.Sum(p => p.Mean), 0.8)).Select(p => new CausePart(p.Item1, Samples.Normal(p.Item2, p.Item3)))]);
    }
}
