namespace Coolproof.Sampling.Laplace;

/// <summary>Whitened coordinates z of the sampled globals: φ = centre + U z, U upper triangular.</summary>
sealed class HyperFrame
{
    readonly double[] _centre;
    readonly double[] _scale;

    /// <param name="centre">φ at z = 0.</param>
    /// <param name="scale">U, column by column.</param>
    public HyperFrame(ReadOnlySpan<double> centre, ReadOnlySpan<double> scale) => (_centre, _scale) = (centre.ToArray(), scale.ToArray());

    /// <summary>Number of sampled globals.</summary>
    public int Count => _centre.Length;

    /// <summary>log |det U|.</summary>
    public double LogScale
    {
        get
        {
            double sum = 0;
            for (int k = 0; k < Count; k++) sum += Math.Log(Math.Abs(_scale[k * Count + k]));
            return sum;
        }
    }

    /// <summary>φ from z.</summary>
    public double[] ToSampled(ReadOnlySpan<double> z)
    {
        double[] sampled = [.. _centre];
        Columns.AddProduct(_scale, z, 1, sampled);
        return sampled;
    }

    /// <summary>z from φ.</summary>
    public double[] FromSampled(ReadOnlySpan<double> sampled)
    {
        double[] z = new double[Count];
        for (int i = Count - 1; i >= 0; i--)
        {
            double sum = sampled[i] - _centre[i];
            for (int j = i + 1; j < Count; j++) sum -= _scale[j * Count + i] * z[j];
            z[i] = sum / _scale[i * Count + i];
        }
        return z;
    }

    /// <summary>U'g, a gradient by z from one by φ.</summary>
    public double[] PullBack(ReadOnlySpan<double> gradient)
    {
        double[] byZ = new double[Count];
        Columns.AddTransposedProduct(_scale, gradient, 1, byZ);
        return byZ;
    }

    /// <summary>The frame about another centre, whitened further by a precision in z with lower Cholesky factor L: U ← U L⁻ᵀ.</summary>
    /// <param name="centre">φ at the new z = 0.</param>
    /// <param name="lower">L, row by row.</param>
    public HyperFrame Refined(ReadOnlySpan<double> centre, ReadOnlySpan<double> lower)
    {
        int n = Count;
        double[] scale = [.. _scale];
        // Column k of U L⁻ᵀ: (U_k − Σ_{j<k} L_kj new_j) / L_kk.
        for (int k = 0; k < n; k++)
        {
            Span<double> column = scale.AsSpan(k * n, n);
            for (int j = 0; j < k; j++) Columns.AddScaled(scale.AsSpan(j * n, n), -lower[k * n + j], column);
            foreach (ref double entry in column) entry /= lower[k * n + k];
        }
        return new HyperFrame(centre, scale);
    }
}
