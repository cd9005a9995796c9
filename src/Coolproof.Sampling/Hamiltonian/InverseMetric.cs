using MathNet.Numerics.LinearAlgebra;

namespace Coolproof.Sampling.Hamiltonian;

/// <summary>
/// The inverse mass matrix of Hamiltonian dynamics: an approximation of the posterior covariance, dense for the first
/// <see cref="BlockSize"/> coordinates and diagonal for the others. Immutable.
/// </summary>
/// <remarks>
/// It is kept as a factor W = F Fᵀ. With momenta measured in units of Fᵀ the kinetic energy is p·p/2 and every U-turn check a plain dot
/// product, so the metric is met only once per step on the way in and once on the way out.
/// </remarks>
public sealed class InverseMetric
{
    InverseMetric(double[] scale, int blockSize, double[] lower)
    {
        Scale = scale;
        BlockSize = blockSize;
        Lower = lower;
        Upper = new double[lower.Length];
        for (int i = 0; i < blockSize; i++)
        {
            for (int j = 0; j < blockSize; j++)
                Upper[i * blockSize + j] = lower[j * blockSize + i];
        }
    }

    /// <summary>Coordinates.</summary>
    public int Dimension => Scale.Length;

    /// <summary>How many leading coordinates share the dense block.</summary>
    public int BlockSize { get; }

    /// <summary>Square roots of the diagonal; 1 within the dense block.</summary>
    internal double[] Scale { get; }

    /// <summary>Lower Cholesky factor of the dense block, row by row.</summary>
    internal double[] Lower { get; }

    /// <summary>The transpose of <see cref="Lower"/>, row by row.</summary>
    internal double[] Upper { get; }

    /// <summary>The unit metric: for targets already whitened.</summary>
    public static InverseMetric Identity(int dimension)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(dimension);
        double[] scale = new double[dimension];
        Array.Fill(scale, 1.0);
        return new InverseMetric(scale, 0, []);
    }

    /// <summary>Variances alone.</summary>
    /// <param name="variances">Approximate posterior variances, n positive numbers.</param>
    /// <exception cref="ArgumentException">A variance is not positive and finite.</exception>
    public static InverseMetric Diagonal(ReadOnlySpan<double> variances) => LeadingBlock(variances, new double[0, 0]);

    /// <summary>A dense covariance for the leading coordinates, variances for the others.</summary>
    /// <param name="variances">Approximate posterior variances, n numbers; those of the block are not read.</param>
    /// <param name="covariance">Covariance of the first k coordinates, k × k, positive definite.</param>
    /// <exception cref="ArgumentException">A variance is not positive and finite, or the block is no covariance.</exception>
    public static InverseMetric LeadingBlock(ReadOnlySpan<double> variances, double[,] covariance)
    {
        int k = covariance.GetLength(0);
        if (k != covariance.GetLength(1) || k > variances.Length)
            throw new ArgumentException($"The block is {k} × {covariance.GetLength(1)} for {variances.Length} coordinates.", nameof(covariance));
        double[] scale = new double[variances.Length];
        for (int i = 0; i < scale.Length; i++)
        {
            if (i >= k && !(variances[i] > 0 && double.IsFinite(variances[i])))
                throw new ArgumentException($"Variance {i} is {variances[i]}; it must be positive and finite.", nameof(variances));
            scale[i] = i < k ? 1 : Math.Sqrt(variances[i]);
        }

        return new InverseMetric(scale, k, k == 0 ? [] : LowerFactor(covariance));
    }

    /// <summary>The approximate posterior variances this metric stands for.</summary>
    public double[] Variances()
    {
        double[] result = new double[Dimension];
        for (int i = 0; i < result.Length; i++)
        {
            if (i >= BlockSize)
                result[i] = Scale[i] * Scale[i];
            for (int j = 0; i < BlockSize && j <= i; j++)
                result[i] += Lower[i * BlockSize + j] * Lower[i * BlockSize + j];
        }

        return result;
    }

    /// <summary>Element of the factor F of the whole metric F Fᵀ.</summary>
    internal double FactorAt(int row, int column) =>
        row < BlockSize && column < BlockSize ? Lower[row * BlockSize + column] : row == column ? Scale[row] : 0;

    static double[] LowerFactor(double[,] covariance)
    {
        int k = covariance.GetLength(0);
        Matrix<double> lower;
        try
        {
            lower = Matrix<double>.Build.DenseOfArray(covariance).Cholesky().Factor;
        }
        catch (ArgumentException e)
        {
            throw new ArgumentException("The block is not a positive definite covariance.", nameof(covariance), e);
        }

        double[] rows = new double[k * k];
        for (int i = 0; i < k; i++)
        {
            for (int j = 0; j <= i; j++)
                rows[i * k + j] = lower[i, j];
        }

        return rows;
    }
}
