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
    /// The covariance, drawn towards a small multiple of the unit matrix as if five further draws had shown variance
    /// <paramref name="prior"/> (common practice: five draws of 10⁻³).
    /// </summary>
    public InverseMetric Metric(double prior)
    {
        double own = count / (count + 5.0), drawn = prior * 5 / (count + 5.0), n = Math.Max(1, count - 1);
        double[] variances = new double[dimension];
        for (int i = 0; i < dimension; i++)
            variances[i] = own * squares[i] / n + drawn;
        double[,] block = new double[blockSize, blockSize];
        for (int i = 0; i < blockSize; i++)
        {
            for (int j = 0; j <= i; j++)
                block[i, j] = block[j, i] = own * products[i * blockSize + j] / n + (i == j ? drawn : 0);
        }

        return InverseMetric.LeadingBlock(variances, block);
    }
}
