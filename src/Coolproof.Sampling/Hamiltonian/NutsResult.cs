namespace Coolproof.Sampling.Hamiltonian;

/// <summary>All chains of a run. Immutable: going on gives a new result.</summary>
public sealed class NutsResult
{
    readonly Func<LogDensity> newDensity;
    readonly Func<SideStep>? newSideStep;
    readonly NutsSettings settings;

    internal NutsResult(IReadOnlyList<ChainTrace> chains, Func<LogDensity> newDensity, Func<SideStep>? newSideStep, NutsSettings settings) =>
        (Chains, this.newDensity, this.newSideStep, this.settings) = (chains, newDensity, newSideStep, settings);

    /// <summary>The chains, in order of their stream numbers.</summary>
    public IReadOnlyList<ChainTrace> Chains { get; }

    /// <summary>Kept draws per chain.</summary>
    public int Draws => Chains[0].Draws;

    /// <summary>Coordinates of a draw.</summary>
    public int Dimension => Chains[0].Dimension;

    /// <summary>Trajectories of kept draws that diverged, over all chains.</summary>
    public int Divergences => Chains.Sum(chain => chain.Diverged.Count(diverged => diverged));

    /// <summary>Gradient evaluations, warm-up included.</summary>
    public long Gradients => Chains.Sum(chain => chain.WarmUpGradients + chain.DrawGradients);

    /// <summary>One coordinate, chain after chain: chains × draws numbers.</summary>
    public double[] Coordinate(int coordinate)
    {
        double[] values = new double[Chains.Count * Draws];
        for (int i = 0; i < values.Length; i++)
            values[i] = Chains[i / Draws].Positions[i % Draws * Dimension + coordinate];
        return values;
    }

    /// <summary>Quantities derived from each draw: quantity × (chain after chain, draw after draw).</summary>
    /// <param name="count">How many quantities.</param>
    /// <param name="quantities">Takes a position and fills the quantities; called in order on one thread.</param>
    public double[][] Derive(int count, DerivedQuantities quantities)
    {
        double[][] values = new double[count][];
        for (int q = 0; q < count; q++)
            values[q] = new double[Chains.Count * Draws];
        double[] row = new double[count];
        for (int i = 0; i < Chains.Count * Draws; i++)
        {
            quantities(Chains[i / Draws].Draw(i % Draws), row);
            for (int q = 0; q < count; q++)
                values[q][i] = row[q];
        }

        return values;
    }

    /// <summary>
    /// The same chains with <paramref name="more"/> further draws each; the same numbers that a longer run would have given from the start.
    /// </summary>
    /// <param name="more">Further draws per chain.</param>
    /// <param name="threads">Threads at most.</param>
    /// <param name="progress">Told the done part of this call, 0 to 1.</param>
    /// <param name="cancel">Stops between two draws.</param>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public NutsResult Continue(int more, int threads, IProgress<double>? progress = null, CancellationToken cancel = default)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(more);
        LogDensity[] densities = [.. Chains.Select(_ => newDensity())];
        SideStep?[] sideSteps = [.. Chains.Select(_ => newSideStep?.Invoke())];
        ChainTrace[] longer = new ChainTrace[Chains.Count];
        ChainRunner.Run(Chains.Count, threads, (long)Chains.Count * more, progress, index =>
            Chain.Resume(index, densities[index], Chains[index], settings, sideSteps[index]).Draw(more, trace => longer[index] = Chains[index].Followed(trace), cancel));
        return new NutsResult(longer, newDensity, newSideStep, settings);
    }
}
