using MathNet.Numerics.LinearAlgebra;

namespace Coolproof.Sampling.Tests.Hamiltonian;

/// <summary>Targets whose moments are known.</summary>
static class Targets
{
    public static double StandardNormal(ReadOnlySpan<double> position, Span<double> gradient)
    {
        double squares = 0;
        for (int i = 0; i < position.Length; i++)
        {
            gradient[i] = -position[i];
            squares += position[i] * position[i];
        }

        return -0.5 * squares;
    }

    public static LogDensity Normal(double[,] covariance)
    {
        Matrix<double> precision = Matrix<double>.Build.DenseOfArray(covariance).Inverse();
        return (position, gradient) =>
        {
            double sum = 0;
            for (int i = 0; i < position.Length; i++)
            {
                gradient[i] = 0;
                for (int j = 0; j < position.Length; j++)
                    gradient[i] -= precision[i, j] * position[j];
                sum += 0.5 * gradient[i] * position[i];
            }

            return sum;
        };
    }

    /// <summary>Neal's (2003) funnel: v ~ normal(0, 3), x[i] ~ normal(0, exp(v/2)).</summary>
    public static double Funnel(ReadOnlySpan<double> position, Span<double> gradient)
    {
        double v = position[0], shrink = Math.Exp(-v), squares = 0;
        for (int i = 1; i < position.Length; i++)
        {
            gradient[i] = -position[i] * shrink;
            squares += position[i] * position[i];
        }

        int n = position.Length - 1;
        gradient[0] = -v / 9 + 0.5 * squares * shrink - 0.5 * n;
        return -v * v / 18 - 0.5 * squares * shrink - 0.5 * n * v;
    }

    /// <summary>A banana: x ~ normal(0, 1), y | x ~ normal(x², 0.5); E y = 1, var y = 2 + 0.25.</summary>
    public static double Banana(ReadOnlySpan<double> position, Span<double> gradient)
    {
        double x = position[0], off = position[1] - x * x;
        gradient[0] = -x + 8 * x * off;
        gradient[1] = -4 * off;
        return -0.5 * x * x - 2 * off * off;
    }

    public static double[] Zeros(int dimension) => new double[dimension];

    public static double[] NormalStart(int dimension, RandomStream random)
    {
        double[] start = new double[dimension];
        random.FillNormal(start);
        return start;
    }
}
