namespace Coolproof.Sampling.Hamiltonian;

/// <summary>The No-U-Turn sampler (Hoffman and Gelman 2014, JMLR 15:1593; multinomial form of Betancourt 2017, arXiv:1701.02434).</summary>
public static class Nuts
{
    /// <summary>Warms up and draws. The result depends on target, start, settings and seed, never on the number of threads.</summary>
    /// <param name="dimension">Coordinates of the target, n.</param>
    /// <param name="newDensity">Gives one density per chain, called once per chain before any starts; a chain keeps its own.</param>
    /// <param name="start">Where chain i begins, n numbers; may use the chain's own chance.</param>
    /// <param name="settings">How to run.</param>
    /// <param name="seed">Chain i uses stream i of this seed.</param>
    /// <param name="threads">Threads at most; more than chains help nothing.</param>
    /// <param name="inverseMetric">Metric to begin with, an approximate posterior covariance; the unit metric, soon forgotten, when null.</param>
    /// <param name="progress">Told the done part, 0 to 1, from whichever thread.</param>
    /// <param name="cancel">Stops between two iterations.</param>
    /// <param name="newSideStep">Gives one move per chain that is made after each transition; none when null.</param>
    /// <exception cref="ArgumentException">A chain's start is no place of finite density and gradient, or a setting or size is wrong; names chain and value.</exception>
    /// <exception cref="NoStepSizeException">A chain stands where no step is accepted.</exception>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static NutsResult Sample(
        int dimension,
        Func<LogDensity> newDensity,
        Func<int, RandomStream, double[]> start,
        NutsSettings settings,
        long seed,
        int threads,
        InverseMetric? inverseMetric = null,
        IProgress<double>? progress = null,
        CancellationToken cancel = default,
        Func<SideStep>? newSideStep = null)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(dimension);
        settings.Check();
        InverseMetric metric = inverseMetric ?? InverseMetric.Identity(dimension);
        if (metric.Dimension != dimension)
            throw new ArgumentException($"The metric has {metric.Dimension} coordinates, the target {dimension}.", nameof(inverseMetric));
        RandomStream[] streams = [.. Enumerable.Range(0, settings.Chains).Select(i => new RandomStream(seed, i))];
        double[][] starts = [.. streams.Select((stream, i) => start(i, stream))];
        LogDensity[] densities = [.. streams.Select(_ => newDensity())];
        SideStep?[] sideSteps = [.. streams.Select(_ => newSideStep?.Invoke())];
        ChainTrace[] traces = new ChainTrace[settings.Chains];
        ChainRunner.Run(settings.Chains, threads, (long)settings.Chains * (settings.WarmUp + settings.Draws), progress, Steps);
        return new NutsResult(traces, newDensity, newSideStep, settings);

        IEnumerable<int> Steps(int i)
        {
            Chain chain = new(i, densities[i], starts[i], metric, streams[i], settings, sideSteps[i]);
            foreach (int done in chain.WarmUp(inverseMetric is not null, cancel))
                yield return done;
            foreach (int done in chain.Draw(settings.Draws, trace => traces[i] = trace, cancel))
                yield return done;
        }
    }
}
