namespace Coolproof.Sampling.Laplace;

/// <summary>
/// Limited-memory BFGS step for climbing, with an arrow factor as the first guess of the curvature (Nocedal and Wright 2006, "Numerical
/// Optimization", algorithm 7.4).
/// </summary>
sealed class QuasiNewton(ArrowFactor factor)
{
    /// <summary>Moves remembered; more only help where the arrow leaves out much coupling.</summary>
    const int Memory = 30;

    readonly List<(double[] Move, double[] Drop, double Product)> _pairs = [];

    /// <summary>The first guess of the curvature; may be changed between steps.</summary>
    public ArrowFactor Factor { get; set; } = factor;

    /// <summary>Remembers a move and how much the gradient dropped over it; passed over where the density isn't concave along it.</summary>
    public void Learn(ReadOnlySpan<double> from, ReadOnlySpan<double> to, ReadOnlySpan<double> gradientFrom, ReadOnlySpan<double> gradientTo)
    {
        double[] move = new double[from.Length], drop = new double[from.Length];
        for (int i = 0; i < move.Length; i++)
        {
            move[i] = to[i] - from[i];
            drop[i] = gradientFrom[i] - gradientTo[i];
        }
        double product = Columns.Dot(move, drop);
        if (!(product > 1e-12 * Math.Sqrt(Columns.Dot(move, move) * Columns.Dot(drop, drop)))) return;
        if (_pairs.Count == Memory) _pairs.RemoveAt(0);
        _pairs.Add((move, drop, product));
    }

    /// <summary>An ascent direction of natural length.</summary>
    public double[] Step(ReadOnlySpan<double> gradient)
    {
        double[] rest = gradient.ToArray(), step = new double[rest.Length];
        double[] shares = new double[_pairs.Count];
        for (int k = _pairs.Count - 1; k >= 0; k--)
        {
            shares[k] = Columns.Dot(_pairs[k].Move, rest) / _pairs[k].Product;
            Columns.AddScaled(_pairs[k].Drop, -shares[k], rest);
        }
        Factor.Solve(rest, step);
        for (int k = 0; k < _pairs.Count; k++)
            Columns.AddScaled(_pairs[k].Move, shares[k] - Columns.Dot(_pairs[k].Drop, step) / _pairs[k].Product, step);
        return step;
    }
}
