namespace Coolproof.Sampling.Laplace;

/// <summary>
/// A multivariate t with a width of its own on either side of each axis, joined without a step (after the split t of Geweke 1989, "Bayesian inference in
/// econometric models using Monte Carlo integration").
/// </summary>
sealed class TwoPieceStudent
{
    /// <summary>Widths are kept within these, in standard deviations: a flat side isn't followed for ever, a steep one not cut off.</summary>
    const double Narrowest = 0.6;
    const double Widest = 3;

    readonly double _degreesOfFreedom;
    readonly double[] _up;
    readonly double[] _down;
    readonly double[] _sides;
    readonly double[] _sizes;

    /// <summary>With the widths that a surface has one standard deviation from its centre.</summary>
    public TwoPieceStudent(HyperSurface surface, double degreesOfFreedom)
    {
        int n = surface.Frame.Count;
        _degreesOfFreedom = degreesOfFreedom;
        (_up, _down, _sides, _sizes) = (new double[n], new double[n], new double[n], new double[n]);
        for (int k = 0; k < n; k++)
        {
            (double up, double down) = surface.Drops(k);
            (_up[k], _down[k]) = (Width(up), Width(down));
        }
    }

    /// <summary>Log density at the centre, its highest.</summary>
    public double LogTop
    {
        get
        {
            double log = Student.LogDensity(new double[_up.Length], _degreesOfFreedom);
            for (int k = 0; k < _up.Length; k++) log += Math.Log(2 / (_up[k] + _down[k]));
            return log;
        }
    }

    /// <summary>Draws z and returns its log density. Every second call takes the sizes of the one before and the opposite sides.</summary>
    public double Next(RandomStream random, bool mirrored, Span<double> z)
    {
        if (!mirrored)
        {
            random.FillNormal(_sizes);
            double stretch = Student.Stretch(random, _degreesOfFreedom);
            for (int k = 0; k < z.Length; k++) (_sizes[k], _sides[k]) = (stretch * Math.Abs(_sizes[k]), random.NextUniform());
        }
        double log = Student.LogDensity(_sizes, _degreesOfFreedom);
        for (int k = 0; k < z.Length; k++)
        {
            double side = mirrored ? 1 - _sides[k] : _sides[k], width = _up[k] + _down[k];
            z[k] = side * width < _up[k] ? _up[k] * _sizes[k] : -_down[k] * _sizes[k];
            log += Math.Log(2 / width);
        }
        return log;
    }

    static double Width(double drop) => Math.Clamp(1 / Math.Sqrt(Math.Max(2 * drop, 1e-9)), Narrowest, Widest);
}
