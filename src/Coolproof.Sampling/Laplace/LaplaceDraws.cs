namespace Coolproof.Sampling.Laplace;

/// <summary>Draws from the normal approximation about a mode, for instance to start chains. Keeps a workspace: one per thread.</summary>
/// <param name="whitening">Centre and curvature.</param>
public sealed class LaplaceDraws(ArrowWhitening whitening)
{
    readonly ArrowWhitening _whitening = whitening.Copy();
    readonly double[] _whitened = new double[whitening.Layout.Dimension];

    /// <summary>A draw from N(centre, H⁻¹).</summary>
    /// <param name="random">Source of chance.</param>
    /// <param name="position">Receives the draw.</param>
    /// <param name="spread">Factor on the standard deviation, 1 for the approximation itself.</param>
    public void Gaussian(RandomStream random, Span<double> position, double spread = 1)
    {
        random.FillNormal(_whitened);
        foreach (ref double z in _whitened.AsSpan()) z *= spread;
        _whitening.ToPosition(_whitened, position);
    }

    /// <summary>A draw with the globals from a multivariate t and the locals normal given the globals.</summary>
    /// <param name="random">Source of chance.</param>
    /// <param name="degreesOfFreedom">ν of the t, positive.</param>
    /// <param name="position">Receives the draw.</param>
    public void StudentGlobals(RandomStream random, double degreesOfFreedom, Span<double> position)
    {
        random.FillNormal(_whitened);
        double stretch = Student.Stretch(random, degreesOfFreedom);
        foreach (ref double z in _whitened.AsSpan(0, _whitening.Layout.Globals)) z *= stretch;
        _whitening.ToPosition(_whitened, position);
    }
}
