namespace Coolproof.Pictures.Tests;

/// <summary>What money buys, with made-up numbers.</summary>
internal static class Stairs
{
    public static SpendStair[] Four() =>
    [
        new("nothing", 0, "0 €, 0 g counted", Samples.Normal(0, 1e-6), true), new("finned clamp", 14, "14 €, 3 g counted", Samples.Normal(3.2, 1.4), true),
        new("finned clamp, 25 mm fan, heat paste", 31, "31 €, 22 g counted", Samples.Normal(11, 2.5), false), new("pair of 30 mm fans, printed duct", 34, "34 €, 33 g counted", Samples.Normal(14, 2), true),
    ];

    public static (double, double)[] Others() => [(14, 3.2), (27, 9), (31, 11), (34, 14)];

    public static SpendStair Beyond() => new("rear blower, shell window", 52, "52 €, 40 g counted", Samples.Normal(17, 3), false);
}
