namespace Coolproof.Sampling.Classical;

/// <summary>The state of one search.</summary>
internal sealed class LevenbergMarquardtSearch(ResidualFunction residuals, JacobianFunction jacobian, int n, double[] point,
    LevenbergMarquardtOptions options)
{
    readonly int _p = point.Length;
    readonly double[] _jacobian = new double[n * point.Length];
    readonly double[] _scales = new double[point.Length];
    double[] _residuals = new double[n];
    double[] _trial = new double[n];
    double _norm;
    double _radius;
    double _lambda;
    int _iterations;
    int _evaluations;

    public NonlinearFit Run()
    {
        if (n < _p) return Failed(FitOutcome.TooFewResiduals, $"{n} residuals cannot determine {_p} parameters.");
        _norm = Evaluate(point, _residuals);
        if (!double.IsFinite(_norm)) return Failed(FitOutcome.StartNotFinite, $"A residual at the start ({Show(point)}) is not finite.");
        while (_iterations < options.MaxIterations)
        {
            if (!EvaluateJacobian()) return Failed(FitOutcome.JacobianNotFinite, $"A derivative at ({Show(point)}) is not finite.");
            var columns = Columns();
            UpdateScales(columns);
            if (_norm == 0 || LargestCosine(columns) <= options.GradientTolerance) return Polished();
            var qr = new PivotedQr(columns, (double[])_residuals.Clone());
            switch (TryUntilLower(qr))
            {
                case Progress.Settled: return Polished();
                case Progress.Stuck:
                    return Failed(FitOutcome.NoDescent, $"No step from ({Show(point)}) lowers the sum of squares {_norm * _norm:R}.");
            }
        }
        return Failed(FitOutcome.IterationLimit, $"No minimum within {options.MaxIterations} iterations.");
    }

    enum Progress
    {
        Lower, Settled, Stuck
    }

    // Shrinks the trust region until a step lowers the sum of squares or nothing is left to gain (Moré 1978, sections 4 and 6).
    Progress TryUntilLower(PivotedQr qr)
    {
        while (true)
        {
            double[] step;
            (_lambda, step) = TrustRegionStep.Find(qr, _scales, _radius, _lambda);
            var length = TrustRegionStep.ScaledNorm(step, _scales);
            if (_iterations == 1) _radius = Math.Min(_radius, length);
            var next = new double[_p];
            for (var j = 0; j < _p; j++) next[j] = point[j] + step[j];
            var norm = Evaluate(next, _trial);

            var actual = norm < 10 * _norm ? 1 - norm / _norm * (norm / _norm) : -1;
            var linear = LinearNorm(qr, step) / _norm;
            var damping = Math.Sqrt(_lambda) * length / _norm;
            var predicted = linear * linear + damping * damping * 2;
            var ratio = predicted == 0 ? 0 : actual / predicted;
            Resize(ratio, actual, -(linear * linear + damping * damping), length);

            if (ratio >= 1e-4)
            {
                point = next;
                (_residuals, _trial) = (_trial, _residuals);
                _norm = norm;
            }
            var small = Math.Abs(actual) <= options.FunctionTolerance && predicted <= options.FunctionTolerance && ratio <= 2;
            if (small || _radius <= options.StepTolerance * TrustRegionStep.ScaledNorm(point, _scales)) return Progress.Settled;
            if (ratio >= 1e-4) return Progress.Lower;
            if (_radius == 0 || !double.IsFinite(_radius)) return Progress.Stuck;
        }
    }

    void Resize(double ratio, double actual, double slope, double length)
    {
        if (ratio <= 0.25)
        {
            var factor = actual >= 0 ? 0.5 : 0.5 * slope / (slope + 0.5 * actual);
            if (actual <= -1 || factor < 0.1 || double.IsNaN(factor)) factor = 0.1;
            _radius = factor * Math.Min(_radius, length * 10);
            _lambda /= factor;
        }
        else if (_lambda == 0 || ratio >= 0.75)
        {
            _radius = length * 2;
            _lambda *= 0.5;
        }
    }

    // Gauss-Newton steps solved in double-double for as long as they contract.
    NonlinearFit Polished()
    {
        var previous = double.PositiveInfinity;
        var (best, bestResiduals, bestNorm) = (point, (double[])_residuals.Clone(), _norm);
        for (var i = 0; i < 200 && EvaluateJacobian(); i++)
        {
            var fit = LinearLeastSquares.Fit(WideColumns(), _residuals);
            if (fit.Kept.Count < _p) break;
            var step = fit.Coefficients.Select(c => -c).ToArray();
            var length = TrustRegionStep.ScaledNorm(step, _scales);
            if (!(length < 0.95 * previous) || length == 0) break;
            previous = length;
            point = [.. point.Zip(step, (x, s) => x + s)];
            _norm = Evaluate(point, _residuals);
            // A sum of squares above the rounding of the best one is a step in the wrong direction.
            if (!(_norm * _norm <= bestNorm * bestNorm * (1 + 1e-9) + 1e-30 * n)) break;
            (best, bestResiduals, bestNorm) = (point, (double[])_residuals.Clone(), _norm);
        }
        (point, _residuals, _norm) = (best, bestResiduals, bestNorm);
        return Finished();
    }

    NonlinearFit Finished()
    {
        if (!EvaluateJacobian()) return Failed(FitOutcome.JacobianNotFinite, $"A derivative at ({Show(point)}) is not finite.");
        var fit = LinearLeastSquares.Fit(WideColumns(), _residuals);
        var sd = ResidualSd();
        // The covariance of the linearised model, rescaled from its own residual standard deviation to that of the residuals themselves.
        var scale = fit.ResidualSd > 0 ? sd / fit.ResidualSd : 0;
        var determined = Enumerable.Range(0, _p).Select(j => fit.Contrast([.. Enumerable.Range(0, _p).Select(k => k == j ? 1.0 : 0.0)]).Caveat
            != ContrastCaveat.Confounded).ToArray();
        var covariance = new double[_p, _p];
        for (var i = 0; i < _p; i++)
        {
            for (var j = 0; j < _p; j++)
            {
                covariance[i, j] = n > _p && determined[i] && determined[j] ? fit.Covariance(i, j) * scale * scale : double.NaN;
            }
        }
        var lost = Enumerable.Range(0, _p).Except(fit.Kept).ToArray();
        var (outcome, reason) = lost.Length == 0
            ? (FitOutcome.Converged, $"Minimum after {_iterations} iterations.")
            : (FitOutcome.Unidentified, $"The fit does not change with parameter {string.Join(", ", lost)}, alone or together with others.");
        return Result(outcome, reason, covariance);
    }

    NonlinearFit Failed(FitOutcome outcome, string reason)
    {
        var covariance = new double[_p, _p];
        for (var i = 0; i < _p; i++)
        {
            for (var j = 0; j < _p; j++) covariance[i, j] = double.NaN;
        }
        return Result(outcome, reason, covariance);
    }

    NonlinearFit Result(FitOutcome outcome, string reason, double[,] covariance) => new(outcome, reason, point,
        [.. Enumerable.Range(0, _p).Select(j => Math.Sqrt(covariance[j, j]))], covariance, _norm * _norm, ResidualSd(), Math.Max(0, n - _p),
        _iterations, _evaluations);

    double ResidualSd() => n > _p ? _norm / Math.Sqrt(n - _p) : double.NaN;

    double Evaluate(double[] at, double[] into)
    {
        residuals(at, into);
        _evaluations++;
        var norm = PivotedQr.Norm(into);
        return Array.TrueForAll(into, double.IsFinite) && double.IsFinite(norm) ? norm : double.PositiveInfinity;
    }

    bool EvaluateJacobian()
    {
        jacobian(point, _jacobian);
        _iterations++;
        return Array.TrueForAll(_jacobian, double.IsFinite);
    }

    double[][] Columns() => [.. Enumerable.Range(0, _p).Select(j => Enumerable.Range(0, n).Select(i => _jacobian[i * _p + j]).ToArray())];

    DoubleDouble[][] WideColumns() => [.. Columns().Select(column => Array.ConvertAll(column, value => (DoubleDouble)value))];

    void UpdateScales(double[][] columns)
    {
        for (var j = 0; j < _p; j++)
        {
            var norm = PivotedQr.Norm(columns[j]);
            _scales[j] = _iterations == 1 && norm == 0 ? 1 : Math.Max(_scales[j], norm);
        }
        if (_iterations > 1) return;
        var length = TrustRegionStep.ScaledNorm(point, _scales);
        _radius = options.RadiusFactor * (length == 0 ? 1 : length);
    }

    double LargestCosine(double[][] columns)
    {
        var largest = 0.0;
        foreach (var column in columns)
        {
            var norm = PivotedQr.Norm(column);
            if (norm == 0) continue;
            var dot = 0.0;
            for (var i = 0; i < n; i++) dot += column[i] / norm * (_residuals[i] / _norm);
            largest = Math.Max(largest, Math.Abs(dot));
        }
        return largest;
    }

    // ‖J p‖ by way of R.
    double LinearNorm(PivotedQr qr, double[] step)
    {
        var image = new double[_p];
        for (var k = 0; k < _p; k++)
        {
            for (var i = 0; i <= k; i++) image[i] += qr.R[i, k] * step[qr.Permutation[k]];
        }
        return PivotedQr.Norm(image);
    }

    static string Show(double[] values) => string.Join(", ", values.Select(v => v.ToString("R", System.Globalization.CultureInfo.InvariantCulture)));
}
