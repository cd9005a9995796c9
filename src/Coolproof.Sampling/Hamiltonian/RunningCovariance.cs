using MathNet.Numerics.LinearAlgebra;

namespace Coolproof.Sampling.Hamiltonian;

/// <summary>Welford's running mean, variance and (for the leading block) covariance of positions.</summary>
sealed class RunningCovariance(int dimension, int blockSize)
{
    readonly double[] mean = new double[dimension];
    readonly double[] squares = new double[dimension];
    readonly double[] before = new double[blockSize];
    readonly double[] products = new double[blockSize * blockSize];
    int count;

    public void Add(ReadOnlySpan<double> position)
    {
        count++;
        for (int i = 0; i < position.Length; i++)
        {
            double difference = position[i] - mean[i];
            mean[i] += difference / count;
            squares[i] += difference * (position[i] - mean[i]);
            if (i < before.Length)
                before[i] = difference;
        }

        for (int i = 0; i < before.Length; i++)
        {
            double after = position[i] - mean[i];
            for (int j = 0; j <= i; j++)
                products[i * before.Length + j] += after * before[j];
        }
    }

    public void Reset()
    {
        count = 0;
        Array.Clear(mean);
        Array.Clear(squares);
        Array.Clear(products);
    }

    /// <summary>
    /// The covariance, drawn towards a prior as if five further draws had shown it (common practice): <paramref name="trust"/> times the metric
    /// <paramref name="given"/>. In a block, correlations that remain in the coordinates which the given metric whitens are first
    /// shrunk by the share of them that chance explains.
    /// </summary>
    /// <param name="given">The metric of the start.</param>
    /// <param name="trust">1 for a metric that approximates the posterior; small for one that is a mere placeholder.</param>
    public InverseMetric Metric(InverseMetric given, double trust)
    {
        double own = count / (count + 5.0), prior = trust * 5 / (count + 5.0), n = Math.Max(1, count - 1);
        double[] start = given.Variances(), variances = new double[dimension];
        for (int i = 0; i < dimension; i++)
            variances[i] = own * squares[i] / n + prior * start[i];
        return blockSize == 0 ? InverseMetric.Diagonal(variances) : InverseMetric.LeadingBlock(variances, Block(given, own / n, prior));
    }

    double[,] Block(InverseMetric given, double own, double prior)
    {
        Matrix<double> sums = Matrix<double>.Build.Dense(blockSize, blockSize, (i, j) => products[Math.Max(i, j) * blockSize + Math.Min(i, j)]);
        Matrix<double> factor = Matrix<double>.Build.Dense(blockSize, blockSize, (i, j) => given.FactorAt(i, j));
        Matrix<double> inverse = factor.Inverse();
        Matrix<double> whitened = inverse * sums * inverse.Transpose();
        double keep = 1 - ChanceShare(whitened);
        Matrix<double> drawn = Matrix<double>.Build.Dense(blockSize, blockSize, (i, j) => i == j ? own * whitened[i, i] + prior : keep * own * whitened[i, j]);
        Matrix<double> block = factor * drawn * factor.Transpose();
        return ((block + block.Transpose()) / 2).ToArray();
    }

    /// <summary>
    /// The best share by which to shrink correlations: their summed sampling variance over their summed squares (Schäfer and Strimmer 2005,
    /// Stat. Appl. Genet. Mol. Biol. 4:32), the variance of each taken as (1 − r²)²/(n − 1) as for normal draws. Strong correlations stay; the
    /// many small ones that a short window invents go.
    /// </summary>
    double ChanceShare(Matrix<double> covariance)
    {
        double chance = 0, all = 0;
        for (int i = 0; i < blockSize; i++)
        {
            for (int j = 0; j < i; j++)
            {
                double square = covariance[i, j] * covariance[i, j] / (covariance[i, i] * covariance[j, j]);
                chance += (1 - square) * (1 - square) / Math.Max(1, count - 1);
                all += square;
            }
        }

        return all > 0 ? Math.Min(1, chance / all) : 0;
    }
}
