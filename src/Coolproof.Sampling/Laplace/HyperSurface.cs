namespace Coolproof.Sampling.Laplace;

/// <summary>
/// What the sampled globals φ do to the rest ψ, interpolated between a centre and points along each whitened axis: the integral over ψ, its mode and its
/// curvature. Mixed terms are left out of all but the curvature of the integral.
/// </summary>
sealed class HyperSurface
{
    /// <summary>The outer points, standard deviations from the centre; beyond them curvature stays as it is there.</summary>
    const double Far = 2.5;

    /// <summary>A drop this large is taken where a point can't be evaluated.</summary>
    const double CliffDrop = 8;

    /// <summary>Where the points of an axis lie; the outer two only when asked for.</summary>
    static readonly double[] s_places = [1, -1, Far, -Far];

    readonly InnerNode?[][] _nodes;
    readonly FactorBlend[] _blends;
    readonly int _places;

    /// <summary>Measures it.</summary>
    /// <param name="frame">Centre and axes.</param>
    /// <param name="centre">The rest at the centre.</param>
    /// <param name="far">Whether to measure the outer points too.</param>
    /// <param name="integrate">The rest at another φ; null where it can't be had.</param>
    public HyperSurface(HyperFrame frame, InnerNode centre, bool far, Func<double[], InnerNode?> integrate)
    {
        (Frame, Centre) = (frame, centre);
        _places = far ? 4 : 2;
        _nodes = new InnerNode?[frame.Count][];
        _blends = new FactorBlend[_places * frame.Count + 1];
        _blends[0] = new FactorBlend(centre.Factor);
        double[] z = new double[frame.Count];
        for (int k = 0; k < frame.Count; k++)
        {
            _nodes[k] = new InnerNode?[_places];
            for (int p = 0; p < _places; p++)
            {
                z[k] = s_places[p];
                // An outer point that can't be had is taken to be as the inner one on its side, and that as the centre.
                _nodes[k][p] = integrate(frame.ToSampled(z)) ?? (p >= 2 ? _nodes[k][p - 2] : null);
                _blends[1 + k * _places + p] = new FactorBlend((_nodes[k][p] ?? centre).Factor);
            }
            z[k] = 0;
        }
    }

    /// <summary>Centre and axes.</summary>
    public HyperFrame Frame { get; }

    /// <summary>The rest at the centre.</summary>
    public InnerNode Centre { get; }

    /// <summary>How far the integral over ψ drops one standard deviation up and down an axis.</summary>
    public (double Up, double Down) Drops(int axis) =>
        (Centre.LogIntegral - _nodes[axis][0]?.LogIntegral ?? CliffDrop, Centre.LogIntegral - _nodes[axis][1]?.LogIntegral ?? CliffDrop);

    /// <summary>Whether z lies within the points measured, so that the curvature there is interpolated.</summary>
    public bool Covers(ReadOnlySpan<double> z)
    {
        foreach (double t in z)
            if (Math.Abs(t) > (_places == 2 ? 1 : Far)) return false;
        return true;
    }

    /// <summary>Mode of ψ given φ(z), near enough.</summary>
    public double[] Rest(ReadOnlySpan<double> z)
    {
        double[] rest = [.. Centre.Rest];
        Span<double> weights = stackalloc double[_places];
        for (int k = 0; k < z.Length; k++)
        {
            Weigh(z[k], weights);
            // Straight on beyond the outer points.
            double beyond = 0.5 * (z[k] - Math.Clamp(z[k], -Far, Far));
            weights[0] += beyond;
            weights[1] -= beyond;
            for (int p = 0; p < _places; p++)
            {
                if (_nodes[k][p] is not { } node) continue;
                Columns.AddScaled(node.Rest, weights[p], rest);
                Columns.AddScaled(Centre.Rest, -weights[p], rest);
            }
        }
        return rest;
    }

    /// <summary>Factor of the curvature of ψ given φ(z), near enough.</summary>
    public ArrowFactor Factor(ReadOnlySpan<double> z)
    {
        double[] weights = new double[_blends.Length];
        for (int k = 0; k < z.Length; k++) Weigh(z[k], weights.AsSpan(1 + k * _places, _places));
        weights[0] = 1 - weights.Sum();
        return FactorBlend.Sum(weights, _blends);
    }

    /// <summary>Gradient and minus the second derivatives by z of the integral over ψ, the latter row by row.</summary>
    /// <param name="profileGradient">Gradient by φ of the profile, for the mixed derivatives.</param>
    public (double[] Gradient, double[] Precision) Derivatives(Func<InnerNode, double[]> profileGradient)
    {
        int n = Frame.Count;
        double[] gradient = new double[n], precision = new double[n * n];
        for (int k = 0; k < n; k++)
        {
            (double dropUp, double dropDown) = Drops(k);
            gradient[k] = 0.5 * (dropDown - dropUp);
            if (_nodes[k] is [{ } up, { } down, ..])
            {
                double[] above = Frame.PullBack(profileGradient(up)), below = Frame.PullBack(profileGradient(down));
                for (int j = 0; j < n; j++)
                {
                    if (j == k) continue;
                    double half = 0.25 * (below[j] - above[j]);
                    precision[k * n + j] += half;
                    precision[j * n + k] += half;
                }
            }
        }
        for (int k = 0; k < n; k++) precision[k * n + k] = Drops(k).Up + Drops(k).Down;
        return (gradient, precision);
    }

    /// <summary>
    /// Weights of an axis's points in place of the centre: the parabola through the centre and the inner two; with outer points it goes over, towards an inner
    /// one, into the parabola through the centre and the two points of that side.
    /// </summary>
    void Weigh(double z, Span<double> weights)
    {
        double t = Math.Clamp(z, -Far, Far);
        weights[0] = 0.5 * t * (t + 1);
        weights[1] = 0.5 * t * (t - 1);
        if (_places == 2) return;
        int side = t >= 0 ? 0 : 1;
        double size = Math.Abs(t), share = Math.Min(size, 1);
        weights[0] *= 1 - share;
        weights[1] *= 1 - share;
        weights[side] += share * size * (size - Far) / (1 - Far);
        weights[2 + side] = share * size * (size - 1) / (Far * (Far - 1));
        weights[3 - side] = 0;
    }
}
