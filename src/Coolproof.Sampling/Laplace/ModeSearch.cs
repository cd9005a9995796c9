namespace Coolproof.Sampling.Laplace;

/// <summary>One search for a mode; see <see cref="ArrowMode.Find"/>.</summary>
sealed class ModeSearch
{
    /// <summary>Share of the predicted gain a step must bring (Armijo), the customary 1e-4.</summary>
    const double LeastShare = 1e-4;
    const int Backtracks = 8;
    const double LargestDamping = 1e8;

    readonly LogDensity _density;
    readonly ArrowLayout _layout;
    readonly ModeSettings _settings;
    double[] _position;
    double[] _gradient;
    double[] _trial;
    double[] _trialGradient;
    readonly double[] _scales;
    double _height;
    double _damping;
    int _gradients;
    int _hessians;
    QuasiNewton? _quasi;

    public ModeSearch(LogDensity density, ArrowLayout layout, ReadOnlySpan<double> start, ModeSettings settings)
    {
        if (start.Length != layout.Dimension)
            throw new ArgumentException($"{start.Length} numbers where the layout has {layout.Dimension}.", nameof(start));
        (_density, _layout, _settings) = (density, layout, settings);
        _position = start.ToArray();
        _gradient = new double[start.Length];
        _trial = new double[start.Length];
        _trialGradient = new double[start.Length];
        _scales = settings.Scales?.ToArray() ?? [];
        _gradients = 1;
        _height = density(_position, _gradient);
        if (!Usable(_height, _gradient)) throw new ArgumentException($"The log density at the start is {_height}.", nameof(start));
    }

    /// <summary>Below this a difference of two log densities is rounding.</summary>
    double Noise => 4e-13 * (1 + Math.Abs(_height));

    public ArrowMode Run()
    {
        double[] scales = _scales;
        ArrowHessian? known = _settings.Known;
        while (true)
        {
            ArrowHessian hessian = known ?? Measured(scales);
            known = null;
            if (!hessian.IsFinite) return Result(Flat(), double.NaN, "The gradient isn't finite next to the highest point reached.");
            if (scales.Length == 0) scales = new double[_layout.Dimension];
            bool settled = !hessian.ImproveScales(scales, 1.1) || _settings.Patient;
            ArrowFactor factor = ArrowFactor.Of(hessian, _settings.PriorPrecision);
            double shortfall = 0.5 * Columns.Dot(_gradient, Solved(factor));
            bool stationary = shortfall <= Math.Max(_settings.Tolerance, Noise);
            if (stationary && (factor.Escape is null || !Leave(factor.Escape))) return Result(hessian, shortfall, null);
            if (_hessians >= _settings.MaxHessians) return Result(hessian, shortfall, $"Not there after {_hessians} curvature matrices.");
            if (!stationary && !Climb(hessian, settled)) return Result(hessian, shortfall, "No step brings the log density higher: is it smooth, and its gradient right?");
        }
    }

    ArrowHessian Measured(double[] scales)
    {
        ArrowHessian hessian = _settings.Curvature?.Invoke(_position) ?? ArrowHessian.At(_density, _layout, _position, scales, _settings.Second);
        _gradients += hessian.Gradients;
        _hessians++;
        return hessian;
    }

    /// <summary>Steps with one matrix: a first one damped until it climbs, then quasi-Newton steps while they go well.</summary>
    /// <param name="hessian">Curvature here.</param>
    /// <param name="settled">Whether it is much what it was when last measured; then measuring it again is no use and many steps are.</param>
    bool Climb(ArrowHessian hessian, bool settled)
    {
        ArrowFactor factor = ArrowFactor.Of(hessian, _settings.PriorPrecision, damping: _damping);
        if (settled && _quasi is not null) _quasi.Factor = factor;
        else _quasi = new QuasiNewton(factor);
        double last = double.PositiveInfinity;
        for (int k = 0; k < (settled ? 20 : 1) * _settings.StepsPerHessian; k++)
        {
            double[] step = _quasi.Step(_gradient);
            double slope = Columns.Dot(_gradient, step);
            if (k > 0 && (0.5 * slope <= _settings.Tolerance || !settled && slope > 0.5 * last)) return true;
            last = slope;
            double share = Advance(step, slope);
            while (k == 0 && share == 0)
            {
                _damping = Math.Max(10 * _damping, 0.1);
                if (_damping > LargestDamping) return false;
                _quasi = new QuasiNewton(ArrowFactor.Of(hessian, _settings.PriorPrecision, damping: _damping));
                step = _quasi.Step(_gradient);
                share = Advance(step, Columns.Dot(_gradient, step));
            }
            if (share == 0 || share < (_settings.Patient ? 0 : settled ? 0.1 : 0.5)) return true;
            _damping = _damping > 0.05 ? _damping / 10 : 0;
        }
        return true;
    }

    /// <summary>Goes along a step, or half of it, or a quarter…</summary>
    /// <returns>The share of the step gone; 0 when none climbed.</returns>
    double Advance(double[] step, double slope)
    {
        double share = 1;
        for (int attempt = 0; attempt < Backtracks; attempt++, share *= 0.4)
        {
            for (int i = 0; i < step.Length; i++) _trial[i] = _position[i] + share * step[i];
            _gradients++;
            double height = _density(_trial, _trialGradient);
            if (!Usable(height, _trialGradient) || height < _height + LeastShare * share * slope - Noise) continue;
            _quasi?.Learn(_position, _trial, _gradient, _trialGradient);
            (_position, _trial) = (_trial, _position);
            (_gradient, _trialGradient) = (_trialGradient, _gradient);
            _height = height;
            return share;
        }
        return 0;
    }

    /// <summary>From a stationary point that bends upwards along a direction: a step along it, either way, if that is higher.</summary>
    bool Leave(double[] direction)
    {
        foreach (double length in (ReadOnlySpan<double>)[1, -1, 0.1, -0.1, 0.01, -0.01])
        {
            for (int i = 0; i < direction.Length; i++) _trial[i] = _position[i] + length * direction[i];
            _gradients++;
            double height = _density(_trial, _trialGradient);
            if (!Usable(height, _trialGradient) || height <= _height + 1e3 * Noise) continue;
            (_position, _trial) = (_trial, _position);
            (_gradient, _trialGradient) = (_trialGradient, _gradient);
            _height = height;
            return true;
        }
        return false;
    }

    double[] Solved(ArrowFactor factor)
    {
        double[] step = new double[_layout.Dimension];
        factor.Solve(_gradient, step);
        return step;
    }

    ArrowHessian Flat()
    {
        // Only so that the result has a curvature at all: the prior's, or 1.
        ArrowHessian flat = new(_layout);
        for (int g = 0; g < _layout.Globals; g++) flat.GlobalGlobal[g * _layout.Globals + g] = _settings.PriorPrecision?[g] ?? 1;
        for (int b = 0; b < _layout.Blocks; b++)
            for (int i = 0; i < _layout.Size(b); i++)
                flat.BlockBlock[_layout.EntryStart(b) + i * _layout.Size(b) + i] =
                    _settings.PriorPrecision?[_layout.Globals + _layout.Start(b) + i] ?? 1;
        return flat;
    }

    ArrowMode Result(ArrowHessian hessian, double shortfall, string? reason) => new(
        _position, _height, hessian, ArrowFactor.Of(hessian, _settings.PriorPrecision), shortfall, _gradients, _hessians, reason is null, reason);

    static bool Usable(double height, ReadOnlySpan<double> gradient) => double.IsFinite(height) && double.IsFinite(Columns.Dot(gradient, gradient));
}
