using Coolproof.Sampling;

namespace Coolproof.Advice.Tests.Mounts;

/// <summary>Correlations that the program doesn't use, for truths. Constants from memory, shown right by numbers of an open library (OtherCorrelationsTests).</summary>
static class OtherCorrelations
{
    /// <summary>Cylinders in cross flow on the diameter, by name: Reynolds and Prandtl numbers to Nusselt number.</summary>
    public static readonly (string Name, Func<double, double, double> Nusselt)[] CrossFlow =
    [
        ("Hilpert", (re, pr) => (re < 40 ? 0.911 * Math.Pow(re, 0.385) : re < 4000 ? 0.683 * Math.Pow(re, 0.466) : re < 40_000 ? 0.193 * Math.Pow(re, 0.618) : 0.027 * Math.Pow(re, 0.805)) * Math.Cbrt(pr)),
        ("Zukauskas", (re, pr) => (re < 1000 ? 0.51 * Math.Sqrt(re) : 0.26 * Math.Pow(re, 0.6)) * Math.Pow(pr, 0.37)),
        ("Fand", (re, pr) => (0.35 + 0.34 * Math.Sqrt(re) + 0.15 * Math.Pow(re, 0.58)) * Math.Pow(pr, 0.3)),
        ("McAdams", (re, pr) => (0.35 + 0.56 * Math.Pow(re, 0.52)) * Math.Pow(pr, 0.3)),
        ("Perkins-Leppert 1962", (re, pr) => (0.30 * Math.Sqrt(re) + 0.10 * Math.Pow(re, 0.67)) * Math.Pow(pr, 0.4)),
        ("Perkins-Leppert 1964", (re, pr) => (0.31 * Math.Sqrt(re) + 0.11 * Math.Pow(re, 0.67)) * Math.Pow(pr, 0.4)),
    ];

    /// <summary>Lying cylinder in its own draught (Morgan 1975) on the diameter, Ra 100 to 1e7.</summary>
    public static double Morgan(double rayleigh) => rayleigh < 1e4 ? 0.85 * Math.Pow(rayleigh, 0.188) : 0.48 * Math.Pow(rayleigh, 0.25);

    /// <summary>
    /// Round jet on a wall, mean out to a radius (Goldstein, Behbahani and Heppelmann 1986, from memory; published for Re of 61 000 to 124 000, used far below it here, which makes
    /// it all the more another law): Nu = Re^0.76 (24 − |H/D − 7.75|)/(533 + 44 (r/D)^1.285), on the nozzle's diameter.
    /// </summary>
    public static double GoldsteinJet(double reynolds, double distance, double radius) => Math.Pow(reynolds, 0.76) * (24 - Math.Abs(distance - 7.75)) / (533 + 44 * Math.Pow(radius, 1.285));

    /// <summary>One of <see cref="CrossFlow"/>.</summary>
    public static Func<double, double, double> Any(RandomStream chance) => CrossFlow[chance.NextIndex(CrossFlow.Length)].Nusselt;
}

public class OtherCorrelationsTests
{
    // Source: convection/nusselt-cases.csv of the shared references: outputs of an open library for Re 6071 and Pr 0.7 (Hilpert: arithmetic from the same handbook constants).
    [Theory]
    [InlineData("Hilpert", 37.32313762856677)]
    [InlineData("Zukauskas", 42.4244052368103)]
    [InlineData("Fand", 45.19984325481126)]
    [InlineData("McAdams", 46.98179235867934)]
    [InlineData("Perkins-Leppert 1962", 49.97164291175499)]
    [InlineData("Perkins-Leppert 1964", 53.61767038619986)]
    public void They_give_the_published_number(string name, double expected) =>
        Assert.Equal(expected, OtherCorrelations.CrossFlow.Single(c => c.Name == name).Nusselt(6071, 0.7), 9);

    // Source: the same, Pr 0.9 with Gr 1e2, 1e4 and 1e7. (At 1e2 the Rayleigh number of 90 lies below the stretch that is kept here.)
    [Fact]
    public void Morgan_gives_the_published_numbers()
    {
        Assert.Equal(4.707783879945983, OtherCorrelations.Morgan(9e3), 9);
        Assert.Equal(26.290682760247975, OtherCorrelations.Morgan(9e6), 9);
    }
}
