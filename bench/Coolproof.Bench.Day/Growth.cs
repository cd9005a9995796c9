using System.Diagnostics;
using Coolproof.Evidence.Model;
using Coolproof.Notebook;
using Coolproof.Sampling.Hamiltonian;

namespace Coolproof.Bench.Day;

/// <summary>What one table costs, in a process of its own.</summary>
internal static class Growth
{
    /// <summary>
    /// Prints two lines, so that what is known stands there should the second take too long. "density": runs, readings, parameters, globals; seconds of one
    /// gradient; bytes of one chain's density. "sampling": seconds of preparation and pilot; seconds of the whole; the part of the sampling that was done (below 1 the
    /// whole has what was done scaled up); seconds of one whitened gradient; peak memory in bytes; seconds of all cores in the same, scaled up
    /// likewise; gradients of preparation and pilot.
    /// </summary>
    /// <param name="path">Table.</param>
    /// <param name="limitS">Seconds of sampling after which it is stopped.</param>
    public static void Print(string path, double limitS)
    {
        ReadingsTable table = BenchTable.Read(path);
        DayModel model = DayModelBuilder.Build(table);
        double[] u = new double[model.Dimension], gradient = new double[model.Dimension];
        DayDensity density = new(model);
        density.Evaluate(u, gradient);
        long before = GC.GetAllocatedBytesForCurrentThread();
        density = new(model);
        long bytes = GC.GetAllocatedBytesForCurrentThread() - before;
        double seconds = GradientSeconds(density, u, gradient);
        Console.WriteLine(FormattableString.Invariant(
            $"density\t{model.Runs.Length}\t{model.Readings.Length}\t{model.Dimension}\t{model.Layout.Globals}\t{seconds:R}\t{bytes}"));
        TimeSpan cores = Environment.CpuUsage.TotalTime;
        long begin = Stopwatch.GetTimestamp();
        DayFit fit = DayFit.Of(DayModelBuilder.Build(table)).Refined(1, 2);
        double prepared = Stopwatch.GetElapsedTime(begin).TotalSeconds, preparedCores = (Environment.CpuUsage.TotalTime - cores).TotalSeconds;
        double whitened = OwnSampling.GradientSeconds(fit, 200);
        cores = Environment.CpuUsage.TotalTime;
        (double sampled, double done) = SampledUpTo(fit, limitS);
        using Process process = Process.GetCurrentProcess();
        double sampledCores = (Environment.CpuUsage.TotalTime - cores).TotalSeconds;
        Console.WriteLine(FormattableString.Invariant(
            $"sampling\t{prepared:R}\t{prepared + sampled / done:R}\t{done:R}\t{whitened:R}\t{process.PeakWorkingSet64}\t{preparedCores + sampledCores / done:R}\t{fit.Gradients}"));
    }

    private static (double Seconds, double Done) SampledUpTo(DayFit fit, double limitS)
    {
        using CancellationTokenSource stop = new(TimeSpan.FromSeconds(limitS));
        Done done = new();
        long begin = Stopwatch.GetTimestamp();
        try
        {
            NutsResult _ = OwnSampling.Sampled(fit, 1, done, stop.Token);
            return (Stopwatch.GetElapsedTime(begin).TotalSeconds, 1);
        }
        catch (OperationCanceledException)
        {
            return (Stopwatch.GetElapsedTime(begin).TotalSeconds, done.Part);
        }
    }

    // The fastest single one: longer batches are cut into by other work.
    private static double GradientSeconds(DayDensity density, double[] u, double[] gradient)
    {
        double best = double.PositiveInfinity;
        for (long start = Stopwatch.GetTimestamp(); Stopwatch.GetElapsedTime(start).TotalSeconds < 1.5;)
        {
            long begin = Stopwatch.GetTimestamp();
            density.Evaluate(u, gradient);
            best = Math.Min(best, Stopwatch.GetElapsedTime(begin).TotalSeconds);
        }
        return best;
    }

    private sealed class Done : IProgress<double>
    {
        public double Part { get; private set; }

        public void Report(double value) => Part = Math.Max(Part, value);
    }
}
