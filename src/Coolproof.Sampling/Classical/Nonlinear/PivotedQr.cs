namespace Coolproof.Sampling.Classical;

/// <summary>QR factors with column pivoting in double precision, as the trust-region step needs them, with Qᵀ applied to one vector.</summary>
internal sealed class PivotedQr
{
    /// <summary>Factors the columns (n numbers each, overwritten) and overwrites the vector with Qᵀ times it.</summary>
    public PivotedQr(double[][] columns, double[] vector)
    {
        var (n, p) = (vector.Length, columns.Length);
        Permutation = [.. Enumerable.Range(0, p)];
        R = new double[p, p];
        for (var k = 0; k < p; k++)
        {
            Pivot(columns, k);
            var column = columns[Permutation[k]];
            var norm = k < n ? Norm(column, k) : 0;
            if (norm > 0) Eliminate(columns, vector, k, column[k] > 0 ? -norm : norm);
            for (var l = k; l < p && k < n; l++) R[k, l] = columns[Permutation[l]][k];
        }
        QtVector = [.. Enumerable.Range(0, p).Select(k => k < n ? vector[k] : 0)];
    }

    /// <summary>Column Permutation[k] of the input is column k of R.</summary>
    public int[] Permutation { get; }

    public double[,] R { get; }

    /// <summary>First p entries of Qᵀ times the vector.</summary>
    public double[] QtVector { get; }

    public static double Norm(double[] vector, int from = 0)
    {
        var largest = 0.0;
        for (var i = from; i < vector.Length; i++) largest = Math.Max(largest, Math.Abs(vector[i]));
        if (largest == 0 || !double.IsFinite(largest)) return largest;
        var sum = 0.0;
        for (var i = from; i < vector.Length; i++)
        {
            var share = vector[i] / largest;
            sum += share * share;
        }
        return largest * Math.Sqrt(sum);
    }

    void Pivot(double[][] columns, int k)
    {
        var (best, bestNorm) = (k, -1.0);
        for (var l = k; l < columns.Length; l++)
        {
            var norm = Norm(columns[Permutation[l]], k);
            if (norm > bestNorm) (best, bestNorm) = (l, norm);
        }
        if (best == k) return;
        (Permutation[k], Permutation[best]) = (Permutation[best], Permutation[k]);
        for (var row = 0; row < k; row++) (R[row, k], R[row, best]) = (R[row, best], R[row, k]);
    }

    void Eliminate(double[][] columns, double[] vector, int k, double pivot)
    {
        var v = columns[Permutation[k]];
        var head = v[k] - pivot;
        // H = I − v vᵀ / β with v = (head, tail) and β = −pivot·head.
        var beta = -pivot * head;
        for (var l = k + 1; l < columns.Length; l++) Reflect(columns[Permutation[l]], v, head, beta, k);
        Reflect(vector, v, head, beta, k);
        v[k] = pivot;
    }

    static void Reflect(double[] target, double[] v, double head, double beta, int k)
    {
        var along = head * target[k];
        for (var i = k + 1; i < v.Length; i++) along += v[i] * target[i];
        along /= beta;
        target[k] -= along * head;
        for (var i = k + 1; i < v.Length; i++) target[i] -= along * v[i];
    }
}
