using Coolproof.Sampling.Diagnostics;

namespace Coolproof.Sampling.Tests.Diagnostics;

public sealed class ParetoSmoothingTests
{
    [Theory]
    [InlineData("light", 0.0895262253617636)]
    [InlineData("medium", 0.554652157890075)]
    [InlineData("heavy", 0.885650927163527)]
    public void Shape_and_smoothed_weights_agree_with_the_R_package_loo(string name, double shape)
    {
        Table table = new("pareto-weights.csv");
        string[][] rows = [.. table.Where("case", name)];
        double[] smoothed = new double[rows.Length];
        Assert.Equal(shape, ParetoSmoothing.Smooth([.. rows.Select(row => table.Number(row, "log_weight"))], smoothed), 1e-11);
        for (int i = 0; i < rows.Length; i++)
            Assert.Equal(1, smoothed[i] / table.Number(rows[i], "smoothed"), 1e-10);
    }

    [Theory]
    [InlineData(0.2)]
    [InlineData(0.5)]
    [InlineData(0.8)]
    public void The_shape_of_Pareto_weights_is_found(double shape)
    {
        RandomStream random = new(11);
        double[] logWeights = new double[100_000];
        for (int i = 0; i < logWeights.Length; i++)
            logWeights[i] = -shape * Math.Log(1 - random.NextUniform());
        Assert.Equal(shape, ParetoSmoothing.Shape(logWeights), 0.1);
    }

    [Fact]
    public void Smoothed_weights_sum_to_one_and_keep_their_order()
    {
        RandomStream random = new(12);
        double[] logWeights = new double[500], smoothed = new double[500];
        random.FillNormal(logWeights);
        ParetoSmoothing.Smooth(logWeights, smoothed);
        Assert.Equal(1, smoothed.Sum(), 1e-12);
        double[] byWeight = [.. smoothed.Zip(logWeights).OrderBy(pair => pair.Second).Select(pair => pair.First)];
        for (int i = 1; i < 500; i++)
            Assert.True(byWeight[i] >= byWeight[i - 1]);
        Assert.InRange(ParetoSmoothing.SampleSize(smoothed), 100, 400);
    }

    [Fact]
    public void Odd_weights_have_their_answers()
    {
        double[] smoothed = new double[100];
        Assert.Equal(double.NegativeInfinity, ParetoSmoothing.Smooth(new double[100], smoothed));
        Assert.All(smoothed, w => Assert.Equal(0.01, w, 1e-15));
        double[] broken = new double[100];
        broken[3] = double.NaN;
        Assert.Equal(double.PositiveInfinity, ParetoSmoothing.Smooth(broken, smoothed));
        Assert.All(smoothed, w => Assert.True(double.IsNaN(w)));
        Assert.Equal(double.PositiveInfinity, ParetoSmoothing.Shape([0, 1, 2]));
        double[] impossible = [.. Enumerable.Repeat(double.NegativeInfinity, 100)];
        Assert.Equal(double.PositiveInfinity, ParetoSmoothing.Shape(impossible));
        Assert.Equal(0.7, ParetoSmoothing.Limit(10_000), 1e-12);
        Assert.Equal(0.5, ParetoSmoothing.Limit(100), 1e-12);
    }
}
