namespace Coolproof.Sampling.Laplace;

/// <summary>Differences of the gradient about one position, gathered into an <see cref="ArrowHessian"/>.</summary>
sealed class HessianProbe
{
    readonly ArrowLayout _layout;
    readonly double[] _centre;
    readonly double[] _steps;
    readonly GradientPair[] _pairs;
    readonly int[][] _groups;

    /// <summary>A probe.</summary>
    /// <param name="density">The density.</param>
    /// <param name="layout">Order of the coordinates.</param>
    /// <param name="position">Where.</param>
    /// <param name="second">Another instance of the density, for a second thread; the figures are the same. Null: one thread does it all.</param>
    public HessianProbe(LogDensity density, ArrowLayout layout, ReadOnlySpan<double> position, LogDensity? second = null)
    {
        if (position.Length != layout.Dimension)
            throw new ArgumentException($"{position.Length} numbers where the layout has {layout.Dimension}.", nameof(position));
        _layout = layout;
        _centre = position.ToArray();
        _steps = new double[layout.Dimension];
        _pairs = [.. (second is null ? [density] : (LogDensity[])[density, second]).Select(d => new GradientPair(d, _centre, _steps))];
        _groups = [.. Enumerable.Range(0, layout.Globals).Select(g => (int[])[g]), .. BlockGroups()];
    }

    /// <summary>
    /// The same by one-sided differences, from the gradient at a new centre: half the gradients, an error of about 1e-4 of √(H_ii H_jj).
    /// </summary>
    public ArrowHessian MeasureOneSided(ReadOnlySpan<double> centre, ReadOnlySpan<double> gradient, ReadOnlySpan<double> scales)
    {
        centre.CopyTo(_centre);
        foreach (GradientPair pair in _pairs) pair.StartOneSided(gradient);
        return Measured(scales, oneSided: true);
    }

    public ArrowHessian Measure(ReadOnlySpan<double> scales) => Measured(scales, oneSided: false);

    ArrowHessian Measured(ReadOnlySpan<double> scales, bool oneSided)
    {
        if (scales.Length != _layout.Dimension)
            throw new ArgumentException($"{scales.Length} numbers where the layout has {_layout.Dimension}.", nameof(scales));
        ArrowHessian hessian = new(_layout);
        foreach (GradientPair pair in _pairs) pair.Gradients = 0;
        hessian.IsFinite = All(scales, hessian, oneSided);
        hessian.Gradients = _pairs.Sum(pair => pair.Gradients);
        Symmetrise(hessian.GlobalGlobal, _layout.Globals);
        for (int b = 0; b < _layout.Blocks; b++)
            Symmetrise(hessian.BlockBlock.AsSpan(_layout.EntryStart(b)), _layout.Size(b));
        return hessian;
    }

    // Each group fills entries of its own.
    bool All(ReadOnlySpan<double> scales, ArrowHessian hessian, bool oneSided)
    {
        if (_pairs.Length == 1)
        {
            foreach (int[] group in _groups)
                if (!Fill(_pairs[0], group, scales, hessian, oneSided)) return false;
            return true;
        }
        double[] lengths = scales.ToArray();
        bool finite = true;
        Parallel.For(0, _pairs.Length, hand =>
        {
            for (int i = hand; i < _groups.Length && Volatile.Read(ref finite); i += _pairs.Length)
                if (!Fill(_pairs[hand], _groups[i], lengths, hessian, oneSided)) Volatile.Write(ref finite, false);
        });
        return finite;
    }

    bool Fill(GradientPair pair, int[] group, ReadOnlySpan<double> scales, ArrowHessian hessian, bool oneSided)
    {
        if (!pair.Differ(group, scales, oneSided)) return false;
        if (group[0] < _layout.Globals)
            FillGlobal(pair, hessian, group[0], oneSided);
        else
            foreach (int coordinate in group) FillRow(pair, hessian, coordinate, oneSided);
        return true;
    }

    void FillGlobal(GradientPair pair, ArrowHessian hessian, int g, bool oneSided)
    {
        int globals = _layout.Globals;
        double factor = PerStep(g, oneSided);
        for (int j = 0; j < globals; j++) hessian.GlobalGlobal[g * globals + j] = factor * (pair.Up[j] - pair.Down[j]);
        Span<double> column = hessian.LocalGlobal.AsSpan(g * _layout.Locals, _layout.Locals);
        for (int l = 0; l < column.Length; l++) column[l] = factor * (pair.Up[globals + l] - pair.Down[globals + l]);
    }

    void FillRow(GradientPair pair, ArrowHessian hessian, int coordinate, bool oneSided)
    {
        int block = hessian.BlockOf(coordinate), size = _layout.Size(block), start = _layout.Globals + _layout.Start(block);
        double factor = PerStep(coordinate, oneSided);
        Span<double> row = hessian.BlockBlock.AsSpan(_layout.EntryStart(block) + (coordinate - start) * size, size);
        for (int r = 0; r < size; r++) row[r] = factor * (pair.Up[start + r] - pair.Down[start + r]);
    }

    // The s-th locals of all even blocks, and of all odd ones.
    IEnumerable<int[]> BlockGroups()
    {
        for (int s = 0; s < _layout.LargestBlock; s++)
        {
            for (int parity = 0; parity < 2; parity++)
            {
                List<int> group = [];
                for (int b = parity; b < _layout.Blocks; b += 2)
                    if (s < _layout.Size(b)) group.Add(_layout.Globals + _layout.Start(b) + s);
                if (group.Count > 0) yield return [.. group];
            }
        }
    }

    double PerStep(int coordinate, bool oneSided) => (oneSided ? -1 : -0.5) / _steps[coordinate];

    static void Symmetrise(Span<double> matrix, int n)
    {
        for (int i = 0; i < n; i++)
            for (int j = 0; j < i; j++)
                matrix[i * n + j] = matrix[j * n + i] = 0.5 * (matrix[i * n + j] + matrix[j * n + i]);
    }
}
