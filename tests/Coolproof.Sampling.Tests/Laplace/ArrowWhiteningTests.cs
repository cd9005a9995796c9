using System.Diagnostics;
using Coolproof.Sampling.Laplace;
using MathNet.Numerics.LinearAlgebra;

namespace Coolproof.Sampling.Tests.Laplace;

public sealed class ArrowWhiteningTests(ITestOutputHelper output)
{
    [Fact]
    public void A_whitened_Gaussian_is_standard_normal()
    {
        ArrowLayout layout = ArrowTargets.Uneven;
        (LogDensity density, Matrix<double> precision, _) = ArrowTargets.Gaussian(layout, 21);
        ArrowMode mode = ArrowMode.Find(density, layout, new double[layout.Dimension]);
        ArrowWhitening whitening = new(mode);
        LogDensity whitened = WhitenedDensity.Over(density, whitening);
        double[] z = [.. Enumerable.Range(0, layout.Dimension).Select(i => 1.5 * Math.Sin(7 * i + 1))], gradient = new double[z.Length];
        double height = whitened(z, gradient);
        Assert.Equal(mode.LogDensity - 0.5 * z.Sum(v => v * v), height, 1e-6);
        for (int i = 0; i < z.Length; i++) Assert.Equal(-z[i], gradient[i], 1e-6);
        Assert.Equal(-0.5 * precision.Cholesky().DeterminantLn, whitening.LogJacobian, 1e-7);
    }

    [Fact]
    public void The_gradient_in_whitened_coordinates_matches_central_differences()
    {
        ArrowLayout layout = ArrowLayout.Even(4, 7, 2);
        LogDensity density = ArrowTargets.Scales(7, 4, 22);
        LogDensity whitened = WhitenedDensity.Over(density, new(ArrowMode.Find(density, layout, new double[layout.Dimension])));
        double[] z = [.. Enumerable.Range(0, layout.Dimension).Select(i => Math.Cos(5 * i))], gradient = new double[z.Length];
        whitened(z, gradient);
        double[] expected = ArrowTargets.Differences(whitened, z);
        for (int i = 0; i < z.Length; i++) Assert.Equal(expected[i], gradient[i], 1e-6 * (1 + Math.Abs(expected[i])));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(3)]
    [InlineData(9)]
    public void There_and_back_is_the_same_point(int globals)
    {
        ArrowLayout layout = new(globals, [1, 8, 3, 2, 2]);
        (LogDensity density, _, _) = ArrowTargets.Gaussian(layout, 23);
        ArrowWhitening whitening = new(ArrowMode.Find(density, layout, new double[layout.Dimension]));
        double[] z = [.. Enumerable.Range(0, layout.Dimension).Select(i => Math.Sin(i + 2))], theta = new double[z.Length], back = new double[z.Length];
        whitening.ToPosition(z, theta);
        whitening.FromPosition(theta, back);
        for (int i = 0; i < z.Length; i++) Assert.Equal(z[i], back[i], 1e-10);
    }

    [Fact]
    public void The_map_and_its_pull_back_are_far_cheaper_than_dense_products_and_take_no_memory()
    {
        ArrowLayout layout = ArrowLayout.Even(20, 30, 5);
        ArrowHessian hessian = new(layout);
        for (int i = 0; i < 20; i++) hessian.GlobalGlobal[21 * i] = 300;
        for (int i = 0; i < hessian.LocalGlobal.Length; i++) hessian.LocalGlobal[i] = 0.3 * Math.Sin(i);
        for (int b = 0; b < 30; b++)
            for (int i = 0; i < 5; i++) hessian.BlockBlock[layout.EntryStart(b) + 6 * i] = 2;
        ArrowWhitening whitening = new(new double[layout.Dimension], ArrowFactor.Of(hessian));
        int n = layout.Dimension;
        double[] z = [.. Enumerable.Range(0, n).Select(i => Math.Sin(i))], theta = new double[n], gradient = new double[n], dense = new double[n * n];
        double own = double.PositiveInfinity, plain = double.PositiveInfinity;
        for (int round = 0; round < 60; round++)
        {
            own = Math.Min(own, Microseconds(300, () =>
            {
                whitening.ToPosition(z, theta);
                whitening.PullBack(theta, gradient);
            }));
            plain = Math.Min(plain, Microseconds(30, () => Multiply(dense, z, theta)));
        }
        output.WriteLine($"both calls together {own:F2} µs; one dense product {plain:F2} µs");
        Assert.InRange(own / plain, 0, 0.5);
        long before = GC.GetAllocatedBytesForCurrentThread();
        whitening.ToPosition(z, theta);
        whitening.PullBack(theta, gradient);
        Assert.Equal(before, GC.GetAllocatedBytesForCurrentThread());
    }

    static double Microseconds(int times, Action work)
    {
        long start = Stopwatch.GetTimestamp();
        for (int k = 0; k < times; k++) work();
        return Stopwatch.GetElapsedTime(start).TotalMicroseconds / times;
    }

    static void Multiply(double[] matrix, double[] x, double[] y)
    {
        for (int i = 0; i < y.Length; i++)
        {
            double sum = 0;
            for (int j = 0; j < x.Length; j++) sum += matrix[i * x.Length + j] * x[j];
            y[i] = sum;
        }
    }
}
