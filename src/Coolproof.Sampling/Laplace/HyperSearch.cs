namespace Coolproof.Sampling.Laplace;

/// <summary>
/// Finds where the integral over the rest ψ is highest and how wide it is. The joint mode is a poor middle for scales of a hierarchy: with the locals
/// integrated out their best values are elsewhere (Rue, Martino and Chopin 2009, section 3.1).
/// </summary>
sealed class HyperSearch(InnerLaplace inner, JointApproximation joint, bool measure)
{
    const int Rounds = 6;

    /// <summary>A step that gains less than this in the log of the integral isn't worth another round.</summary>
    const double SmallGain = 0.1;

    /// <summary>Nearer to the top than this many standard deviations is near enough for a proposal.</summary>
    const double NearEnough = 0.3;

    /// <summary>Longest step along an axis, standard deviations.</summary>
    const double LongestStep = 2;

    /// <summary>The surface with its outer points too.</summary>
    public HyperSurface Extended(HyperSurface surface) =>
        new(surface.Frame, surface.Centre, far: true, sampled => From(surface, surface.Frame.FromSampled(sampled)));

    /// <summary>Surface about the top; null when the integral can't be had at the joint mode.</summary>
    public HyperSurface? Run()
    {
        int count = joint.Count;
        double[] zero = new double[count], start = new double[count], rest = new double[joint.Rest.Dimension];
        joint.Place(zero, start, rest);
        HyperFrame first = new(start, joint.Scale);
        if (inner.Integrate(start, rest, inner.FactorAtMode, measure) is not { } centre) return null;
        HyperSurface surface = new(first, centre, far: false, sampled =>
        {
            joint.Place(first.FromSampled(sampled), new double[count], rest);
            return inner.Integrate(sampled, rest, centre.Factor, measure);
        });
        for (int round = 1; round < Rounds; round++)
        {
            (double[] gradient, double[] precision) = surface.Derivatives(inner.ProfileGradient);
            bool scaled = WellScaled(precision, count);
            double[] step = Step(gradient, precision);
            bool near = Columns.Dot(step, step) <= NearEnough * NearEnough * count;
            if (near && scaled) break;
            InnerNode top = near ? surface.Centre : Climb(surface, step);
            if (scaled && top.LogIntegral < surface.Centre.LogIntegral + SmallGain) break;
            HyperSurface last = surface;
            HyperFrame frame = last.Frame.Refined(top.Sampled, precision);
            surface = new HyperSurface(frame, top, far: false, sampled => From(last, last.Frame.FromSampled(sampled)));
        }
        return surface;
    }

    /// <summary>Whether the widths along the axes are right within a factor of √2, and the axes not strongly correlated.</summary>
    static bool WellScaled(double[] precision, int n)
    {
        for (int i = 0; i < n; i++)
            for (int j = 0; j < n; j++)
                if (i == j ? precision[i * n + i] is < 0.5 or > 2 : Math.Abs(precision[i * n + j]) > 0.5) return false;
        return true;
    }

    /// <summary>Newton step in z, no axis further than the longest; <paramref name="precision"/> is replaced by its Cholesky factor.</summary>
    static double[] Step(double[] gradient, double[] precision)
    {
        int n = gradient.Length;
        double[] ones = new double[n], step = [.. gradient];
        Array.Fill(ones, 1.0);
        PositiveFactor.Factor(precision, ones, 0.1, new double[n]);
        for (int i = 0; i < n; i++)
        {
            for (int k = 0; k < i; k++) step[i] -= precision[i * n + k] * step[k];
            step[i] /= precision[i * n + i];
        }
        for (int i = n - 1; i >= 0; i--)
        {
            for (int k = i + 1; k < n; k++) step[i] -= precision[k * n + i] * step[k];
            step[i] /= precision[i * n + i];
        }
        double longest = step.Max(Math.Abs);
        if (longest > LongestStep)
            foreach (ref double s in step.AsSpan()) s *= LongestStep / longest;
        return step;
    }

    InnerNode Climb(HyperSurface surface, double[] step)
    {
        foreach (double share in (ReadOnlySpan<double>)[1, 0.5, 0.25])
        {
            double[] z = Array.ConvertAll(step, s => share * s);
            if (From(surface, z) is { } node && node.LogIntegral > surface.Centre.LogIntegral) return node;
        }
        return surface.Centre;
    }

    InnerNode? From(HyperSurface surface, double[] z) =>
        inner.Integrate(surface.Frame.ToSampled(z), surface.Rest(z), surface.Factor(z), measure);
}
