namespace Coolproof.Sampling.Classical;

/// <summary>
/// Cholesky factor L of a positive definite matrix that keeps, row by row, the zeros before the first entry (the envelope or skyline scheme of
/// A. George and J. W. Liu, Computer Solution of Large Sparse Positive Definite Systems, 1981). With the largest grouping factor first its
/// block costs nothing.
/// </summary>
internal sealed class SkylineCholesky
{
    readonly double[][] _rows;
    readonly int[] _first;

    /// <param name="rows">Lower triangle, row i from column first[i] to i; overwritten by the factor.</param>
    /// <param name="first">First column of each row.</param>
    public SkylineCholesky(double[][] rows, int[] first)
    {
        (_rows, _first) = (rows, first);
        for (var i = 0; i < rows.Length && PositiveDefinite; i++) FactorRow(i);
    }

    /// <summary>False if a pivot was not positive; the factor is then unusable.</summary>
    public bool PositiveDefinite { get; private set; } = true;

    /// <summary>Log of the determinant of the matrix.</summary>
    public double LogDeterminant
    {
        get
        {
            var sum = 0.0;
            foreach (var row in _rows) sum += Math.Log(row[^1]);
            return 2 * sum;
        }
    }

    /// <summary>Overwrites v with L⁻¹ v.</summary>
    public void SolveLower(Span<double> v)
    {
        for (var i = 0; i < _rows.Length; i++)
        {
            var (row, first) = (_rows[i], _first[i]);
            var rest = v[i];
            for (var j = first; j < i; j++) rest -= row[j - first] * v[j];
            v[i] = rest / row[^1];
        }
    }

    /// <summary>Overwrites v with L⁻ᵀ v.</summary>
    public void SolveUpper(Span<double> v)
    {
        for (var i = _rows.Length - 1; i >= 0; i--)
        {
            var (row, first) = (_rows[i], _first[i]);
            v[i] /= row[^1];
            for (var j = first; j < i; j++) v[j] -= row[j - first] * v[i];
        }
    }

    void FactorRow(int i)
    {
        var (row, first) = (_rows[i], _first[i]);
        for (var j = first; j <= i; j++)
        {
            var (other, otherFirst) = (_rows[j], _first[j]);
            var sum = row[j - first];
            for (var k = Math.Max(first, otherFirst); k < j; k++) sum -= row[k - first] * other[k - otherFirst];
            if (j < i)
            {
                row[j - first] = sum / other[^1];
                continue;
            }
            PositiveDefinite = sum > 0;
            row[j - first] = Math.Sqrt(sum);
        }
    }
}
