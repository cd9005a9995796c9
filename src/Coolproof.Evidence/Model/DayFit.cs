using Coolproof.Sampling;
using Coolproof.Sampling.Hamiltonian;
using Coolproof.Sampling.Laplace;

namespace Coolproof.Evidence.Model;

/// <summary>A model ready to be sampled: centred as its information asks, and whitened by its curvature at a typical point.</summary>
/// <param name="Model">The model with its centring weights.</param>
/// <param name="Centre">Where it is whitened: the typical point, or the middle of a pilot run.</param>
/// <param name="Factor">Curvature there.</param>
/// <param name="Gradients">Gradients that the preparation took.</param>
internal sealed record DayFit(DayModel Model, double[] Centre, ArrowFactor Factor, int Gradients)
{
    /// <summary>
    /// The typical point: spreads at their most probable values, the rest at its mode given them. It stays what it is when the model is whitened anew, so
    /// that what is reckoned there does not depend on a seed.
    /// </summary>
    public double[] Typical { get; private init; } = Centre;

    private const double CurvatureFloor = 0.2;
    private const int PilotChains = 2, PilotWarmUp = 100, PilotDraws = 48, PilotEvery = 4, PilotDepth = 6, WideBlock = 40;
    private const long PilotSeed = 0x5b1f;

    /// <summary>Prepares a model: spreads at their most probable values, the rest at its mode given them.</summary>
    public static DayFit Of(DayModel model)
    {
        SpreadSearch search = SpreadSearch.Run(model);
        DayDensity plain = new(model);
        plain.Visit(search.Position);
        DayModel levelled = model.Levelled(RunLevel.Of(plain), MeanLevel.Of(plain, search.Position));
        DayFit first = At(levelled, Coordinates.Carry(plain, search.Position, new DayDensity(levelled)), search.Gradients, out double[] curvature);
        DayDensity plainLevelled = new(levelled);
        plainLevelled.Visit(first.Centre);
        double[] variance = first.Factor.MarginalVariances();
        DayModel fitted = levelled.Informed(m =>
            Evidence(plainLevelled.Deviation(first.Centre, m), first.Centre[m], 1 / variance[m], curvature[m], plainLevelled.HeatBetween(m)));
        return At(fitted, Coordinates.Carry(plainLevelled, first.Centre, new DayDensity(fitted)), first.Gradients, out _);
    }

    /// <summary>The density in whitened parameters, one per chain.</summary>
    public Func<LogDensity> Whitened()
    {
        ArrowWhitening whitening = new(Centre, Factor);
        return () => WhitenedDensity.Over(new DayDensity(Model).Evaluate, whitening.Copy());
    }

    /// <summary>
    /// Whitened anew by the curvature averaged over a short pilot run: what bends tells one point little of where the bulk lies. Any whitening samples
    /// the same posterior; this one with longer steps.
    /// </summary>
    /// <param name="seed">Seed.</param>
    /// <param name="threads">Threads.</param>
    /// <param name="cancel">Stops the work.</param>
    public DayFit Refined(long seed, int threads, CancellationToken cancel = default)
    {
        int n = Model.Dimension;
        NutsSettings settings = PosteriorSampling.Settings(Model) with { Chains = PilotChains, WarmUp = PilotWarmUp, Draws = PilotDraws, MaxTreeDepth = PilotDepth };
        NutsResult pilot = Nuts.Sample(n, Whitened(), (_, stream) => PosteriorSampling.Start(n, stream), settings, seed ^ PilotSeed, threads, cancel: cancel);
        ArrowWhitening whitening = new(Centre, Factor);
        double[][] draws = [.. Enumerable.Range(0, PilotChains * PilotDraws).Select(i => Position(whitening, pilot.Chains[i / PilotDraws].Draw(i % PilotDraws)))];
        double[] middle = [.. Enumerable.Range(0, n).Select(i => draws.Average(d => d[i]))], scales = new double[n];
        DayDensity density = new(Model);
        ArrowHessian here = ArrowHessian.At(density.Evaluate, Model.Layout, Centre);
        here.CopyDiagonal(scales);
        for (int i = 0; i < n; i++)
            scales[i] = 1 / Math.Sqrt(Math.Max(Math.Abs(scales[i]), 1));
        List<ArrowHessian> hessians = [];
        int every = Model.Layout.LargestBlock > WideBlock ? 4 * PilotEvery : PilotEvery;
        for (int i = 0; i < draws.Length; i += every)
        {
            cancel.ThrowIfCancellationRequested();
            if (ArrowHessian.At(density.Evaluate, Model.Layout, draws[i], scales) is { IsFinite: true } hessian)
                hessians.Add(hessian);
        }
        int gradients = Gradients + (int)pilot.Gradients + here.Gradients + hessians.Sum(h => h.Gradients);
        return hessians.Count == 0 ? this with { Gradients = gradients } : this with { Centre = middle, Factor = Factored(ArrowHessian.Mean(hessians)), Gradients = gradients };
    }

    private static double[] Position(ArrowWhitening whitening, ReadOnlySpan<double> z)
    {
        double[] position = new double[z.Length];
        whitening.ToPosition(z, position);
        return position;
    }

    private static ArrowFactor Factored(ArrowHessian hessian)
    {
        double[] precision = new double[hessian.Layout.Dimension];
        Array.Fill(precision, 1.0);
        return ArrowFactor.Of(hessian, precision, CurvatureFloor);
    }

    private static DayFit At(DayModel model, double[] centre, int gradients, out double[] curvature)
    {
        ArrowHessian hessian = ArrowHessian.At(new DayDensity(model).Evaluate, model.Layout, centre);
        hessian.CopyDiagonal(curvature = new double[centre.Length]);
        return new(model, centre, Factored(hessian), gradients + hessian.Gradients);
    }

    // From a deviation at the typical point and its whole precision there, in units of the group's, with all else free and with all else given: what the
    // evidence alone says. All else but the run's heat, which has its own coordinate already, is variance that stands between as well.
    private static MemberEvidence Evidence(double deviation, double coordinate, double precision, double precisionGivenAll, HeatBetween heat)
    {
        double spread = coordinate == 0 ? 0 : deviation / coordinate, information = Math.Max(precision - 1, 0.01), given = Math.Max(precisionGivenAll - 1, information);
        if (spread == 0)
            return new(0, 0, 1, 0, 0);
        double all = heat.Share == 0 ? information : given * heat.Variance, other = heat.Share == 0 ? 1 : heat.OtherVariance + heat.Variance * (given / information - 1);
        return new(all / (spread * spread), deviation * (1 + information) / information, other, heat.ChargePrecision, heat.Share);
    }
}
