using System.Numerics.Tensors;
using Coolproof.Evidence.Model;
using Coolproof.Notebook;
using Coolproof.Sampling;
using Coolproof.Sampling.Diagnostics;
using Coolproof.Sampling.Hamiltonian;
using Coolproof.Sampling.Laplace;

namespace Coolproof.Evidence;

/// <summary>Draws from the joint model until the gate passes.</summary>
internal static class PosteriorSampling
{
    private const int WarmUp = 150, Draws = 300, MostDraws = 8000;

    /// <summary>Where resistances tell of the slot and of core to can together, the metric of the globals needs longer to be learnt: two to four times the effective draws of these.</summary>
    private const int WarmUpWithWinding = 500;

    /// <summary>Start of a chain about the centre, in sds of the whitened parameters: spread out, yet inside the bulk.</summary>
    private const double StartSpread = 0.5;

    /// <summary>Of a normal density the log falls by an eighth a parameter from the centre to a usual start; below this many it is no place to start from.</summary>
    private const double MostFall = 5;

    private const int MostHalvings = 8;

    /// <summary>How a chain is run: the target is whitened already, and the metric's window learns what curvature at one point can't know.</summary>
    public static NutsSettings Settings(DayModel model) =>
        new(WarmUp: model.Readings.Any(r => r.On == ReadingOn.WindingByResistance) ? WarmUpWithWinding : WarmUp, Draws: Draws, TargetAcceptance: 0.87, Metric: MetricKind.LeadingBlock, LeadingBlock: model.Layout.Globals);

    /// <summary>Samples a prepared model.</summary>
    /// <param name="table">The table.</param>
    /// <param name="fit">The prepared model.</param>
    /// <param name="options">Options that are judged.</param>
    /// <param name="fair">Fair conditions.</param>
    /// <param name="seed">Seed.</param>
    /// <param name="threads">Threads.</param>
    /// <param name="progress">Told the done part of each stage.</param>
    /// <param name="cancel">Stops the work.</param>
    public static (Posterior Posterior, GatedResult Result) Run(
        ReadingsTable table, DayFit fit, IReadOnlyList<int> options, FairConditions fair, long seed, int threads, IProgress<double>? progress, CancellationToken cancel)
    {
        DayModel model = fit.Model;
        int n = model.Dimension, globals = model.Layout.Globals;
        ArrowWhitening whitening = new(fit.Centre, fit.Factor);
        FairPeaks peaks = new(model, options, fair);
        string[] names = [.. model.Parameters.Take(globals).Select(p => p.Name), .. options.Select(o => $"can of {model.Options[o]}"),
            .. options.Select(o => $"winding of {model.Options[o]}")];
        double[] position = new double[n];
        GatedResult result = GatedSampling.Run(n, fit.Whitened(), (_, stream) => Start(fit, stream), Settings(model), names, Quantities, new GateLimits(), MostDraws,
            seed, threads, progress: progress, cancel: cancel, newSideStep: fit.Spreads());
        return (Collect(table, fit, options, fair, result.Sample, peaks, whitening), result);

        void Quantities(ReadOnlySpan<double> draw, Span<double> quantities)
        {
            whitening.ToPosition(draw, position);
            position.AsSpan(0, globals).CopyTo(quantities);
            peaks.Fill(position, quantities.Slice(globals, options.Count), quantities[(globals + options.Count)..], []);
        }
    }

    /// <summary>
    /// Start of a chain in whitened coordinates. Where the readings leave much free, far out may lie a motor that runs away, from which no chain finds back: such a start is
    /// brought nearer to the centre.
    /// </summary>
    public static double[] Start(DayFit fit, RandomStream stream)
    {
        int n = fit.Model.Dimension;
        double[] z = new double[n], gradient = new double[n];
        stream.FillNormal(z);
        TensorPrimitives.Multiply(z, StartSpread, z);
        LogDensity density = fit.Whitened()();
        double least = density(new double[n], gradient) - MostFall * n;
        for (int i = 0; i < MostHalvings && !(density(z, gradient) >= least); i++)
            TensorPrimitives.Multiply(z, 0.5, z);
        return z;
    }

    private static Posterior Collect(
        ReadingsTable table, DayFit fit, IReadOnlyList<int> options, FairConditions fair, NutsResult sample, FairPeaks peaks, ArrowWhitening whitening)
    {
        int total = sample.Chains.Count * sample.Draws, count = options.Count;
        double[][] draws = new double[total][];
        double[][] can = Rows(count, total), winding = Rows(count, total), conductance = Rows(count, total);
        double[] row = new double[3 * count];
        for (int i = 0; i < total; i++)
        {
            draws[i] = new double[fit.Model.Dimension];
            whitening.ToPosition(sample.Chains[i / sample.Draws].Draw(i % sample.Draws), draws[i]);
            peaks.Fill(draws[i], row.AsSpan(0, count), row.AsSpan(count, count), row.AsSpan(2 * count));
            for (int k = 0; k < count; k++)
                (can[k][i], winding[k][i], conductance[k][i]) = (row[k], row[count + k], row[2 * count + k]);
        }
        return new(table, fit, draws, fair, options, can, winding, conductance);
    }

    private static double[][] Rows(int rows, int length) => [.. Enumerable.Range(0, rows).Select(_ => new double[length])];
}
