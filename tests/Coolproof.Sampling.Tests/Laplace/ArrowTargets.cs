using Coolproof.Sampling.Laplace;
using MathNet.Numerics.LinearAlgebra;

namespace Coolproof.Sampling.Tests.Laplace;

/// <summary>Made-up targets with the shape of an arrow.</summary>
static class ArrowTargets
{
    public static ArrowLayout Uneven => new(4, [3, 2, 5, 1, 4]);

    /// <summary>A Gaussian whose precision has no entries between blocks; <paramref name="coupling"/> ties the first locals of neighbours.</summary>
    public static (LogDensity Density, Matrix<double> Precision, double[] Mean) Gaussian(ArrowLayout layout, int seed, double coupling = 0)
    {
        Random random = new(seed);
        int n = layout.Dimension, globals = layout.Globals;
        Matrix<double> precision = Matrix<double>.Build.Dense(n, n);
        for (int g = 0; g < globals; g++) precision[g, g] += 2;
        for (int b = 0; b < layout.Blocks; b++)
        {
            // A sum of squares of a few mixed coordinates is positive whatever the weights.
            int size = layout.Size(b), start = globals + layout.Start(b);
            int[] own = [.. Enumerable.Range(0, globals), .. Enumerable.Range(start, size)];
            for (int row = 0; row < size + 2; row++)
            {
                double[] weights = [.. own.Select(_ => 2 * random.NextDouble() - 1)];
                for (int i = 0; i < own.Length; i++)
                    for (int j = 0; j < own.Length; j++) precision[own[i], own[j]] += weights[i] * weights[j];
            }
            for (int i = 0; i < size; i++) precision[start + i, start + i] += 0.3;
            if (b == 0 || coupling == 0) continue;
            int before = globals + layout.Start(b - 1);
            precision[before, start] = precision[start, before] = -coupling;
            precision[before, before] += coupling;
            precision[start, start] += coupling;
        }
        // Different sizes of coordinates, as different units would make them.
        double[] units = [.. Enumerable.Range(0, n).Select(i => Math.Exp(1.5 * Math.Sin(i)))];
        for (int i = 0; i < n; i++)
            for (int j = 0; j < n; j++) precision[i, j] *= units[i] * units[j];
        double[] mean = [.. Enumerable.Range(0, n).Select(i => Math.Cos(3 * i) / units[i])];
        return (Quadratic(precision, mean), precision, mean);
    }

    static LogDensity Quadratic(Matrix<double> precision, double[] mean) => (x, gradient) =>
    {
        Vector<double> away = Vector<double>.Build.DenseOfArray(x.ToArray()) - Vector<double>.Build.DenseOfArray(mean);
        Vector<double> pull = precision * away;
        for (int i = 0; i < x.Length; i++) gradient[i] = -pull[i];
        return -0.5 * (away * pull);
    };

    /// <summary>
    /// Readings of several groups, y = μ + exp(log τ) u_j + exp(log σ) e, with log τ and log σ as globals: not log-concave. A block is (u_j, v_j) with v_j a second
    /// level that enters as a slope of common size.
    /// </summary>
    public static LogDensity Scales(int groups, int readings, int seed)
    {
        Random random = new(seed);
        double[] y = [.. Enumerable.Range(0, groups).SelectMany(j =>
        {
            double level = 3 + 1.5 * Normal(random), slope = 0.8 * Normal(random);
            return Enumerable.Range(0, readings).Select(k => level + slope * Time(k, readings) + 0.4 * Normal(random)).ToArray();
        })];
        return (x, gradient) =>
        {
            gradient.Clear();
            double mu = x[0], tau = Math.Exp(x[1]), omega = Math.Exp(x[2]), sigma = Math.Exp(x[3]);
            double sum = -0.5 * (mu * mu / 100 + x[1] * x[1] + x[2] * x[2] + x[3] * x[3]);
            gradient[0] = -mu / 100;
            for (int g = 1; g < 4; g++) gradient[g] = -x[g];
            for (int j = 0; j < groups; j++)
            {
                double u = x[4 + 2 * j], v = x[5 + 2 * j];
                sum -= 0.5 * (u * u + v * v);
                gradient[4 + 2 * j] -= u;
                gradient[5 + 2 * j] -= v;
                for (int k = 0; k < readings; k++)
                {
                    double t = Time(k, readings), r = (y[j * readings + k] - mu - tau * u - omega * v * t) / sigma, pull = r / sigma;
                    sum += -0.5 * r * r - x[3];
                    gradient[0] += pull;
                    gradient[1] += pull * tau * u;
                    gradient[2] += pull * omega * v * t;
                    gradient[3] += r * r - 1;
                    gradient[4 + 2 * j] += pull * tau;
                    gradient[5 + 2 * j] += pull * omega * t;
                }
            }
            return sum;
        };
    }

    public static double Normal(Random random) => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(Math.Tau * random.NextDouble());

    static double Time(int k, int readings) => readings == 1 ? 0 : 2.0 * k / (readings - 1) - 1;

    /// <summary>Central difference of a log density along each coordinate.</summary>
    public static double[] Differences(LogDensity density, double[] x, double step = 1e-5)
    {
        double[] moved = [.. x], scratch = new double[x.Length], differences = new double[x.Length];
        for (int i = 0; i < x.Length; i++)
        {
            moved[i] = x[i] + step;
            double up = density(moved, scratch);
            moved[i] = x[i] - step;
            differences[i] = (up - density(moved, scratch)) / (2 * step);
            moved[i] = x[i];
        }
        return differences;
    }
}
