using MathNet.Numerics.LinearAlgebra;

namespace Coolproof.Sampling.Uncertainty;

/// <summary>Propagation of distributions by a Monte Carlo method (JCGM 101:2008, clause 7).</summary>
public sealed class MonteCarlo
{
    readonly double[][] sorted;

    MonteCarlo(double[] means, double[,] covariance, double[][] sorted) => (Means, Covariance, this.sorted) = (means, covariance, sorted);

    /// <summary>Means of the outputs.</summary>
    public IReadOnlyList<double> Means { get; }

    /// <summary>Covariance of the outputs.</summary>
    public double[,] Covariance { get; }

    /// <summary>Propagates.</summary>
    /// <param name="inputs">Inputs.</param>
    /// <param name="outputs">Number of outputs.</param>
    /// <param name="model">The model.</param>
    /// <param name="trials">Number of trials, 1000 or more.</param>
    /// <param name="chance">Source of chance.</param>
    /// <param name="correlation">Correlations of the inputs, square; null: none. Those that are correlated must be normal.</param>
    /// <exception cref="ArgumentException">A correlated input isn't normal, or the correlations can't all be.</exception>
    public static MonteCarlo Of(IReadOnlyList<Input> inputs, int outputs, MeasurementModel model, int trials, RandomStream chance, double[,]? correlation = null)
    {
        InputChecks.Refuse(inputs, correlation);
        ArgumentOutOfRangeException.ThrowIfLessThan(trials, 1000);
        Matrix<double>? root = correlation is null ? null : Root(inputs, correlation);
        int n = inputs.Count;
        double[] x = new double[n], y = new double[outputs], z = new double[n];
        double[][] all = [.. Enumerable.Range(0, outputs).Select(_ => new double[trials])];
        for (int t = 0; t < trials; t++)
        {
            if (root is not null)
                chance.FillNormal(z);
            for (int i = 0; i < n; i++)
                x[i] = root is not null && IsCorrelated(correlation!, i) ? inputs[i].Estimate + inputs[i].StandardUncertainty * Row(root, i, z) : inputs[i].Draw(chance);
            model(x, y);
            for (int o = 0; o < outputs; o++)
                all[o][t] = y[o];
        }
        double[] means = [.. all.Select(v => v.Average())];
        double[,] covariance = new double[outputs, outputs];
        for (int a = 0; a < outputs; a++)
            for (int b = a; b < outputs; b++)
                covariance[a, b] = covariance[b, a] = all[a].Zip(all[b], (p, q) => (p - means[a]) * (q - means[b])).Sum() / (trials - 1);
        foreach (double[] values in all)
            Array.Sort(values);
        return new(means, covariance, all);
    }

    /// <summary>Standard uncertainty of an output.</summary>
    public double StandardUncertainty(int output = 0) => Math.Sqrt(Covariance[output, output]);

    /// <summary>Correlation of two outputs.</summary>
    public double Correlation(int a, int b) => Covariance[a, b] / StandardUncertainty(a) / StandardUncertainty(b);

    /// <summary>Probabilistically symmetric coverage interval (JCGM 101, 7.7).</summary>
    /// <param name="probability">Coverage probability, between 0 and 1.</param>
    /// <param name="output">Which output.</param>
    public (double Low, double High) Symmetric(double probability, int output = 0)
    {
        double[] v = sorted[output];
        int covered = Covered(v.Length, probability), first = (v.Length - covered) / 2;
        return (v[first], v[first + covered]);
    }

    /// <summary>Shortest coverage interval (JCGM 101, 7.7).</summary>
    /// <param name="probability">Coverage probability, between 0 and 1.</param>
    /// <param name="output">Which output.</param>
    public (double Low, double High) Shortest(double probability, int output = 0)
    {
        double[] v = sorted[output];
        int covered = Covered(v.Length, probability), best = Enumerable.Range(0, v.Length - covered).MinBy(r => v[r + covered] - v[r]);
        return (v[best], v[best + covered]);
    }

    static int Covered(int trials, double probability) => probability is > 0 and < 1
        ? Math.Min((int)(probability * trials + 0.5), trials - 1)
        : throw new ArgumentOutOfRangeException(nameof(probability), probability, "A coverage probability lies between 0 and 1.");

    static bool IsCorrelated(double[,] correlation, int i)
    {
        for (int j = 0; j < correlation.GetLength(0); j++)
            if (j != i && correlation[i, j] != 0)
                return true;
        return false;
    }

    static Matrix<double> Root(IReadOnlyList<Input> inputs, double[,] correlation)
    {
        for (int i = 0; i < inputs.Count; i++)
            if (inputs[i].Shape != InputShape.Normal && IsCorrelated(correlation, i))
                throw new ArgumentException($"{inputs[i].Name} is correlated and not normal: draw it by what it is made of.", nameof(inputs));
        // Its square is the matrix itself even where inputs follow one another wholly, which Cholesky would refuse.
        var parts = Matrix<double>.Build.DenseOfArray(correlation).Evd(Symmetricity.Symmetric);
        if (parts.EigenValues.Any(v => v.Real < -1e-9))
            throw new ArgumentException("These correlations can't all be at once.", nameof(correlation));
        return parts.EigenVectors * Matrix<double>.Build.DenseOfDiagonalVector(parts.EigenValues.Map(v => Math.Sqrt(Math.Max(v.Real, 0))));
    }

    static double Row(Matrix<double> root, int i, double[] z)
    {
        double sum = 0;
        for (int j = 0; j < z.Length; j++)
            sum += root[i, j] * z[j];
        return sum;
    }
}
