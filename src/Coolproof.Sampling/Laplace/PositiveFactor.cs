using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Factorization;

namespace Coolproof.Sampling.Laplace;

/// <summary>
/// Cholesky factor of a small symmetric matrix that ought to be positive definite. Where it isn't, eigenvalues λ (in units given by a scale for
/// each coordinate) become max(|λ|, floor): the curvature is turned round, as in Dauphin et al. 2014, "Identifying and attacking the saddle point
/// problem" (from memory), so that a step along it climbs.
/// </summary>
static class PositiveFactor
{
    /// <summary>Factors in place.</summary>
    /// <param name="matrix">n × n, row by row; the lower Cholesky factor on return (upper part 0).</param>
    /// <param name="unit">Precision that counts as 1 for each coordinate, positive.</param>
    /// <param name="floor">Least eigenvalue allowed in those units.</param>
    /// <param name="worst">On repair, the direction of the smallest eigenvalue, scaled to one standard deviation under |λ|; else unset.</param>
    /// <returns>The smallest eigenvalue in units when a repair was needed, else null.</returns>
    public static double? Factor(Span<double> matrix, ReadOnlySpan<double> unit, double floor, Span<double> worst)
    {
        int n = unit.Length;
        if (n == 0) return null;
        Span<double> trial = n <= 16 ? stackalloc double[n * n] : new double[n * n];
        matrix.CopyTo(trial);
        // λmin > floor exactly when the matrix less floor · unit still has a Cholesky factor.
        for (int i = 0; i < n; i++) trial[i * n + i] -= floor * unit[i];
        if (!Cholesky(trial, n)) return Repair(matrix, unit, floor, worst);
        matrix.CopyTo(trial);
        if (!Cholesky(trial, n)) return Repair(matrix, unit, floor, worst);
        trial.CopyTo(matrix);
        return null;
    }

    /// <summary>Lower Cholesky factor in place, upper part set to 0; false (matrix left spoilt in its lower part) when not positive definite.</summary>
    public static bool Cholesky(Span<double> a, int n)
    {
        for (int i = 0; i < n; i++)
        {
            for (int j = 0; j <= i; j++)
            {
                double sum = a[i * n + j];
                for (int k = 0; k < j; k++) sum -= a[i * n + k] * a[j * n + k];
                if (i == j)
                {
                    if (!(sum > 0)) return false;
                    a[i * n + i] = Math.Sqrt(sum);
                }
                else
                {
                    a[i * n + j] = sum / a[j * n + j];
                }
            }
        }
        for (int i = 0; i < n; i++) a.Slice(i * n + i + 1, n - i - 1).Clear();
        return true;
    }

    static double Repair(Span<double> matrix, ReadOnlySpan<double> unit, double floor, Span<double> worst)
    {
        int n = unit.Length;
        double[] root = new double[n];
        for (int i = 0; i < n; i++) root[i] = Math.Sqrt(unit[i]);
        Matrix<double> scaled = Matrix<double>.Build.Dense(n, n);
        for (int i = 0; i < n; i++)
            for (int j = 0; j < n; j++) scaled[i, j] = matrix[Math.Min(i, j) * n + Math.Max(i, j)] / (root[i] * root[j]);
        Evd<double> evd = scaled.Evd(Symmetricity.Symmetric);
        double[] raised = new double[n];
        int least = 0;
        double largest = evd.EigenValues.Max(value => Math.Abs(value.Real));
        floor = Math.Max(floor, 1e-12 * largest);
        for (int k = 0; k < n; k++)
        {
            raised[k] = Math.Max(Math.Abs(evd.EigenValues[k].Real), floor);
            if (evd.EigenValues[k].Real < evd.EigenValues[least].Real) least = k;
        }
        for (int i = 0; i < n; i++)
        {
            worst[i] = evd.EigenVectors[i, least] / root[i] / Math.Sqrt(raised[least]);
            for (int j = 0; j < n; j++)
            {
                double sum = 0;
                for (int k = 0; k < n; k++) sum += evd.EigenVectors[i, k] * raised[k] * evd.EigenVectors[j, k];
                matrix[i * n + j] = sum * root[i] * root[j];
            }
        }
        if (!Cholesky(matrix, n)) throw new ArithmeticException($"No Cholesky factor after raising eigenvalues to {floor} of a {n} × {n} matrix.");
        return evd.EigenValues[least].Real;
    }
}
