using System.Globalization;
using Coolproof.Sampling.Classical;

namespace Coolproof.Sampling.Tests.Classical;

/// <summary>Against the certified values of the NIST Statistical Reference Datasets (public domain).</summary>
public class NistAnovaTests(ITestOutputHelper output)
{
    // Second figure: digits of F that readings rounded to doubles can keep. The readings of SmLs07 to 09 (a trillion and some tenths) and of
    // AtmWtAg (seven constant digits) are rounded at 1e-4 and 1e-14.
    public static TheoryData<string, double> Sets => new()
    {
        { "SiRstvt", 9 }, { "SmLs01t", 9 }, { "SmLs02t", 9 }, { "SmLs03t", 9 }, { "AtmWtAgt", 8 }, { "SmLs04t", 8 }, { "SmLs05t", 8 },
        { "SmLs06t", 8 }, { "SmLs07t", 2 }, { "SmLs08t", 2 }, { "SmLs09t", 2 },
    };

    [Theory]
    [MemberData(nameof(Sets))]
    public void Every_set_is_right_to_the_last_digits_when_its_decimals_are_shifted_and_to_the_rounding_of_doubles_when_not(
        string name, double floor)
    {
        var file = NistFile.Read("anova", name);
        var groups = Groups(file);
        var shifted = OneWayAnova.Of(groups);
        var plain = OneWayAnova.Of([.. groups.Select(IReadOnlyList<double> (g) => [.. g.Select(v => (double)v)])]);
        var within = file.After("Within");
        var between = file.After("Between");
        var certifiedF = between[^1];
        Assert.Equal(between[0], shifted.Lines[0].DegreesOfFreedom);
        Assert.Equal(within[0], shifted.ResidualDegreesOfFreedom);
        var digits = new[]
        {
            Digits.Right(shifted.Lines[0].F, certifiedF), Digits.Right(shifted.Lines[0].SumOfSquares, between[1]),
            Digits.Right(shifted.ResidualSumOfSquares, within[1]), Digits.Right(shifted.RSquared, file.After("R-Squared")[0]),
            Digits.Right(shifted.ResidualSd, file.Lines.SkipWhile(l => !l.Contains("Certified Residual")).Skip(1)
                .Select(l => NistFile.Number(l.Trim().Split(' ')[^1])).First()),
        };
        var plainDigits = Digits.Right(plain.Lines[0].F, certifiedF);
        output.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{name,-9} F {digits[0]:F1}  least of all five {digits.Min():F1}  F of plain doubles {plainDigits:F1}"));
        Assert.True(digits.Min() >= 9);
        Assert.True(plainDigits >= floor);
    }

    static decimal[][] Groups(NistFile file)
    {
        // Every file is a table with one column a treatment.
        var rows = file.DataText.Select(row => Array.ConvertAll(row, Exact)).ToArray();
        return [.. Enumerable.Range(0, rows[0].Length).Select(g => rows.Select(row => row[g]).ToArray())];
    }

    static decimal Exact(string text) => decimal.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);
}
