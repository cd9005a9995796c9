using System.Diagnostics;
using Coolproof.Evidence;
using Coolproof.Evidence.Model;
using Coolproof.Notebook;
using Coolproof.Sampling;
using Coolproof.Sampling.Hamiltonian;
using Coolproof.Sampling.Laplace;

namespace Coolproof.Bench.Day;

/// <summary>The program's own sampling, timed.</summary>
/// <param name="Fit">What was sampled.</param>
/// <param name="Sample">Whitened draws.</param>
/// <param name="PreparationS">Seconds from the table to the fit.</param>
/// <param name="TotalS">Seconds from the table to the last draw.</param>
/// <param name="CoreS">Seconds of all cores in the same time, the runtime's own threads included.</param>
internal sealed record OwnSampling(DayFit Fit, NutsResult Sample, double PreparationS, double TotalS, double CoreS)
{
    private const int Threads = 2;
    private const double StartSpread = 0.5;

    // Short ones, of which the fastest counts: the one that other work disturbed least.
    private const int Batches = 100;

    /// <summary>From a table to draws with the program's own settings, without its gate: 4 chains × (warm-up + draws) once.</summary>
    public static OwnSampling Of(ReadingsTable table, long seed)
    {
        TimeSpan cores = Environment.CpuUsage.TotalTime;
        long begin = Stopwatch.GetTimestamp();
        DayModel model = DayModelBuilder.Build(table);
        DayFit fit = DayFit.Of(model).Refined(seed, Threads);
        double prepared = Stopwatch.GetElapsedTime(begin).TotalSeconds;
        NutsResult sample = Sampled(fit, seed);
        return new(fit, sample, prepared, Stopwatch.GetElapsedTime(begin).TotalSeconds, (Environment.CpuUsage.TotalTime - cores).TotalSeconds);
    }

    /// <summary>Draws of a prepared model.</summary>
    public static NutsResult Sampled(DayFit fit, long seed, IProgress<double>? progress = null, CancellationToken cancel = default)
    {
        int n = fit.Model.Dimension;
        return Nuts.Sample(n, fit.Whitened(), (_, stream) => Start(n, stream), PosteriorSampling.Settings(fit.Model), seed, Threads, progress: progress, cancel: cancel, newSideStep: fit.Spreads());
    }

    /// <summary>
    /// Draws for seeds 1, 2, …, each into FOLDER/own-SEED.bin; prints settings and then for each seed, and for seed 0, the first in the process: seconds,
    /// seconds of preparation, gradients, divergences, seconds of all cores, gradients of preparation and pilot.
    /// </summary>
    public static void Run(string tablePath, int seeds, string folder)
    {
        ReadingsTable table = BenchTable.Read(tablePath);
        for (int seed = 0; seed <= seeds; seed++)
        {
            OwnSampling own = Of(table, seed);
            NutsSettings settings = PosteriorSampling.Settings(own.Fit.Model);
            if (seed == 0)
                Console.WriteLine(FormattableString.Invariant($"settings\t{settings.Chains}\t{settings.WarmUp}\t{settings.Draws}\t{settings.TargetAcceptance:R}\t{own.Fit.Model.Dimension}"));
            long gradients = own.Sample.Gradients + own.Fit.Gradients;
            Console.WriteLine(FormattableString.Invariant($"seed\t{seed}\t{own.TotalS:R}\t{own.PreparationS:R}\t{gradients}\t{own.Sample.Divergences}\t{own.CoreS:R}\t{own.Fit.Gradients}"));
            NumberFile.Write(Path.Combine(folder, $"own-{seed}.bin"), own.Draws());
        }
        Console.WriteLine(FormattableString.Invariant($"gradient\t{GradientSeconds(Of(table, 1).Fit, 20_000):R}"));
    }

    /// <summary>Seconds of one gradient in the program's coordinates, whitening included, on one core.</summary>
    public static double GradientSeconds(DayFit fit, int repeats)
    {
        int n = fit.Model.Dimension;
        LogDensity density = fit.Whitened()();
        double[] z = new double[n], gradient = new double[n];
        new RandomStream(3).FillNormal(z);
        for (int i = 0; i < n; i++)
            z[i] *= StartSpread;
        double best = double.PositiveInfinity;
        for (int batch = 0; batch < Batches; batch++)
        {
            long begin = Stopwatch.GetTimestamp();
            for (int i = 0; i < repeats / Batches; i++)
                density(z, gradient);
            best = Math.Min(best, Stopwatch.GetElapsedTime(begin).TotalSeconds / (repeats / Batches));
        }
        return best;
    }

    /// <summary>Draws in the model's own parameters, chain after chain.</summary>
    public double[][] Draws()
    {
        ArrowWhitening whitening = new(Fit.Centre, Fit.Factor);
        int total = Sample.Chains.Count * Sample.Draws;
        double[][] draws = new double[total][];
        for (int i = 0; i < total; i++)
        {
            draws[i] = new double[Sample.Dimension];
            whitening.ToPosition(Sample.Chains[i / Sample.Draws].Draw(i % Sample.Draws), draws[i]);
        }
        return draws;
    }

    // As the program starts its chains.
    private static double[] Start(int n, RandomStream stream)
    {
        double[] z = new double[n];
        stream.FillNormal(z);
        for (int i = 0; i < n; i++)
            z[i] *= StartSpread;
        return z;
    }
}
