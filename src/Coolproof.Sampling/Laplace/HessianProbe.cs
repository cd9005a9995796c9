namespace Coolproof.Sampling.Laplace;

/// <summary>Differences of the gradient about one position, gathered into an <see cref="ArrowHessian"/>.</summary>
sealed class HessianProbe
{
    /// <summary>
    /// Step as a share of a standard deviation. The error of a central difference is about step²/6 from the fourth derivative, and rounding of the
    /// gradient (some 1e-14 in these units) over the step: about 1e-9 together.
    /// </summary>
    const double StepShare = 6e-5;

    /// <summary>Times a step that leads out of the support is divided by sixteen before giving up.</summary>
    const int Shrinks = 4;

    readonly LogDensity _density;
    readonly ArrowLayout _layout;
    readonly double[] _centre;
    readonly double[] _moved;
    readonly double[] _steps;
    readonly double[] _up;
    readonly double[] _down;
    readonly List<int> _group = [];
    bool _oneSided;
    int _gradients;

    public HessianProbe(LogDensity density, ArrowLayout layout, ReadOnlySpan<double> position)
    {
        if (position.Length != layout.Dimension)
            throw new ArgumentException($"{position.Length} numbers where the layout has {layout.Dimension}.", nameof(position));
        _density = density;
        _layout = layout;
        _centre = position.ToArray();
        _moved = position.ToArray();
        _steps = new double[layout.Dimension];
        _up = new double[layout.Dimension];
        _down = new double[layout.Dimension];
    }

    /// <summary>
    /// The same by one-sided differences, from the gradient at a new centre: half the gradients, an error of about 1e-4 of √(H_ii H_jj).
    /// </summary>
    public ArrowHessian MeasureOneSided(ReadOnlySpan<double> centre, ReadOnlySpan<double> gradient, ReadOnlySpan<double> scales)
    {
        centre.CopyTo(_centre);
        centre.CopyTo(_moved);
        gradient.CopyTo(_down);
        _oneSided = true;
        ArrowHessian hessian = Measure(scales);
        _oneSided = false;
        return hessian;
    }

    public ArrowHessian Measure(ReadOnlySpan<double> scales)
    {
        if (scales.Length != _layout.Dimension)
            throw new ArgumentException($"{scales.Length} numbers where the layout has {_layout.Dimension}.", nameof(scales));
        ArrowHessian hessian = new(_layout);
        _gradients = 0;
        hessian.IsFinite = MeasureGlobals(scales, hessian) && MeasureBlocks(scales, hessian);
        hessian.Gradients = _gradients;
        return hessian;
    }

    bool MeasureGlobals(ReadOnlySpan<double> scales, ArrowHessian hessian)
    {
        int globals = _layout.Globals;
        for (int g = 0; g < globals; g++)
        {
            _group.Clear();
            _group.Add(g);
            if (!Differ(scales)) return false;
            double factor = PerStep(g);
            for (int j = 0; j < globals; j++) hessian.GlobalGlobal[g * globals + j] = factor * (_up[j] - _down[j]);
            Span<double> column = hessian.LocalGlobal.AsSpan(g * _layout.Locals, _layout.Locals);
            for (int l = 0; l < column.Length; l++) column[l] = factor * (_up[globals + l] - _down[globals + l]);
        }
        Symmetrise(hessian.GlobalGlobal, globals);
        return true;
    }

    bool MeasureBlocks(ReadOnlySpan<double> scales, ArrowHessian hessian)
    {
        for (int s = 0; s < _layout.LargestBlock; s++)
        {
            for (int parity = 0; parity < 2; parity++)
            {
                Gather(s, parity);
                if (_group.Count == 0) continue;
                if (!Differ(scales)) return false;
                for (int b = parity; b < _layout.Blocks; b += 2)
                    if (s < _layout.Size(b)) FillRow(hessian, b, s);
            }
        }
        for (int b = 0; b < _layout.Blocks; b++)
            Symmetrise(hessian.BlockBlock.AsSpan(_layout.EntryStart(b)), _layout.Size(b));
        return true;
    }

    void Gather(int s, int parity)
    {
        _group.Clear();
        for (int b = parity; b < _layout.Blocks; b += 2)
            if (s < _layout.Size(b)) _group.Add(_layout.Globals + _layout.Start(b) + s);
    }

    void FillRow(ArrowHessian hessian, int block, int s)
    {
        int size = _layout.Size(block), start = _layout.Globals + _layout.Start(block);
        double factor = PerStep(start + s);
        Span<double> row = hessian.BlockBlock.AsSpan(_layout.EntryStart(block) + s * size, size);
        for (int r = 0; r < size; r++) row[r] = factor * (_up[start + r] - _down[start + r]);
    }

    double PerStep(int coordinate) => (_oneSided ? -1 : -0.5) / _steps[coordinate];

    /// <summary>Gradients on both sides with the coordinates of the group moved; the steps made stand in <see cref="_steps"/>.</summary>
    bool Differ(ReadOnlySpan<double> scales)
    {
        double share = StepShare;
        for (int attempt = 0; attempt <= Shrinks; attempt++, share /= 16)
        {
            foreach (int i in _group)
            {
                // Rounded so that both moved coordinates are exact.
                double step = Math.Max(share * scales[i], 1e-12 * Math.Abs(_centre[i]));
                _steps[i] = _centre[i] + step - _centre[i];
            }
            bool finite = GradientAt(+1, _up) && (_oneSided || GradientAt(-1, _down));
            foreach (int i in _group) _moved[i] = _centre[i];
            if (finite) return true;
        }
        return false;
    }

    bool GradientAt(int side, double[] gradient)
    {
        foreach (int i in _group) _moved[i] = _centre[i] + side * _steps[i];
        _gradients++;
        if (!double.IsFinite(_density(_moved, gradient))) return false;
        foreach (double value in gradient)
            if (!double.IsFinite(value)) return false;
        return true;
    }

    static void Symmetrise(Span<double> matrix, int n)
    {
        for (int i = 0; i < n; i++)
            for (int j = 0; j < i; j++)
                matrix[i * n + j] = matrix[j * n + i] = 0.5 * (matrix[i * n + j] + matrix[j * n + i]);
    }
}
