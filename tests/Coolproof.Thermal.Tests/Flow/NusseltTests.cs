using System.Text.RegularExpressions;

namespace Coolproof.Thermal.Tests;

public partial class NusseltTests
{
    // Source: nusselt-cases.csv: outputs of an open library whose docstrings state agreement with textbook examples 7.3 and 9.2.
    [Theory]
    [InlineData("Churchill-Bernstein", 7)]
    [InlineData("Churchill-Chu horizontal", 7)]
    [InlineData("Churchill-Chu vertical", 1)]
    [InlineData("Hilpert,", 2)]
    [InlineData("Martin", 4)]
    public void A_correlation_gives_the_published_number_to_a_billionth(string family, int atLeast)
    {
        string[][] rows = [.. Table.Rows("nusselt-cases.csv").Where(r => (r[0] + ",").StartsWith(family, StringComparison.Ordinal) && r[2] == "Nu")];
        Assert.True(rows.Length >= atLeast, $"{rows.Length} rows");
        foreach (string[] row in rows)
        {
            Dictionary<string, double> given = Inputs().Matches(row[1]).ToDictionary(m => m.Groups[1].Value, m => Table.Number(m.Groups[2].Value));
            double pr = given["Pr"], re = given.GetValueOrDefault("Re"), ra = given.GetValueOrDefault("Ra", given.GetValueOrDefault("Gr") * pr);
            double actual = family switch
            {
                "Churchill-Bernstein" => Nusselt.CylinderInCrossFlow(re, pr),
                "Churchill-Chu horizontal" => Nusselt.LyingCylinder(ra, pr),
                "Churchill-Chu vertical" => Nusselt.UprightPlate(ra, pr),
                "Hilpert," => Nusselt.CylinderByHilpert(re, pr),
                _ => Nusselt.ImpingingJet(re, pr, given["H/D"], given["r/D"]),
            };
            Close.Relative(Table.Number(row[3]), actual, 1e-9, row[1]);
        }
    }

    [Fact]
    public void Correlations_of_the_same_thing_scatter_by_no_more_than_a_quarter()
    {
        foreach (double re in new double[] { 100, 1000, 6071, 20_000, 100_000 })
            Close.Relative(Nusselt.CylinderInCrossFlow(re, 0.707), Nusselt.CylinderByHilpert(re, 0.707), 0.25, $"Re {re}");
    }

    [Fact]
    public void Outside_its_range_a_correlation_says_so()
    {
        Assert.True(double.IsNaN(Nusselt.CylinderByHilpert(3, 0.7)));
        Assert.True(double.IsNaN(Nusselt.CylinderByHilpert(400_000, 0.7)));
        Assert.True(Nusselt.ImpingingJetHolds(5000, 4, 3));
        Assert.False(Nusselt.ImpingingJetHolds(5000, 1, 3));
        Assert.False(Nusselt.ImpingingJetHolds(1000, 4, 3));
        Assert.False(Nusselt.ImpingingJetHolds(5000, 4, 2));
    }

    [Fact]
    public void Still_air_and_a_stream_together_take_a_little_more_than_the_stronger_alone()
    {
        Assert.Equal(Math.Cbrt(2) * 10, Nusselt.Mixed(10, 10), 12);
        Assert.InRange(Nusselt.Mixed(40, 5), 40, 40.1);
    }

    // Source: h for natural convection on small bodies is commonly 5 to 10 W/m²K (common practice, no source).
    [Fact]
    public void A_hot_can_in_still_air_sheds_some_watts_per_square_metre_and_kelvin()
    {
        Air film = new(52.5);
        double ra = film.Rayleigh(55, 0.036);
        double h = Nusselt.LyingCylinder(ra, film.Prandtl) * film.Conductivity / 0.036;
        Assert.InRange(h, 5, 11);
    }

    [GeneratedRegex(@"(Re|Pr|Ra|Gr|H/D|r/D)=([-+0-9.e]+)")]
    private static partial Regex Inputs();
}
