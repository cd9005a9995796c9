namespace Coolproof.Sampling.Laplace;

/// <summary>
/// Weighted sums of arrow factors. What is summed are the logarithms of the Cholesky diagonals, the entries below them as shares of their column's diagonal,
/// and the regression of locals on globals: so the sum is positive definite whatever the weights, and small Schur complements aren't differences of large
/// numbers (log-Cholesky, Pinheiro and Bates 1996, "Unconstrained parametrizations for variance-covariance matrices").
/// </summary>
sealed class FactorBlend
{
    readonly ArrowLayout _layout;
    readonly double[] _blocks;
    readonly double[] _globals;
    readonly double[] _regression;

    /// <summary>A factor in this form.</summary>
    public FactorBlend(ArrowFactor factor)
    {
        _layout = factor.Layout;
        _blocks = [.. factor.BlockCholesky];
        _globals = [.. factor.GlobalCholesky];
        _regression = [.. factor.Regression];
        ForEachTriangle(ToLogs);
    }

    FactorBlend(ArrowLayout layout)
    {
        _layout = layout;
        _blocks = new double[layout.BlockEntries];
        _globals = new double[layout.Globals * layout.Globals];
        _regression = new double[layout.Globals * layout.Locals];
    }

    delegate void OnTriangle(Span<double> lower, int n);

    /// <summary>Weighted sum, back as a factor.</summary>
    public static ArrowFactor Sum(ReadOnlySpan<double> weights, FactorBlend[] terms)
    {
        FactorBlend sum = new(terms[0]._layout);
        for (int t = 0; t < terms.Length; t++)
        {
            if (weights[t] == 0) continue;
            Columns.AddScaled(terms[t]._blocks, weights[t], sum._blocks);
            Columns.AddScaled(terms[t]._globals, weights[t], sum._globals);
            Columns.AddScaled(terms[t]._regression, weights[t], sum._regression);
        }
        sum.ForEachTriangle(FromLogs);
        return new ArrowFactor(sum._layout, sum._blocks, sum._globals, sum._regression);
    }

    void ForEachTriangle(OnTriangle act)
    {
        act(_globals, _layout.Globals);
        for (int b = 0; b < _layout.Blocks; b++)
            act(_blocks.AsSpan(_layout.EntryStart(b), _layout.Size(b) * _layout.Size(b)), _layout.Size(b));
    }

    static void ToLogs(Span<double> lower, int n)
    {
        for (int j = 0; j < n; j++)
        {
            for (int i = j + 1; i < n; i++) lower[i * n + j] /= lower[j * n + j];
            lower[j * n + j] = Math.Log(lower[j * n + j]);
        }
    }

    static void FromLogs(Span<double> lower, int n)
    {
        for (int j = 0; j < n; j++)
        {
            lower[j * n + j] = Math.Exp(lower[j * n + j]);
            for (int i = j + 1; i < n; i++) lower[i * n + j] *= lower[j * n + j];
        }
    }
}
