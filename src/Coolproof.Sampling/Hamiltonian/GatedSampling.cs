using Coolproof.Sampling.Diagnostics;

namespace Coolproof.Sampling.Hamiltonian;

/// <summary>Samples until the gate passes or the budget is spent.</summary>
public static class GatedSampling
{
    /// <summary>Target acceptances of reruns after too many divergences; of them those that leave out clearly less than the first one.</summary>
    static readonly double[] Careful = [0.9, 0.95, 0.99];
    const double ClearlyLess = 0.6;

    /// <summary>
    /// Samples, judges the named quantities, and goes on, by as much as the smallest effective sample size asks and at most twofold, until the gate passes or <paramref name="mostDraws"/> is reached. More
    /// divergences than the limits allow, counted against the draws there will be when it has gone on, or any when the budget is spent, start the sampling over with smaller steps, at a target acceptance of
    /// 0.9, 0.95 and then 0.99; what then still diverges must keep to the limits.
    /// </summary>
    /// <param name="dimension">Coordinates of the target, n.</param>
    /// <param name="newDensity">Gives one density per chain.</param>
    /// <param name="start">Where chain i begins.</param>
    /// <param name="settings">How to run; its draws are the first attempt's.</param>
    /// <param name="names">Names of the quantities the gate judges.</param>
    /// <param name="quantities">Computes them from a draw.</param>
    /// <param name="limits">What the gate asks.</param>
    /// <param name="mostDraws">Draws per chain at most.</param>
    /// <param name="seed">Seed of all chains.</param>
    /// <param name="threads">Threads at most.</param>
    /// <param name="inverseMetric">Metric to begin with.</param>
    /// <param name="progress">Told the done part of each stage, 0 to 1; begins again with each.</param>
    /// <param name="cancel">Stops between two iterations.</param>
    /// <param name="newSideStep">As of <see cref="Nuts.Sample"/>.</param>
    /// <exception cref="ArgumentException">As of <see cref="Nuts.Sample"/>.</exception>
    public static GatedResult Run(
        int dimension,
        Func<LogDensity> newDensity,
        Func<int, RandomStream, double[]> start,
        NutsSettings settings,
        IReadOnlyList<string> names,
        DerivedQuantities quantities,
        GateLimits limits,
        int mostDraws,
        long seed,
        int threads,
        InverseMetric? inverseMetric = null,
        IProgress<double>? progress = null,
        CancellationToken cancel = default,
        Func<SideStep>? newSideStep = null)
    {
        double[] targets = [settings.TargetAcceptance, .. Careful.Where(target => 1 - target <= ClearlyLess * (1 - settings.TargetAcceptance))];
        long gradients = 0;
        for (int attempt = 0; ; attempt++)
        {
            NutsSettings now = settings with { TargetAcceptance = targets[attempt] };
            bool last = attempt == targets.Length - 1;
            NutsResult sample = Nuts.Sample(dimension, newDensity, start, now, seed, threads, inverseMetric, progress, cancel, newSideStep);
            while (true)
            {
                double[][] values = sample.Derive(names.Count, quantities);
                GateResult gate = ConvergenceGate.Check(names, values, settings.Chains, sample.Divergences, limits, threads);
                int more = Math.Min(More(sample.Draws, gate, limits), mostDraws - sample.Draws);
                // One or two early divergences may still be few enough among the draws that are wanted anyhow; draws that diverge too often don't get better by being many.
                bool tooMany = sample.Divergences > limits.DivergentShare * (sample.Draws + Math.Max(more, 0)) * settings.Chains;
                // Where the budget is spent in vain, what diverged may be why.
                if (!last && (tooMany || (more <= 0 && !gate.Passed && sample.Divergences > 0)))
                    break;
                if (gate.Passed || more <= 0 || tooMany)
                    return new GatedResult(sample, gate, values, now.TargetAcceptance, gradients + sample.Gradients);
                sample = sample.Continue(more, threads, progress, cancel);
            }

            gradients += sample.Gradients;
        }
    }

    /// <summary>A tenth over what effective draws still lack, at least a quarter more: the rest of what R-hat asks comes with them.</summary>
    static int More(int draws, GateResult gate, GateLimits limits)
    {
        double wanted = gate.SmallestSampleSize > 0 ? 1.1 * limits.SampleSize / gate.SmallestSampleSize - 1 : 1;
        return (int)Math.Ceiling(draws * Math.Clamp(double.IsNaN(wanted) ? 1 : wanted, 0.25, 1));
    }
}
