using MathNet.Numerics.LinearAlgebra;

namespace Coolproof.Sampling.Laplace;

/// <summary>
/// The normal approximation about a mode split in two: the sampled globals φ by their marginal, and the rest ψ = [other globals | locals] by its mean given φ.
/// With whitened z: φ = m_φ + U z, and the mean of ψ is m_ψ + T z.
/// </summary>
sealed class JointApproximation
{
    readonly ArrowMode _mode;
    readonly int[] _sampled;
    readonly int[] _others;
    readonly double[] _toSampled;
    readonly double[] _toRest;

    public JointApproximation(ArrowMode mode, IReadOnlyList<int>? sampled)
    {
        ArrowLayout layout = mode.Factor.Layout;
        _mode = mode;
        _sampled = [.. sampled ?? Enumerable.Range(0, layout.Globals)];
        if (_sampled.Distinct().Count() != _sampled.Length || _sampled.Any(g => g < 0 || g >= layout.Globals))
            throw new ArgumentException($"Sampled globals [{string.Join(", ", _sampled)}] of {layout.Globals}.", nameof(sampled));
        _others = [.. Enumerable.Range(0, layout.Globals).Except(_sampled)];
        int[] sizes = [.. Enumerable.Range(0, layout.Blocks).Select(layout.Size)];
        Rest = new ArrowLayout(_others.Length, sizes);
        _toSampled = new double[_sampled.Length * _sampled.Length];
        _toRest = new double[Rest.Dimension * _sampled.Length];
        Split(layout);
    }

    /// <summary>Order of ψ.</summary>
    public ArrowLayout Rest { get; }

    /// <summary>Numbers in a full position.</summary>
    public int Dimension => _mode.Position.Length;

    /// <summary>Number of sampled globals.</summary>
    public int Count => _sampled.Length;

    /// <summary>U, column by column.</summary>
    public ReadOnlySpan<double> Scale => _toSampled;

    /// <summary>Writes φ and the mean of ψ given φ.</summary>
    public void Place(ReadOnlySpan<double> z, Span<double> sampled, Span<double> rest)
    {
        Pick(_mode.Position, sampled);
        Columns.AddProduct(_toSampled, z, 1, sampled);
        Restrict(_mode.Position, rest);
        Columns.AddProduct(_toRest, z, 1, rest);
    }

    /// <summary>The ψ part of a full vector.</summary>
    public void Restrict(ReadOnlySpan<double> full, Span<double> rest)
    {
        for (int i = 0; i < _others.Length; i++) rest[i] = full[_others[i]];
        full[^Rest.Locals..].CopyTo(rest[_others.Length..]);
    }

    /// <summary>The φ part of a full vector.</summary>
    public void Pick(ReadOnlySpan<double> full, Span<double> sampled)
    {
        for (int i = 0; i < _sampled.Length; i++) sampled[i] = full[_sampled[i]];
    }

    /// <summary>The full position of φ and ψ.</summary>
    public void Assemble(ReadOnlySpan<double> sampled, ReadOnlySpan<double> rest, Span<double> full)
    {
        for (int i = 0; i < _sampled.Length; i++) full[_sampled[i]] = sampled[i];
        for (int i = 0; i < _others.Length; i++) full[_others[i]] = rest[i];
        rest[_others.Length..].CopyTo(full[^Rest.Locals..]);
    }

    /// <summary>The ψ part of the curvature at the mode.</summary>
    public ArrowHessian RestHessian()
    {
        ArrowHessian all = _mode.Hessian, rest = new(Rest);
        int globals = all.Layout.Globals, locals = Rest.Locals;
        for (int i = 0; i < _others.Length; i++)
        {
            for (int j = 0; j < _others.Length; j++) rest.GlobalGlobal[i * _others.Length + j] = all.GlobalGlobal[_others[i] * globals + _others[j]];
            all.LocalGlobal.AsSpan(_others[i] * locals, locals).CopyTo(rest.LocalGlobal.AsSpan(i * locals));
        }
        all.BlockBlock.CopyTo(rest.BlockBlock, 0);
        return rest;
    }

    void Split(ArrowLayout layout)
    {
        int globals = layout.Globals, count = _sampled.Length, others = _others.Length;
        if (count == 0) return;
        Matrix<double> lower = Matrix<double>.Build.Dense(globals, globals, (i, j) => _mode.Factor.GlobalCholesky[i * globals + j]);
        Matrix<double> schur = lower * lower.Transpose();
        Matrix<double> Part(int[] rows, int[] columns) =>
            Matrix<double>.Build.Dense(rows.Length, columns.Length, (i, j) => schur[rows[i], columns[j]]);
        Matrix<double> precision = Part(_sampled, _sampled);
        Matrix<double>? slope = null;
        if (others > 0)
        {
            slope = -Part(_others, _others).Cholesky().Solve(Part(_others, _sampled));
            precision += Part(_sampled, _others) * slope;
        }
        Matrix<double> scale = precision.Cholesky().Factor.Transpose().Inverse();
        double[] shift = new double[globals];
        for (int k = 0; k < count; k++)
        {
            Array.Clear(shift);
            for (int i = 0; i < count; i++) shift[_sampled[i]] = _toSampled[k * count + i] = scale[i, k];
            Span<double> rest = _toRest.AsSpan(k * Rest.Dimension, Rest.Dimension);
            for (int i = 0; i < others; i++)
                for (int j = 0; j < count; j++) rest[i] += slope![i, j] * scale[j, k];
            for (int i = 0; i < others; i++) shift[_others[i]] = rest[i];
            Columns.AddProduct(_mode.Factor.Regression, shift, -1, rest[others..]);
        }
    }
}
