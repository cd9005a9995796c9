using System.Globalization;
using Coolproof.Sampling.Classical;

namespace Coolproof.Sampling.Tests.Classical;

/// <summary>Against the certified values of the NIST Statistical Reference Datasets (public domain).</summary>
public class NistUnivariateTests(ITestOutputHelper output)
{
    [Theory]
    [InlineData("Lew")]
    [InlineData("Lottery")]
    [InlineData("Mavro")]
    [InlineData("Michelso")]
    [InlineData("NumAcc1")]
    [InlineData("NumAcc2")]
    [InlineData("NumAcc3")]
    [InlineData("NumAcc4")]
    public void Mean_standard_deviation_and_autocorrelation_of_every_set_are_right_to_eight_digits(string name)
    {
        var file = NistFile.Read("univariate", name);
        // The files differ in where their data begin; the last heading "Data:" and a rule of dashes stand above them.
        var heading = Array.FindLastIndex(file.Lines, l => l.StartsWith("Data:", StringComparison.Ordinal));
        var data = file.Lines.Skip(heading + 2).Where(l => l.Trim().Length > 0).Select(l => NistFile.Number(l.Trim())).ToArray();
        var moments = SampleMoments.Of(data);
        var digits = new[]
        {
            Digits.Right(moments.Mean, file.After("Sample Mean")[0]), Digits.Right(moments.Sd, file.After("(denom. = n-1)")[0]),
            Digits.Right(moments.Lag1Autocorrelation, file.After("r(1):")[0]),
        };
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{name,-9} mean {digits[0]:F1}  sd {digits[1]:F1}  lag-1 {digits[2]:F1}"));
        Assert.Equal(file.After("Number of Observations:")[0], moments.Count);
        Assert.True(digits.Min() >= 8);
    }
}
