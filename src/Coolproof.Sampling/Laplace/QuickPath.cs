using Coolproof.Sampling.Diagnostics;

namespace Coolproof.Sampling.Laplace;

/// <summary>
/// A quick posterior: importance sampling over few globals with a multivariate t, everything else integrated out by Laplace's method for each draw.
/// For plans, and while readings come in; its k̂ says when it is only rough.
/// </summary>
public static class QuickPath
{
    /// <summary>A draw whose log weight is this much below that of the centre hardly matters (a weight of a fiftieth).</summary>
    const double Negligible = 4;

    /// <summary>
    /// Finds the top of the sampled globals' marginal, draws them there in pairs from a two-piece multivariate t, weighs each draw by the Laplace integral
    /// over the rest, smooths the weights, draws the rest from its normal approximation given each, and resamples. The same seed gives the same draws.
    /// </summary>
    /// <param name="density">Log density.</param>
    /// <param name="mode">Its mode.</param>
    /// <param name="seed">Random seed.</param>
    /// <param name="settings">Null: the defaults.</param>
    /// <exception cref="ArgumentException">
    /// Sampled globals that don't exist or come twice, or none; fewer than two draws; a density that is −∞ at the mode.
    /// </exception>
    public static QuickDraws Draw(LogDensity density, ArrowMode mode, long seed, QuickSettings? settings = null)
    {
        settings ??= new QuickSettings();
        ArgumentOutOfRangeException.ThrowIfLessThan(settings.Draws, 2, nameof(settings));
        ArgumentOutOfRangeException.ThrowIfLessThan(settings.RestDraws, 1, nameof(settings));
        JointApproximation joint = new(mode, settings.Sampled);
        if (joint.Count == 0) throw new ArgumentException("No global to sample.", nameof(settings));
        InnerLaplace inner = new(density, joint, settings);
        HyperSearch search = new(inner, joint, settings.Curvature != LocalCurvature.AtMode);
        HyperSurface surface = search.Run() ?? throw new ArgumentException("The density can't be evaluated at the mode given.", nameof(mode));
        if (settings.Curvature == LocalCurvature.Interpolated) surface = search.Extended(surface);
        TwoPieceStudent proposal = new(surface, settings.DegreesOfFreedom);
        int n = mode.Position.Length, copies = settings.RestDraws;
        double logScale = surface.Frame.LogScale, logCentre = surface.Centre.LogIntegral - proposal.LogTop + logScale;
        RandomStream random = new(seed), randomRest = new(seed, 1);
        double[] z = new double[joint.Count], rest = new double[joint.Rest.Dimension], whitened = new double[rest.Length];
        double[] positions = new double[settings.Draws * copies * n], logWeights = new double[settings.Draws];
        for (int i = 0; i < settings.Draws; i++)
        {
            double logProposal = proposal.Next(random, i % 2 == 1, z) - logScale;
            double[] sampled = surface.Frame.ToSampled(z), start = surface.Rest(z);
            ArrowFactor factor = settings.Curvature == LocalCurvature.AtMode ? surface.Centre.Factor : surface.Factor(z);
            InnerNode? node = inner.Integrate(sampled, start, factor, settings.Curvature == LocalCurvature.Measured);
            // Outside the points interpolated between, the curvature is measured after all where the draw has some weight.
            if (node is not null && settings.Curvature == LocalCurvature.Interpolated && !surface.Covers(z)
                && node.LogIntegral - logProposal > logCentre - Negligible)
                node = inner.Integrate(sampled, node.Rest, node.Factor, measure: true);
            logWeights[i] = node is null ? double.NegativeInfinity : node.LogIntegral - logProposal;
            ArrowWhitening conditional = new(node?.Rest ?? start, node?.Factor ?? surface.Centre.Factor);
            for (int c = 0; c < copies; c++)
            {
                randomRest.FillNormal(whitened);
                conditional.ToPosition(whitened, rest);
                joint.Assemble(sampled, rest, positions.AsSpan((i * copies + c) * n, n));
            }
        }
        return Gather(n, copies, positions, logWeights, inner.Gradients, random);
    }

    /// <summary>
    /// Plain importance sampling of all coordinates at once, with the globals and the locals together from a multivariate t. One gradient for each draw and no
    /// approximation beyond the weights, but good only for few coordinates.
    /// </summary>
    /// <param name="density">Log density.</param>
    /// <param name="mode">Its mode.</param>
    /// <param name="seed">Random seed.</param>
    /// <param name="draws">Number of draws, 2 or more.</param>
    /// <param name="degreesOfFreedom">Of the multivariate t.</param>
    public static QuickDraws DrawJointly(LogDensity density, ArrowMode mode, long seed, int draws = 1000, double degreesOfFreedom = 7)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(draws, 2);
        ArrowWhitening whitening = new(mode);
        int n = mode.Position.Length;
        RandomStream random = new(seed);
        double[] z = new double[n], gradient = new double[n], positions = new double[draws * n], logWeights = new double[draws];
        for (int i = 0; i < draws; i++)
        {
            Propose(random, degreesOfFreedom, i, z);
            Span<double> position = positions.AsSpan(i * n, n);
            whitening.ToPosition(z, position);
            logWeights[i] = density(position, gradient) - Student.LogDensity(z, degreesOfFreedom) + whitening.LogJacobian;
        }
        return Gather(n, 1, positions, logWeights, draws, random);
    }

    /// <summary>A t vector; every second one is the mirror image of the one before.</summary>
    static void Propose(RandomStream random, double degreesOfFreedom, int index, double[] z)
    {
        double factor = -1;
        if (index % 2 == 0)
        {
            random.FillNormal(z);
            factor = Student.Stretch(random, degreesOfFreedom);
        }
        for (int k = 0; k < z.Length; k++) z[k] *= factor;
    }

    static QuickDraws Gather(int n, int copies, double[] positions, double[] logWeights, int gradients, RandomStream random)
    {
        int count = logWeights.Length;
        double[] weights = new double[count], weighted = new double[count * n], equal = new double[count * n];
        double shape = ParetoSmoothing.Smooth(logWeights, weights);
        // Nothing to go by: equal weights, and k̂ = +∞ says so.
        if (double.IsNaN(weights[0])) Array.Fill(weights, 1.0 / count);
        for (int i = 0; i < count; i++) positions.AsSpan(i * copies * n, n).CopyTo(weighted.AsSpan(i * n));
        // Systematic resampling: one uniform number, evenly spaced marks on the cumulated weights.
        double mark = random.NextUniform() / count, sum = 0;
        int filled = 0;
        for (int i = 0; i < count; i++)
        {
            sum = i == count - 1 ? double.PositiveInfinity : sum + weights[i];
            for (int copy = 0; filled < count && mark < sum; copy++, filled++, mark += 1.0 / count)
                positions.AsSpan((i * copies + copy % copies) * n, n).CopyTo(equal.AsSpan(filled * n));
        }
        return new QuickDraws(n, weighted, logWeights, weights, equal, shape, LogMean(logWeights), gradients);
    }

    static double LogMean(double[] logs)
    {
        double top = logs.Max();
        return double.IsFinite(top) ? top + Math.Log(logs.Sum(l => Math.Exp(l - top)) / logs.Length) : top;
    }
}
