using Coolproof.Sampling.Diagnostics;

namespace Coolproof.Sampling.Calibration;

/// <summary>
/// Simulation-based calibration (Talts, Betancourt, Simpson, Vehtari and Gelman 2018, arXiv:1804.06788): parameters drawn from the prior
/// make data; among draws of a right posterior the rank of each true value is uniform.
/// </summary>
public static class SimulationBasedCalibration
{
    /// <summary>Runs all replicates; the result does not depend on the number of threads.</summary>
    /// <param name="names">Names of the quantities.</param>
    /// <param name="replicates">Simulated data sets.</param>
    /// <param name="kept">Draws each posterior is thinned to, evenly; ranks go from 0 to this.</param>
    /// <param name="coverage">Probability with which a right posterior passes, over all ranks and quantities.</param>
    /// <param name="replicate">
    /// Simulates and analyses: stream r of the seed makes replicate r. It should go on sampling until every quantity has
    /// <paramref name="kept"/> effective draws.
    /// </param>
    /// <param name="seed">Seed of all replicates.</param>
    /// <param name="threads">Threads at most.</param>
    /// <param name="progress">Told the done part, 0 to 1.</param>
    /// <param name="cancel">Stops between two replicates.</param>
    /// <exception cref="ArgumentException">A replicate brings the wrong number of quantities, or fewer draws than are kept.</exception>
    public static CalibrationResult Run(
        IReadOnlyList<string> names,
        int replicates,
        int kept,
        double coverage,
        Func<RandomStream, CalibrationReplicate> replicate,
        long seed,
        int threads,
        IProgress<double>? progress = null,
        CancellationToken cancel = default)
    {
        int[][] ranks = [.. names.Select(_ => new int[replicates])];
        int tooShort = 0, done = 0;
        Parallel.For(0, replicates, new ParallelOptions { MaxDegreeOfParallelism = threads, CancellationToken = cancel }, r =>
        {
            RandomStream random = new(seed, r);
            CalibrationReplicate one = replicate(random);
            if (one.Truth.Length != names.Count || one.Values.Length != names.Count)
                throw new ArgumentException($"Replicate {r} brings {one.Truth.Length} truths and {one.Values.Length} quantities for {names.Count} names.", nameof(replicate));
            for (int q = 0; q < names.Count; q++)
                ranks[q][r] = Rank(one.Truth[q], one.Values[q], kept, random);
            if (IsShort(one, kept))
                Interlocked.Increment(ref tooShort);
            progress?.Report((double)Interlocked.Increment(ref done) / replicates);
        });
        EcdfBand band = EcdfBand.For(replicates, kept + 1, 1 - (1 - coverage) / names.Count);
        return new CalibrationResult([.. names.Select((name, q) => new QuantityCalibration(name, ranks[q], band.Leaves(ranks[q])))], band, tooShort);
    }

    /// <summary>How many of <paramref name="kept"/> evenly chosen draws lie below the truth; ties are settled by lot.</summary>
    internal static int Rank(double truth, ReadOnlySpan<double> values, int kept, RandomStream random)
    {
        if (values.Length < kept)
            throw new ArgumentException($"{values.Length} draws cannot be thinned to {kept}.", nameof(values));
        int below = 0, equal = 0;
        for (int i = 0; i < kept; i++)
        {
            double value = values[(int)((2L * i + 1) * values.Length / (2L * kept))];
            below += value < truth ? 1 : 0;
            equal += value == truth ? 1 : 0;
        }

        return equal == 0 ? below : below + random.NextIndex(equal + 1);
    }

    static bool IsShort(CalibrationReplicate one, int kept)
    {
        ConvergenceDiagnostics diagnostics = new(one.Chains, one.Values[0].Length / one.Chains);
        // Not "smaller": figures that are no numbers count as short.
        return Array.Exists(one.Values, values => !(diagnostics.Assess(values).BulkSampleSize >= kept));
    }
}
