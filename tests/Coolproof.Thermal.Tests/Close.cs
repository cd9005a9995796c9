namespace Coolproof.Thermal.Tests;

/// <summary>Comparisons that print both numbers and the tolerance.</summary>
static class Close
{
    public static void Within(double expected, double actual, double tolerance, string what = "") =>
        Assert.True(Math.Abs(expected - actual) <= tolerance, $"{what}: expected {expected:R}, got {actual:R}, off by {actual - expected:E2} of {tolerance:E1}");

    public static void Relative(double expected, double actual, double tolerance, string what = "") =>
        Within(expected, actual, tolerance * Math.Abs(expected), what);

    public static void Within(ReadOnlySpan<double> expected, ReadOnlySpan<double> actual, double tolerance, string what = "")
    {
        Assert.Equal(expected.Length, actual.Length);
        for (int i = 0; i < expected.Length; i++) Within(expected[i], actual[i], tolerance, $"{what}[{i}]");
    }
}
