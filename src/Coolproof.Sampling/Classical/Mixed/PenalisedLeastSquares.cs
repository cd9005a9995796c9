namespace Coolproof.Sampling.Classical;

/// <summary>
/// The penalised least-squares problem inside a linear mixed model y = Xβ + ZΛ(θ)u + e, u ~ N(0, σ²I), e ~ N(0, σ²I), for any relative
/// covariance factor Λ(θ). After D. Bates, M. Mächler, B. Bolker, S. Walker, Journal of Statistical Software 67(1) (2015), section 3.
/// The fixed-effects design enters by its orthonormal factor Q and the response by its residual from ordinary least squares, so that nothing
/// depends on the origin or scale of either.
/// </summary>
internal sealed class PenalisedLeastSquares
{
    readonly RandomTerm[] _terms;
    readonly int[] _offset;
    readonly List<(int TermA, int RowA, int TermB, int RowB, double[] Product)> _blocks = [];
    readonly int[] _first;
    readonly double[][] _ztX;
    readonly double[] _zty;
    readonly double _yty;
    readonly int _p;

    /// <param name="q">Orthonormal columns that span the fixed effects.</param>
    /// <param name="residual">Response minus its projection on them.</param>
    /// <param name="terms">Random terms.</param>
    public PenalisedLeastSquares(double[][] q, double[] residual, IEnumerable<RandomTerm> terms)
    {
        // The largest factor first: its block of Z'Z is diagonal, and stays so in the Cholesky factor.
        _terms = [.. terms.OrderByDescending(term => term.Levels.Count)];
        _p = q.Length;
        _offset = new int[_terms.Length];
        for (var t = 1; t < _terms.Length; t++) _offset[t] = _offset[t - 1] + _terms[t - 1].Levels.Count * _terms[t - 1].Width;
        Size = _terms.Sum(t => t.Levels.Count * t.Width);
        _first = [.. Enumerable.Range(0, Size)];
        CrossProducts(residual.Length);
        _ztX = [.. q.Select(Transposed)];
        _zty = Transposed(residual);
        _yty = residual.Sum(r => r * r);
    }

    /// <summary>Number of random effects.</summary>
    public int Size { get; }

    /// <summary>Terms in the order that θ follows.</summary>
    public IReadOnlyList<RandomTerm> Terms => _terms;

    /// <summary>What one value of θ gives.</summary>
    /// <param name="LogDetL">log |Λ'Z'ZΛ + I|.</param>
    /// <param name="FixedFactor">Cholesky factor of Q'V⁻¹Q.</param>
    /// <param name="Shift">Fixed effects, in terms of Q, minus those of ordinary least squares.</param>
    /// <param name="PenalisedSumOfSquares">‖y − Xβ − ZΛu‖² + ‖u‖².</param>
    public sealed record Solution(double LogDetL, SkylineCholesky FixedFactor, double[] Shift, double PenalisedSumOfSquares);

    /// <summary>Solves for given factors; null where the numbers break down (θ far too large).</summary>
    /// <param name="factors">For each term the lower triangle of its relative covariance factor, Width × Width.</param>
    public Solution? Solve(double[][,] factors)
    {
        var l = Factor(factors);
        if (!l.PositiveDefinite) return null;
        var cu = Scaled(factors, _zty);
        l.SolveLower(cu);
        var rzx = new double[_p][];
        for (var j = 0; j < _p; j++)
        {
            rzx[j] = Scaled(factors, _ztX[j]);
            l.SolveLower(rzx[j]);
        }
        var rows = new double[_p][];
        var shift = new double[_p];
        for (var j = 0; j < _p; j++)
        {
            rows[j] = new double[j + 1];
            for (var k = 0; k <= j; k++) rows[j][k] = (j == k ? 1 : 0) - Dot(rzx[j], rzx[k]);
            shift[j] = -Dot(rzx[j], cu);
        }
        var rx = new SkylineCholesky(rows, new int[_p]);
        if (!rx.PositiveDefinite) return null;
        rx.SolveLower(shift);
        var sum = _yty - Dot(cu, cu) - Dot(shift, shift);
        rx.SolveUpper(shift);
        return sum > 0 ? new(l.LogDeterminant, rx, shift, sum) : null;
    }

    SkylineCholesky Factor(double[][,] factors)
    {
        var rows = new double[Size][];
        for (var i = 0; i < Size; i++)
        {
            rows[i] = new double[i - _first[i] + 1];
            rows[i][^1] = 1;
        }
        foreach (var (termA, rowA, termB, rowB, product) in _blocks)
        {
            var (fa, fb) = (factors[termA], factors[termB]);
            var (wa, wb) = (_terms[termA].Width, _terms[termB].Width);
            for (var a = 0; a < wa; a++)
            {
                for (var b = 0; b < wb && rowB + b <= rowA + a; b++)
                {
                    var sum = 0.0;
                    for (var i = a; i < wa; i++)
                    {
                        for (var j = b; j < wb; j++) sum += fa[i, a] * product[i * wb + j] * fb[j, b];
                    }
                    rows[rowA + a][rowB + b - _first[rowA + a]] += sum;
                }
            }
        }
        return new(rows, _first);
    }

    void CrossProducts(int n)
    {
        var found = new Dictionary<(int, int), double[]>();
        for (var i = 0; i < n; i++)
        {
            for (var ta = 0; ta < _terms.Length; ta++)
            {
                for (var tb = 0; tb <= ta; tb++)
                {
                    var (rowA, rowB) = (RowOf(ta, i), RowOf(tb, i));
                    var (wa, wb) = (_terms[ta].Width, _terms[tb].Width);
                    if (!found.TryGetValue((rowA, rowB), out var product))
                    {
                        found[(rowA, rowB)] = product = new double[wa * wb];
                        _blocks.Add((ta, rowA, tb, rowB, product));
                        for (var a = 0; a < wa; a++) _first[rowA + a] = Math.Min(_first[rowA + a], rowB);
                    }
                    for (var a = 0; a < wa; a++)
                    {
                        for (var b = 0; b < wb; b++) product[a * wb + b] += _terms[ta].Columns[a][i] * _terms[tb].Columns[b][i];
                    }
                }
            }
        }
    }

    double[] Transposed(double[] vector)
    {
        var result = new double[Size];
        for (var t = 0; t < _terms.Length; t++)
        {
            for (var i = 0; i < vector.Length; i++)
            {
                for (var a = 0; a < _terms[t].Width; a++) result[RowOf(t, i) + a] += _terms[t].Columns[a][i] * vector[i];
            }
        }
        return result;
    }

    // Λ' v.
    double[] Scaled(double[][,] factors, double[] v)
    {
        var result = new double[Size];
        for (var t = 0; t < _terms.Length; t++)
        {
            var width = _terms[t].Width;
            for (var row = _offset[t]; row < _offset[t] + _terms[t].Levels.Count * width; row += width)
            {
                for (var a = 0; a < width; a++)
                {
                    for (var i = a; i < width; i++) result[row + a] += factors[t][i, a] * v[row + i];
                }
            }
        }
        return result;
    }

    int RowOf(int term, int reading) => _offset[term] + _terms[term].LevelOf[reading] * _terms[term].Width;

    static double Dot(double[] a, double[] b)
    {
        var sum = 0.0;
        for (var i = 0; i < a.Length; i++) sum += a[i] * b[i];
        return sum;
    }
}
