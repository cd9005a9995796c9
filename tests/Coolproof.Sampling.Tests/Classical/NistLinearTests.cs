using System.Globalization;
using Coolproof.Sampling.Classical;

namespace Coolproof.Sampling.Tests.Classical;

/// <summary>Against the certified values of the NIST Statistical Reference Datasets (public domain).</summary>
public class NistLinearTests(ITestOutputHelper output)
{
    // Degree of the polynomial in the one predictor; 0 stands for the predictors as they are after an intercept, −1 without one.
    public static TheoryData<string, int> Sets => new()
    {
        { "Norris", 1 }, { "Pontius", 2 }, { "NoInt1", -1 }, { "NoInt2", -1 }, { "Filip", 10 }, { "Longley", 0 },
        { "Wampler1", 5 }, { "Wampler2", 5 }, { "Wampler3", 5 }, { "Wampler4", 5 }, { "Wampler5", 5 },
    };

    [Theory]
    [MemberData(nameof(Sets))]
    public void Every_linear_set_is_solved_to_the_digits_of_its_data(string name, int degree)
    {
        var file = NistFile.Read("linear", name);
        var fit = Fit(file, degree);
        var rows = file.ParameterRows;
        var coefficients = Digits.Least(fit.Coefficients, rows.Select(r => r[0]));
        var sds = Digits.Least(fit.StandardDeviations, rows.Select(r => r[1]));
        var residual = Digits.Right(fit.ResidualSd, file.After("Standard Deviation")[0]);
        var rSquared = Digits.Right(fit.RSquared, file.After("R-Squared")[0]);
        output.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{name,-9} {file.Level,-8} coefficients {coefficients,5:F1}  sds {sds,5:F1}  residual sd {residual,5:F1}  R2 {rSquared,5:F1}"));
        Assert.Empty(Enumerable.Range(0, rows.Length).Except(fit.Kept));
        Assert.True(coefficients >= 9 && sds >= 9 && residual >= 9 && rSquared >= 9);
    }

    [Fact]
    public void The_hardest_set_keeps_seven_digits_even_when_its_powers_come_rounded_to_doubles()
    {
        var file = NistFile.Read("linear", "Filip");
        var data = file.Data;
        var design = new double[data.Length, 11];
        for (var i = 0; i < data.Length; i++)
        {
            for (var k = 0; k < 11; k++) design[i, k] = Math.Pow(data[i][1], k);
        }
        var fit = LinearLeastSquares.Fit(design, [.. data.Select(row => row[0])]);
        var digits = Digits.Least(fit.Coefficients, file.ParameterRows.Select(r => r[0]));
        output.WriteLine($"Filip, rounded powers: {digits:F1}");
        Assert.True(digits >= 7);
    }

    static LinearFit Fit(NistFile file, int degree)
    {
        var data = file.Data;
        double[] y = [.. data.Select(row => row[0])];
        if (degree > 0) return LinearLeastSquares.FitPolynomial([.. data.Select(row => row[1])], y, degree);
        var first = degree == 0 ? 1 : 0;
        var design = new double[data.Length, data[0].Length - 1 + first];
        for (var i = 0; i < data.Length; i++)
        {
            if (first == 1) design[i, 0] = 1;
            for (var j = 1; j < data[i].Length; j++) design[i, j - 1 + first] = data[i][j];
        }
        return LinearLeastSquares.Fit(design, y);
    }
}
