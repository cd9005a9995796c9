namespace Coolproof.Sampling.Laplace;

/// <summary>The marginal of the globals of a normal density with an arrow-shaped precision.</summary>
public sealed class GlobalsMarginal
{
    readonly double[] _upper;
    readonly double[] _root;

    GlobalsMarginal(double[] mean, double[] upper, double[] root, double logIntegral) => (Mean, _upper, _root, LogIntegral) = (mean, upper, root, logIntegral);

    /// <summary>log ∫ exp(b'θ − ½ θ'Hθ) dθ over globals and locals, without the 2π: ½ b'H⁻¹b − ½ log det H.</summary>
    public double LogIntegral { get; }

    /// <summary>Means.</summary>
    public double[] Mean { get; }

    /// <summary>Writes mean + L⁻ᵀ z.</summary>
    /// <param name="z">Standard normals, one a global.</param>
    /// <param name="draw">Receives the globals.</param>
    public void Draw(ReadOnlySpan<double> z, Span<double> draw)
    {
        int n = Mean.Length;
        for (int i = 0; i < n; i++) draw[i] = z[i] / _root[i];
        BackSubstitute(_upper, draw, n);
        for (int i = 0; i < n; i++) draw[i] += Mean[i];
    }

    /// <summary>From what is left of [[H, b], [b', −]] when the locals are eliminated: its upper triangle, which is overwritten.</summary>
    internal static GlobalsMarginal Of(double[] corner, double[] least, double logPivots)
    {
        int globals = least.Length, width = globals + 1;
        double[] mean = new double[globals], root = new double[globals];
        for (int i = 0; i < globals; i++)
        {
            Span<double> row = corner.AsSpan(i * width, width);
            double pivot = Math.Max(row[i], least[i]);
            logPivots += Math.Log(pivot);
            root[i] = Math.Sqrt(pivot);
            if (row[i] < least[i]) row[(i + 1)..].Clear();
            for (int j = i + 1; j < width; j++)
                if (row[j] != 0) Columns.AddScaled(row[j..], -row[j] / pivot, corner.AsSpan(j * width + j, width - j));
            for (int j = i + 1; j < width; j++) row[j] /= pivot;
            mean[i] = row[globals];
        }
        BackSubstitute(corner, mean, globals);
        return new GlobalsMarginal(mean, corner, root, -0.5 * corner[^1] - 0.5 * logPivots);
    }

    // Solves U x = y in place, U with ones on its diagonal, in rows one longer than it is wide.
    static void BackSubstitute(double[] upper, Span<double> x, int n)
    {
        for (int i = n - 1; i >= 0; i--)
            x[i] -= Columns.Dot(upper.AsSpan(i * (n + 1) + i + 1, n - i - 1), x[(i + 1)..n]);
    }
}
