namespace Coolproof.Sampling.Laplace;

/// <summary>
/// Minus the second derivatives of a log density at a point, without what couples one block to another. Time and memory are linear in the number
/// of blocks.
/// </summary>
public sealed class ArrowHessian
{
    /// <summary>All zero.</summary>
    /// <param name="layout">Order of the coordinates.</param>
    public ArrowHessian(ArrowLayout layout)
    {
        Layout = layout;
        GlobalGlobal = new double[layout.Globals * layout.Globals];
        LocalGlobal = new double[layout.Globals * layout.Locals];
        BlockBlock = new double[layout.BlockEntries];
    }

    /// <summary>Order of the coordinates.</summary>
    public ArrowLayout Layout { get; }

    /// <summary>H_gg, globals × globals, row by row (symmetric).</summary>
    public double[] GlobalGlobal { get; }

    /// <summary>H_bg of all blocks: one column of <see cref="ArrowLayout.Locals"/> numbers for each global, one after another.</summary>
    public double[] LocalGlobal { get; }

    /// <summary>H_bb of all blocks, each size × size row by row from <see cref="ArrowLayout.EntryStart"/>.</summary>
    public double[] BlockBlock { get; }

    /// <summary>Whether every gradient asked for was finite; when false the entries are not to be used.</summary>
    public bool IsFinite { get; internal set; } = true;

    /// <summary>Gradients evaluated for it.</summary>
    public int Gradients { get; internal set; }

    /// <summary>
    /// By central differences of the gradient: two gradients for each global, and for each s two with the s-th local of all even blocks moved at once
    /// and two with that of all odd blocks, so that neighbours in a chain don't mix. With scales within a factor of ten the
    /// error is about 1e-9 of √(H_ii H_jj).
    /// </summary>
    /// <param name="density">Log density on <see cref="ArrowLayout.Dimension"/> numbers, smooth.</param>
    /// <param name="layout">Order of the coordinates.</param>
    /// <param name="position">Where.</param>
    /// <param name="scales">
    /// A length for each coordinate over which the curvature is much the same: its standard deviation given the others. Left out, lengths of 1 are
    /// tried and where the curvature found says otherwise the work is done again with better ones.
    /// </param>
    /// <param name="second">Another instance of the density, for a second thread; the figures are the same. Null: one thread does it all.</param>
    /// <exception cref="ArgumentException">Length of <paramref name="position"/> or <paramref name="scales"/>.</exception>
    public static ArrowHessian At(
        LogDensity density, ArrowLayout layout, ReadOnlySpan<double> position, ReadOnlySpan<double> scales = default, LogDensity? second = null)
    {
        HessianProbe probe = new(density, layout, position, second);
        if (!scales.IsEmpty) return probe.Measure(scales);
        double[] lengths = new double[layout.Dimension];
        Array.Fill(lengths, 1.0);
        ArrowHessian first = probe.Measure(lengths);
        if (!first.IsFinite || !first.ImproveScales(lengths)) return first;
        ArrowHessian again = probe.Measure(lengths);
        again.Gradients += first.Gradients;
        return again;
    }

    /// <summary>Mean of several matrices of one layout; its gradients are theirs together.</summary>
    /// <exception cref="ArgumentException">There is none, or one has entries that are not finite.</exception>
    public static ArrowHessian Mean(IReadOnlyList<ArrowHessian> several)
    {
        if (several.Count == 0 || several.Any(h => !h.IsFinite)) throw new ArgumentException("A mean needs matrices that are finite.", nameof(several));
        ArrowHessian mean = new(several[0].Layout) { Gradients = several.Sum(h => h.Gradients) };
        foreach (ArrowHessian one in several)
        {
            Columns.AddScaled(one.GlobalGlobal, 1.0 / several.Count, mean.GlobalGlobal);
            Columns.AddScaled(one.LocalGlobal, 1.0 / several.Count, mean.LocalGlobal);
            Columns.AddScaled(one.BlockBlock, 1.0 / several.Count, mean.BlockBlock);
        }
        return mean;
    }

    /// <summary>The same in coordinates that are stretched: entry (i, j) times both factors.</summary>
    /// <param name="factors">Old length of a step of one in each new coordinate, <see cref="ArrowLayout.Dimension"/> numbers.</param>
    public ArrowHessian Scaled(ReadOnlySpan<double> factors)
    {
        ArrowHessian scaled = new(Layout) { IsFinite = IsFinite };
        int globals = Layout.Globals, locals = Layout.Locals;
        for (int g = 0; g < globals; g++)
        {
            for (int h = 0; h < globals; h++) scaled.GlobalGlobal[g * globals + h] = factors[g] * factors[h] * GlobalGlobal[g * globals + h];
            for (int l = 0; l < locals; l++) scaled.LocalGlobal[g * locals + l] = factors[g] * factors[globals + l] * LocalGlobal[g * locals + l];
        }
        for (int b = 0; b < Layout.Blocks; b++)
        {
            int size = Layout.Size(b), start = globals + Layout.Start(b), entries = Layout.EntryStart(b);
            for (int i = 0; i < size; i++)
                for (int j = 0; j < size; j++) scaled.BlockBlock[entries + i * size + j] = factors[start + i] * factors[start + j] * BlockBlock[entries + i * size + j];
        }
        return scaled;
    }

    /// <summary>Adds to H_ii of a coordinate.</summary>
    /// <param name="coordinate">0 to <see cref="ArrowLayout.Dimension"/> − 1.</param>
    /// <param name="value">What is added.</param>
    public void AddToDiagonal(int coordinate, double value)
    {
        if (coordinate < Layout.Globals)
        {
            GlobalGlobal[coordinate * Layout.Globals + coordinate] += value;
            return;
        }
        int block = BlockOf(coordinate), within = coordinate - Layout.Globals - Layout.Start(block);
        BlockBlock[Layout.EntryStart(block) + within * Layout.Size(block) + within] += value;
    }

    /// <summary>y = H x.</summary>
    /// <param name="x">Vector, <see cref="ArrowLayout.Dimension"/> numbers.</param>
    /// <param name="y">Receives the product, as many; not the same memory as <paramref name="x"/>.</param>
    public void Multiply(ReadOnlySpan<double> x, Span<double> y)
    {
        int globals = Layout.Globals;
        y.Clear();
        Columns.AddProduct(GlobalGlobal, x[..globals], 1, y[..globals]);
        Columns.AddTransposedProduct(LocalGlobal, x[globals..], 1, y[..globals]);
        Columns.AddProduct(LocalGlobal, x[..globals], 1, y[globals..]);
        for (int b = 0; b < Layout.Blocks; b++)
        {
            int size = Layout.Size(b), start = globals + Layout.Start(b), entries = Layout.EntryStart(b);
            for (int i = 0; i < size; i++)
                for (int j = 0; j < size; j++) y[start + i] += BlockBlock[entries + i * size + j] * x[start + j];
        }
    }

    /// <summary>H_ii of a coordinate.</summary>
    public double Diagonal(int coordinate) => Diagonal(coordinate, BlockOf(coordinate));

    /// <summary>The known entries of a row besides the diagonal: column and value.</summary>
    public IEnumerable<(int Column, double Value)> Row(int coordinate)
    {
        int globals = Layout.Globals, block = BlockOf(coordinate), local = coordinate - globals;
        for (int g = 0; g < globals; g++)
            if (g != coordinate)
                yield return (g, block < 0 ? GlobalGlobal[coordinate * globals + g] : LocalGlobal[g * Layout.Locals + local]);
        if (block < 0)
        {
            for (int i = 0; i < Layout.Locals; i++) yield return (globals + i, LocalGlobal[coordinate * Layout.Locals + i]);
            yield break;
        }
        int size = Layout.Size(block), start = Layout.Start(block), entries = Layout.EntryStart(block) + (local - start) * size;
        for (int i = 0; i < size; i++)
            if (start + i != local)
                yield return (globals + start + i, BlockBlock[entries + i]);
    }

    internal int BlockOf(int coordinate)
    {
        int block = -1;
        while (block + 1 < Layout.Blocks && coordinate >= Layout.Globals + Layout.Start(block + 1)) block++;
        return block;
    }

    /// <summary>H_ii of a coordinate of the position.</summary>
    /// <param name="coordinate">0 to <see cref="ArrowLayout.Dimension"/> − 1.</param>
    /// <param name="block">Block of the coordinate; ignored for a global.</param>
    double Diagonal(int coordinate, int block)
    {
        if (coordinate < Layout.Globals) return GlobalGlobal[coordinate * Layout.Globals + coordinate];
        int within = coordinate - Layout.Globals - Layout.Start(block);
        return BlockBlock[Layout.EntryStart(block) + within * Layout.Size(block) + within];
    }

    /// <summary>Writes H_ii of all coordinates.</summary>
    /// <param name="diagonal">Receives <see cref="ArrowLayout.Dimension"/> numbers.</param>
    public void CopyDiagonal(Span<double> diagonal)
    {
        for (int g = 0; g < Layout.Globals; g++) diagonal[g] = Diagonal(g, -1);
        for (int b = 0; b < Layout.Blocks; b++)
            for (int i = 0; i < Layout.Size(b); i++)
                diagonal[Layout.Globals + Layout.Start(b) + i] = Diagonal(Layout.Globals + Layout.Start(b) + i, b);
    }

    /// <summary>Sets each length to the standard deviation given the others, 1/√|H_ii|, kept within 1e-8 to 1e3.</summary>
    /// <param name="lengths">Lengths so far, then the better ones.</param>
    /// <param name="tolerance">A factor, more than 1.</param>
    /// <returns>Whether a length was off by more than that factor.</returns>
    internal bool ImproveScales(Span<double> lengths, double tolerance = 10)
    {
        double[] diagonal = new double[Layout.Dimension];
        CopyDiagonal(diagonal);
        bool off = false;
        for (int i = 0; i < diagonal.Length; i++)
        {
            double length = Math.Clamp(1 / Math.Sqrt(Math.Abs(diagonal[i])), 1e-8, 1e3);
            off |= length > tolerance * lengths[i] || lengths[i] > tolerance * length;
            lengths[i] = length;
        }
        return off;
    }
}
