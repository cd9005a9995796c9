namespace Coolproof.Sampling.Laplace;

/// <summary>Gradients on both sides of a position, with one thread's workspace.</summary>
/// <param name="density">The density; used by this alone.</param>
/// <param name="centre">The position.</param>
/// <param name="steps">Receives the steps made, by coordinate.</param>
sealed class GradientPair(LogDensity density, double[] centre, double[] steps)
{
    /// <summary>
    /// Step as a share of a standard deviation. The error of a central difference is about step²/6 from the fourth derivative, and rounding of the
    /// gradient (some 1e-14 in these units) over the step: about 1e-9 together.
    /// </summary>
    const double StepShare = 6e-5;

    /// <summary>Times a step that leads out of the support is divided by sixteen before giving up.</summary>
    const int Shrinks = 4;

    readonly double[] _moved = [.. centre];

    /// <summary>Gradient beyond the position.</summary>
    public double[] Up { get; } = new double[centre.Length];

    /// <summary>Gradient before it; with one-sided differences that at the position.</summary>
    public double[] Down { get; } = new double[centre.Length];

    /// <summary>Gradients evaluated.</summary>
    public int Gradients { get; set; }

    /// <summary>Makes ready for one-sided differences from a gradient at the position, which may be a new one.</summary>
    public void StartOneSided(ReadOnlySpan<double> gradient)
    {
        centre.CopyTo(_moved, 0);
        gradient.CopyTo(Down);
    }

    /// <summary>Takes the gradients with the coordinates of a group moved together; false when they aren't finite, however short the step.</summary>
    public bool Differ(int[] group, ReadOnlySpan<double> scales, bool oneSided)
    {
        double share = StepShare;
        for (int attempt = 0; attempt <= Shrinks; attempt++, share /= 16)
        {
            foreach (int i in group)
            {
                // Rounded so that both moved coordinates are exact.
                double step = Math.Max(share * scales[i], 1e-12 * Math.Abs(centre[i]));
                steps[i] = centre[i] + step - centre[i];
            }
            bool finite = GradientAt(group, +1, Up) && (oneSided || GradientAt(group, -1, Down));
            foreach (int i in group) _moved[i] = centre[i];
            if (finite) return true;
        }
        return false;
    }

    bool GradientAt(int[] group, int side, double[] gradient)
    {
        foreach (int i in group) _moved[i] = centre[i] + side * steps[i];
        Gradients++;
        if (!double.IsFinite(density(_moved, gradient))) return false;
        foreach (double value in gradient)
            if (!double.IsFinite(value)) return false;
        return true;
    }
}
