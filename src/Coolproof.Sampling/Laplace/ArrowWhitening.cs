namespace Coolproof.Sampling.Laplace;

/// <summary>
/// Affine map from whitened coordinates z to positions θ that turns N(centre, H⁻¹) into N(0, 1):
/// θ_g = m_g + L_S⁻ᵀ z_g and θ_b = m_b + L_b⁻ᵀ z_b − H_bb⁻¹ H_bg (θ_g − m_g). An instance keeps a workspace: one per thread (see <see cref="Copy"/>).
/// </summary>
public sealed class ArrowWhitening
{
    readonly double[] _centre;
    readonly ArrowFactor _factor;
    readonly double[] _shift;

    /// <summary>The map about a point.</summary>
    /// <param name="centre">m, <see cref="ArrowLayout.Dimension"/> numbers.</param>
    /// <param name="factor">Factor of the curvature there.</param>
    /// <exception cref="ArgumentException">Length of <paramref name="centre"/>.</exception>
    public ArrowWhitening(ReadOnlySpan<double> centre, ArrowFactor factor)
    {
        if (centre.Length != factor.Layout.Dimension)
            throw new ArgumentException($"{centre.Length} numbers where the layout has {factor.Layout.Dimension}.", nameof(centre));
        _centre = centre.ToArray();
        _factor = factor;
        _shift = new double[factor.Layout.Globals];
    }

    /// <summary>The map about a mode.</summary>
    public ArrowWhitening(ArrowMode mode) : this(mode.Position, mode.Factor)
    {
    }

    /// <summary>Order of the coordinates.</summary>
    public ArrowLayout Layout => _factor.Layout;

    /// <summary>m.</summary>
    public ReadOnlySpan<double> Centre => _centre;

    /// <summary>log |det ∂θ/∂z| = −½ log det H.</summary>
    public double LogJacobian => -0.5 * _factor.LogDeterminant;

    /// <summary>The same map with a workspace of its own, for another thread.</summary>
    public ArrowWhitening Copy() => new(_centre, _factor);

    /// <summary>θ from z. No allocation.</summary>
    /// <param name="whitened">z.</param>
    /// <param name="position">Receives θ; not the same memory as <paramref name="whitened"/>.</param>
    public void ToPosition(ReadOnlySpan<double> whitened, Span<double> position)
    {
        int globals = _shift.Length;
        Array.Clear(_shift);
        Columns.AddProduct(_factor.GlobalInverse, whitened[..globals], 1, _shift);
        _centre.CopyTo(position);
        Columns.AddScaled(_shift, 1, position[..globals]);
        _factor.BlockInverse.AddProduct(whitened[globals..], position[globals..]);
        Columns.AddProduct(_factor.Regression, _shift, -1, position[globals..]);
    }

    /// <summary>Gradient by z from the gradient by θ. No allocation.</summary>
    /// <param name="gradientByPosition">∂/∂θ.</param>
    /// <param name="gradientByWhitened">Receives ∂/∂z; not the same memory.</param>
    public void PullBack(ReadOnlySpan<double> gradientByPosition, Span<double> gradientByWhitened)
    {
        int globals = _shift.Length;
        gradientByPosition[..globals].CopyTo(_shift);
        Columns.AddTransposedProduct(_factor.Regression, gradientByPosition[globals..], -1, _shift);
        gradientByWhitened.Clear();
        Columns.AddTransposedProduct(_factor.GlobalInverse, _shift, 1, gradientByWhitened[..globals]);
        _factor.BlockInverse.AddTransposedProduct(gradientByPosition[globals..], gradientByWhitened[globals..]);
    }

    /// <summary>z from θ, the inverse of <see cref="ToPosition"/>.</summary>
    /// <param name="position">θ.</param>
    /// <param name="whitened">Receives z; not the same memory.</param>
    public void FromPosition(ReadOnlySpan<double> position, Span<double> whitened)
    {
        int globals = _shift.Length;
        for (int i = 0; i < _centre.Length; i++) whitened[i] = position[i] - _centre[i];
        whitened[..globals].CopyTo(_shift);
        Columns.AddProduct(_factor.Regression, _shift, 1, whitened[globals..]);
        TransposedTriangle(_factor.GlobalCholesky, globals, whitened[..globals]);
        for (int b = 0; b < Layout.Blocks; b++)
        {
            int size = Layout.Size(b);
            ReadOnlySpan<double> lower = _factor.BlockCholesky.AsSpan(Layout.EntryStart(b), size * size);
            TransposedTriangle(lower, size, whitened.Slice(globals + Layout.Start(b), size));
        }
    }

    /// <summary>x = L' x in place, L lower triangular row by row.</summary>
    static void TransposedTriangle(ReadOnlySpan<double> lower, int n, Span<double> x)
    {
        for (int i = 0; i < n; i++)
        {
            double sum = 0;
            for (int k = i; k < n; k++) sum += lower[k * n + i] * x[k];
            x[i] = sum;
        }
    }
}
