namespace Coolproof.Rehearsal.Tests;

/// <summary>Days that several tests look at; drawn once.</summary>
static class SomeDays
{
    internal static readonly SimulatedDay[] All = [.. Enumerable.Range(1, 300).Select(seed => DayGenerator.Day(seed))];

    internal static readonly RehearsalOption[] ThreeOptions = [new("bare can", HasFan: false), new("clamp"), new("duct")];

    internal static double Sd(IEnumerable<double> values)
    {
        double[] v = [.. values];
        double mean = v.Average();
        return Math.Sqrt(v.Sum(x => (x - mean) * (x - mean)) / (v.Length - 1));
    }
}
