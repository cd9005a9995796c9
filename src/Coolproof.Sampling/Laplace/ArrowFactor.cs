namespace Coolproof.Sampling.Laplace;

/// <summary>
/// Block Cholesky factor of an <see cref="ArrowHessian"/>: H_bb = L_b L_b', and for the globals the Schur complement
/// S = H_gg − Σ H_gb H_bb⁻¹ H_bg = L_S L_S'. Linear in the number of blocks.
/// </summary>
public sealed class ArrowFactor
{
    readonly BlockTriangles _inverse;
    readonly double[] _regression;
    readonly double[] _globalInverse;

    ArrowFactor(ArrowLayout layout)
    {
        Layout = layout;
        _inverse = new BlockTriangles(layout);
        _regression = new double[layout.Globals * layout.Locals];
        _globalInverse = new double[layout.Globals * layout.Globals];
        BlockCholesky = new double[layout.BlockEntries];
        GlobalCholesky = new double[layout.Globals * layout.Globals];
    }

    /// <summary>From its parts, which it keeps.</summary>
    internal ArrowFactor(ArrowLayout layout, double[] blockCholesky, double[] globalCholesky, double[] regression)
    {
        Layout = layout;
        _inverse = new BlockTriangles(layout);
        _regression = regression;
        _globalInverse = new double[layout.Globals * layout.Globals];
        BlockCholesky = blockCholesky;
        GlobalCholesky = globalCholesky;
        for (int b = 0; b < layout.Blocks; b++)
            _inverse.SetInverse(b, blockCholesky.AsSpan(layout.EntryStart(b), layout.Size(b) * layout.Size(b)));
        InvertGlobals();
        LogDeterminant = SumOfLogs();
    }

    /// <summary>Order of the coordinates.</summary>
    public ArrowLayout Layout { get; }

    /// <summary>Whether a block or the Schur complement had an eigenvalue below the floor and was raised.</summary>
    public bool Repaired { get; private set; }

    /// <summary>log det of the (repaired) matrix.</summary>
    public double LogDeterminant { get; private set; }

    /// <summary>L_b of all blocks, row by row.</summary>
    internal double[] BlockCholesky { get; }

    /// <summary>L_S, row by row.</summary>
    internal double[] GlobalCholesky { get; }

    /// <summary>L_b⁻ᵀ of all blocks.</summary>
    internal BlockTriangles BlockInverse => _inverse;

    /// <summary>L_S⁻ᵀ, column by column (upper triangular).</summary>
    internal ReadOnlySpan<double> GlobalInverse => _globalInverse;

    /// <summary>H_bb⁻¹ H_bg, one column of all locals for each global.</summary>
    internal ReadOnlySpan<double> Regression => _regression;

    /// <summary>After a repair, the direction of strongest downward curvature, about one standard deviation long; else null.</summary>
    internal double[]? Escape { get; private set; }

    /// <summary>Factors H + damping · diag|H|, raising eigenvalues that are too small.</summary>
    /// <param name="hessian">Finite.</param>
    /// <param name="priorPrecision">
    /// Precision of the prior for each coordinate, positive: the unit of the floor. Empty: |H_ii|, or 1 where that is 0.
    /// </param>
    /// <param name="floor">
    /// Least eigenvalue in those units; an eigenvalue λ below becomes max(|λ|, floor). Left out: 1e-3 of the prior precision, which keeps all that
    /// data and a proper prior can honestly say and only catches what is flat or bends upwards; without a prior 1e-10, which only catches rounding.
    /// </param>
    /// <param name="damping">Levenberg damping as a share of |H_ii|.</param>
    /// <exception cref="ArgumentException">The matrix isn't finite, or a prior precision isn't positive.</exception>
    public static ArrowFactor Of(ArrowHessian hessian, ReadOnlySpan<double> priorPrecision = default, double? floor = null, double damping = 0)
    {
        if (!hessian.IsFinite) throw new ArgumentException("The matrix has entries that are not finite.", nameof(hessian));
        ArrowLayout layout = hessian.Layout;
        double[] own = Units(hessian, default), unit = priorPrecision.IsEmpty ? own : Units(hessian, priorPrecision);
        double least = floor ?? (priorPrecision.IsEmpty ? 1e-10 : 1e-3);
        double[] added = Array.ConvertAll(own, value => damping * value);
        ArrowFactor factor = new(layout);
        factor.FactorBlocks(hessian, unit.AsSpan(layout.Globals), least, added.AsSpan(layout.Globals));
        factor.EliminateLocals(hessian);
        factor.FactorGlobals(hessian, unit.AsSpan(0, layout.Globals), least, added);
        factor.LogDeterminant = factor.SumOfLogs();
        return factor;
    }

    /// <summary>Solves H x = c.</summary>
    /// <param name="c">Right side, <see cref="ArrowLayout.Dimension"/> numbers.</param>
    /// <param name="x">Receives the solution, as many; not the same memory as <paramref name="c"/>.</param>
    public void Solve(ReadOnlySpan<double> c, Span<double> x)
    {
        int globals = Layout.Globals;
        x.Clear();
        double[] half = new double[Layout.Dimension];
        Span<double> halfLocals = half.AsSpan(globals), halfGlobals = half.AsSpan(0, globals);
        double[] right = c[..globals].ToArray();
        Columns.AddTransposedProduct(_regression, c[globals..], -1, right);
        Columns.AddTransposedProduct(_globalInverse, right, 1, halfGlobals);
        Columns.AddProduct(_globalInverse, halfGlobals, 1, x[..globals]);
        _inverse.AddTransposedProduct(c[globals..], halfLocals);
        _inverse.AddProduct(halfLocals, x[globals..]);
        Columns.AddProduct(_regression, x[..globals], -1, x[globals..]);
    }

    /// <summary>Variance of each coordinate under N(·, H⁻¹): the diagonal of H⁻¹.</summary>
    /// <returns><see cref="ArrowLayout.Dimension"/> numbers.</returns>
    public double[] MarginalVariances()
    {
        int globals = Layout.Globals, locals = Layout.Locals;
        double[] variances = new double[Layout.Dimension];
        Span<double> ofLocals = variances.AsSpan(globals);
        _inverse.AddRowSquares(ofLocals);
        double[] column = new double[locals];
        for (int j = 0; j < globals; j++)
        {
            ReadOnlySpan<double> inverseColumn = _globalInverse.AsSpan(j * globals, globals);
            for (int g = 0; g < globals; g++) variances[g] += inverseColumn[g] * inverseColumn[g];
            Array.Clear(column);
            Columns.AddProduct(_regression, inverseColumn, 1, column);
            Columns.AddEntrywise(column, column, ofLocals);
        }
        return variances;
    }

    static double[] Units(ArrowHessian hessian, ReadOnlySpan<double> priorPrecision)
    {
        int n = hessian.Layout.Dimension;
        double[] unit = new double[n];
        if (priorPrecision.IsEmpty)
        {
            hessian.CopyDiagonal(unit);
            for (int i = 0; i < n; i++) unit[i] = Math.Abs(unit[i]) > 1e-200 ? Math.Abs(unit[i]) : 1;
            return unit;
        }
        if (priorPrecision.Length != n) throw new ArgumentException($"{priorPrecision.Length} prior precisions for {n} coordinates.", nameof(priorPrecision));
        for (int i = 0; i < n; i++)
            if (!(priorPrecision[i] > 0)) throw new ArgumentException($"Prior precision {i} is {priorPrecision[i]}.", nameof(priorPrecision));
        priorPrecision.CopyTo(unit);
        return unit;
    }

    void FactorBlocks(ArrowHessian hessian, ReadOnlySpan<double> unit, double floor, ReadOnlySpan<double> added)
    {
        hessian.BlockBlock.CopyTo(BlockCholesky, 0);
        double[] worst = new double[Layout.LargestBlock];
        double lowest = 0;
        for (int b = 0; b < Layout.Blocks; b++)
        {
            int size = Layout.Size(b), start = Layout.Start(b);
            Span<double> block = BlockCholesky.AsSpan(Layout.EntryStart(b), size * size);
            for (int i = 0; i < size; i++) block[i * size + i] += added[start + i];
            double? least = PositiveFactor.Factor(block, unit.Slice(start, size), floor, worst);
            _inverse.SetInverse(b, block);
            if (least is not { } value) continue;
            Repaired = true;
            if (value >= lowest) continue;
            lowest = value;
            Escape = new double[Layout.Dimension];
            worst.AsSpan(0, size).CopyTo(Escape.AsSpan(Layout.Globals + start));
        }
    }

    void EliminateLocals(ArrowHessian hessian)
    {
        int locals = Layout.Locals;
        double[] half = new double[locals];
        for (int g = 0; g < Layout.Globals; g++)
        {
            Array.Clear(half);
            _inverse.AddTransposedProduct(hessian.LocalGlobal.AsSpan(g * locals, locals), half);
            _inverse.AddProduct(half, _regression.AsSpan(g * locals, locals));
        }
    }

    void FactorGlobals(ArrowHessian hessian, ReadOnlySpan<double> unit, double floor, ReadOnlySpan<double> added)
    {
        int globals = Layout.Globals, locals = Layout.Locals;
        double[] schur = GlobalCholesky;
        hessian.GlobalGlobal.CopyTo(schur, 0);
        for (int j = 0; j < globals; j++)
        {
            ReadOnlySpan<double> column = hessian.LocalGlobal.AsSpan(j * locals, locals);
            for (int k = 0; k <= j; k++)
                schur[j * globals + k] = schur[k * globals + j] -= Columns.Dot(column, _regression.AsSpan(k * locals, locals));
            schur[j * globals + j] += added[j];
        }
        double[] worst = new double[globals];
        if (PositiveFactor.Factor(schur, unit, floor, worst) is { } least)
        {
            Repaired = true;
            if (least < 0 && Escape is null)
            {
                Escape = new double[Layout.Dimension];
                worst.CopyTo(Escape, 0);
                Columns.AddProduct(_regression, worst, -1, Escape.AsSpan(globals));
            }
        }
        InvertGlobals();
    }

    void InvertGlobals()
    {
        int n = Layout.Globals;
        for (int j = 0; j < n; j++)
        {
            for (int i = j; i < n; i++)
            {
                double sum = i == j ? 1.0 : 0.0;
                for (int k = j; k < i; k++) sum -= GlobalCholesky[i * n + k] * _globalInverse[k * n + j];
                _globalInverse[i * n + j] = sum / GlobalCholesky[i * n + i];
            }
        }
    }

    double SumOfLogs()
    {
        double sum = 0;
        for (int g = 0; g < Layout.Globals; g++) sum += Math.Log(GlobalCholesky[g * Layout.Globals + g]);
        for (int b = 0; b < Layout.Blocks; b++)
            for (int i = 0; i < Layout.Size(b); i++) sum += Math.Log(BlockCholesky[Layout.EntryStart(b) + i * Layout.Size(b) + i]);
        return 2 * sum;
    }
}
