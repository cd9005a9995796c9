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
    /// The typical point: spreads at their most probable values, the rest at its mode given them; of many days the middle of a pilot run with a seed of its own. It stays what it is when the model is whitened anew, so
    /// that what is reckoned there does not depend on a seed.
    /// </summary>
    public double[] Typical { get; private init; } = Centre;

    private const double CurvatureFloor = 0.2;
    private const int PilotChains = 2, PilotWarmUp = 60, PilotDraws = 48, PilotEvery = 6, PilotDepth = 6, WideBlock = 40;
    private const int PilotsOfManyDays = 2;
    private const long PilotSeed = 0x5b1f;

    /// <summary>Prepares a model about its typical point.</summary>
    /// <param name="model">The model.</param>
    /// <param name="threads">Threads; the figures are the same with any number.</param>
    /// <param name="cancel">Stops the pilot runs of many days.</param>
    public static DayFit Of(DayModel model, int threads = 1, CancellationToken cancel = default)
    {
        SpreadSearch search = SpreadSearch.Run(model, threads);
        DayFit fit = About(model, search.Position, search.Gradients, threads);
        for (int i = 0; i < PilotsOfManyDays && model.DaysAreBlocks; i++)
            fit = fit.AboutPilot(model, threads, cancel);
        return fit;
    }

    // Where there are hundreds of runs, their many small unknowns draw the mode of all far away from the bulk (the offset of a gun five sds), and what is measured there misleads. A pilot
    // run finds its way to the bulk from there all the same, over a hundred days in two goes; coordinates are then chosen anew about its middle.
    private DayFit AboutPilot(DayModel plain, int threads, CancellationToken cancel)
    {
        (double[][] draws, int gradients) = Pilot(0, threads, cancel);
        DayDensity from = new(Model), to = new(plain);
        return About(plain, Middle([.. draws.Where((_, i) => i % PilotEvery == 0).Select(d => Coordinates.Carry(from, d, to))]), Gradients + gradients, threads);
    }

    // A model centred as its information at a typical point of its plain coordinates asks.
    private static DayFit About(DayModel model, double[] typical, int gradients, int threads)
    {
        DayDensity plain = new(model);
        plain.Visit(typical);
        DayModel levelled = model.Levelled(RunLevel.Of(plain), MeanLevel.Of(plain));
        DayFit first = At(levelled, Coordinates.Carry(plain, typical, new DayDensity(levelled)), gradients, threads, out ArrowHessian hessian);
        DayDensity plainLevelled = new(levelled);
        plainLevelled.Visit(first.Centre);
        GroupEvidence evidence = new(plainLevelled, first.Centre, hessian, first.Factor.MarginalVariances());
        DayModel fitted = levelled.Informed(evidence.Of);
        return At(fitted, Coordinates.Carry(plainLevelled, first.Centre, new DayDensity(fitted)), first.Gradients, threads, out _);
    }

    /// <summary>The density in whitened parameters, one per chain.</summary>
    public Func<LogDensity> Whitened()
    {
        ArrowWhitening whitening = new(Centre, Factor);
        return () => WhitenedDensity.Over(new DayDensity(Model).Evaluate, whitening.Copy());
    }

    /// <summary>The steps of the spreads in whitened parameters, one per chain.</summary>
    public Func<SideStep> Spreads()
    {
        ArrowWhitening whitening = new(Centre, Factor);
        return () => WhitenedDensity.Over(Steps(Model), whitening);
    }

    private static SideStep Steps(DayModel model)
    {
        RidgeStep? ridge = RidgeStep.Over(model);
        SpreadStep spreads = new(model);
        return (u, random) =>
        {
            ridge?.Move(u, random);
            spreads.Move(u, random);
        };
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
        (double[][] draws, int taking) = Pilot(seed ^ PilotSeed, threads, cancel);
        double[] middle = Middle(draws), scales = new double[Model.Dimension];
        ArrowHessian here = Curvature(Model, Centre, threads);
        here.CopyDiagonal(scales);
        for (int i = 0; i < scales.Length; i++)
            scales[i] = 1 / Math.Sqrt(Math.Max(Math.Abs(scales[i]), 1));
        int every = Model.Layout.LargestBlock > WideBlock ? 4 * PilotEvery : PilotEvery;
        ArrowHessian[] taken = new ArrowHessian[(draws.Length + every - 1) / every];
        Parallel.For(0, taken.Length, new() { MaxDegreeOfParallelism = threads, CancellationToken = cancel }, () => new DayDensity(Model), (i, _, own) =>
        {
            taken[i] = ArrowHessian.At(own.Evaluate, Model.Layout, draws[i * every], scales);
            return own;
        }, _ => { });
        ArrowHessian[] hessians = [.. taken.Where(h => h.IsFinite)];
        int gradients = Gradients + taking + here.Gradients + hessians.Sum(h => h.Gradients);
        return hessians.Length == 0 ? this with { Gradients = gradients } : this with { Centre = middle, Factor = Factored(ArrowHessian.Mean(hessians)), Gradients = gradients };
    }

    private (double[][] Draws, int Gradients) Pilot(long seed, int threads, CancellationToken cancel)
    {
        NutsSettings settings = PosteriorSampling.Settings(Model) with { Chains = PilotChains, WarmUp = PilotWarmUp, Draws = PilotDraws, MaxTreeDepth = PilotDepth };
        NutsResult pilot = Nuts.Sample(Model.Dimension, Whitened(), (_, stream) => PosteriorSampling.Start(this, stream), settings, seed, threads, cancel: cancel, newSideStep: Spreads());
        ArrowWhitening whitening = new(Centre, Factor);
        return ([.. Enumerable.Range(0, PilotChains * PilotDraws).Select(i => Position(whitening, pilot.Chains[i / PilotDraws].Draw(i % PilotDraws)))], (int)pilot.Gradients);
    }

    private static double[] Middle(double[][] draws) => [.. Enumerable.Range(0, draws[0].Length).Select(i => draws.Average(d => d[i]))];

    private static double[] Position(ArrowWhitening whitening, ReadOnlySpan<double> z)
    {
        double[] position = new double[z.Length];
        whitening.ToPosition(z, position);
        return position;
    }

    private static ArrowHessian Curvature(DayModel model, double[] at, int threads) =>
        ArrowHessian.At(new DayDensity(model).Evaluate, model.Layout, at, second: threads > 1 ? new DayDensity(model).Evaluate : null);

    private static ArrowFactor Factored(ArrowHessian hessian)
    {
        double[] precision = new double[hessian.Layout.Dimension];
        Array.Fill(precision, 1.0);
        return ArrowFactor.Of(hessian, precision, CurvatureFloor);
    }

    private static DayFit At(DayModel model, double[] centre, int gradients, int threads, out ArrowHessian hessian)
    {
        hessian = Curvature(model, centre, threads);
        return new(model, centre, Factored(hessian), gradients + hessian.Gradients);
    }
}
