using Coolproof.Sampling.Hamiltonian;
using MathNet.Numerics.LinearAlgebra;

namespace Coolproof.Sampling.Tests.Posteriors;

/// <summary>y ~ normal(X β, σ) with flat or normal β and flat or half-Cauchy σ; coordinates are β and log σ.</summary>
static class LinearRegression
{
    /// <param name="columns">Predictors, the column of ones included.</param>
    /// <param name="y">Outcome.</param>
    /// <param name="names">Names of the coefficients.</param>
    /// <param name="cauchyScale">Scale of the half-Cauchy on σ; infinite for flat.</param>
    /// <param name="prior">Mean and standard deviation of a normal prior per coefficient, or none.</param>
    /// <param name="whitened">Whether the sampler is given the least-squares covariance to begin with.</param>
    public static Posterior Of(double[][] columns, double[] y, string[] names, double cauchyScale, (double Mean, double Sd)[]? prior = null, bool whitened = true)
    {
        int p = columns.Length, n = y.Length;
        Matrix<double> x = Matrix<double>.Build.DenseOfColumnArrays(columns);
        Vector<double> ols = x.QR().Solve(Vector<double>.Build.Dense(y));
        double sigma = Math.Sqrt((Vector<double>.Build.Dense(y) - x * ols).DotProduct(Vector<double>.Build.Dense(y) - x * ols) / (n - p));
        Matrix<double> covariance = (x.TransposeThisAndMultiply(x) / (sigma * sigma)).Inverse();
        Matrix<double> factor = covariance.Cholesky().Factor;
        double[] variances = [.. covariance.Diagonal(), 0.5 / n];
        double[] residual = new double[n];
        double Density(ReadOnlySpan<double> position, Span<double> gradient)
        {
            double logSigma = position[p], precision = Math.Exp(-2 * logSigma), squares = 0;
            y.CopyTo(residual, 0);
            for (int j = 0; j < p; j++)
                Add(residual, columns[j], -position[j]);
            foreach (double r in residual)
                squares += r * r;
            double u = Math.Exp(2 * logSigma) / (cauchyScale * cauchyScale);
            double sum = -(n - 1) * logSigma - 0.5 * squares * precision - Math.Log(1 + u);
            gradient[p] = -(n - 1) + squares * precision - 2 * u / (1 + u);
            for (int j = 0; j < p; j++)
            {
                gradient[j] = Dot(residual, columns[j]) * precision;
                if (prior is not null)
                {
                    double z = (position[j] - prior[j].Mean) / prior[j].Sd;
                    sum -= 0.5 * z * z;
                    gradient[j] -= z / prior[j].Sd;
                }
            }

            return sum;
        }

        double[] Start(RandomStream random)
        {
            double[] noise = new double[p];
            random.FillNormal(noise);
            return [.. ols + factor * Vector<double>.Build.Dense(noise), Math.Log(sigma) + 0.1 * random.NextNormal()];
        }

        return new Posterior(
            p + 1,
            [.. names, "sigma"],
            Density,
            (position, values) =>
            {
                position.CopyTo(values);
                values[p] = Math.Exp(position[p]);
            },
            Start,
            whitened ? InverseMetric.LeadingBlock(variances, covariance.ToArray()) : null);
    }

    static void Add(double[] to, double[] column, double factor)
    {
        for (int i = 0; i < to.Length; i++)
            to[i] += factor * column[i];
    }

    static double Dot(double[] a, double[] b)
    {
        double sum = 0;
        for (int i = 0; i < a.Length; i++)
            sum += a[i] * b[i];
        return sum;
    }
}
