using Coolproof.Sampling.Laplace;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;

namespace Coolproof.Sampling.Tests.Laplace;

public sealed class LaplaceDrawsTests
{
    const int Count = 40_000;

    [Fact]
    public void Gaussian_draws_have_the_covariance_of_the_inverse_curvature()
    {
        ArrowLayout layout = ArrowTargets.Uneven;
        (LogDensity density, Matrix<double> precision, double[] mean) = ArrowTargets.Gaussian(layout, 31);
        LaplaceDraws draws = new(new ArrowWhitening(ArrowMode.Find(density, layout, mean)));
        RandomStream random = new(32);
        double[] x = new double[mean.Length];
        Matrix<double> sum = Matrix<double>.Build.Dense(x.Length, x.Length);
        for (int k = 0; k < Count; k++)
        {
            draws.Gaussian(random, x);
            Vector<double> away = Vector<double>.Build.DenseOfEnumerable(x.Select((v, i) => v - mean[i]));
            sum += away.OuterProduct(away) / Count;
        }
        Matrix<double> covariance = precision.Inverse();
        // The standard error of an entry is at most √(2/count) of √(c_ii c_jj); five of them.
        for (int i = 0; i < x.Length; i++)
            for (int j = 0; j < x.Length; j++)
                Assert.Equal(0, (sum[i, j] - covariance[i, j]) / Math.Sqrt(covariance[i, i] * covariance[j, j]), 5 * Math.Sqrt(2.0 / Count));
    }

    [Theory]
    [InlineData(7)]
    [InlineData(1.5)]
    public void Student_globals_follow_a_t_distribution(double degreesOfFreedom)
    {
        ArrowLayout layout = new(1, [1]);
        LogDensity standard = (x, gradient) =>
        {
            gradient[0] = -x[0];
            gradient[1] = -x[1];
            return -0.5 * (x[0] * x[0] + x[1] * x[1]);
        };
        LaplaceDraws draws = new(new ArrowWhitening(ArrowMode.Find(standard, layout, [0, 0])));
        RandomStream random = new(33);
        double[] x = new double[2], global = new double[Count], local = new double[Count];
        for (int k = 0; k < Count; k++)
        {
            draws.StudentGlobals(random, degreesOfFreedom, x);
            (global[k], local[k]) = (x[0], x[1]);
        }
        // Kolmogorov's distance; 1.95/√n is passed once in a thousand times.
        Assert.InRange(Distance(global, new StudentT(0, 1, degreesOfFreedom)), 0, 1.95 / Math.Sqrt(Count));
        Assert.InRange(Distance(local, new Normal()), 0, 1.95 / Math.Sqrt(Count));
    }

    static double Distance(double[] draws, IContinuousDistribution distribution)
    {
        Array.Sort(draws);
        double largest = 0;
        for (int k = 0; k < draws.Length; k++)
        {
            double p = distribution.CumulativeDistribution(draws[k]);
            largest = Math.Max(largest, Math.Max(p - (double)k / draws.Length, (k + 1.0) / draws.Length - p));
        }
        return largest;
    }
}
