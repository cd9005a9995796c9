using System.Diagnostics;
using Coolproof.Evidence.Model;
using Coolproof.Notebook;

namespace Coolproof.Bench.Day;

/// <summary>What one table costs, in a process of its own.</summary>
internal static class Growth
{
    /// <summary>
    /// Prints runs, readings, parameters, globals; seconds of one gradient; bytes a chain's density takes; seconds of preparation; seconds of the whole
    /// sampling; peak memory in bytes.
    /// </summary>
    public static void Print(string path)
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
        Console.Write(FormattableString.Invariant(
            $"{model.Runs.Length}\t{model.Readings.Length}\t{model.Dimension}\t{model.Layout.Globals}\t{seconds:R}\t{bytes}"));
        Console.Out.Flush();
        OwnSampling own = OwnSampling.Of(table, 1);
        using Process process = Process.GetCurrentProcess();
        Console.WriteLine(FormattableString.Invariant(
            $"\t{own.PreparationS:R}\t{own.TotalS:R}\t{own.Sample.Gradients}\t{OwnSampling.GradientSeconds(own.Fit, 200):R}\t{process.PeakWorkingSet64}"));
    }

    private static double GradientSeconds(DayDensity density, double[] u, double[] gradient)
    {
        double best = double.PositiveInfinity;
        for (long start = Stopwatch.GetTimestamp(); Stopwatch.GetElapsedTime(start).TotalSeconds < 1.5;)
        {
            long begin = Stopwatch.GetTimestamp();
            for (int i = 0; i < 10; i++)
                density.Evaluate(u, gradient);
            best = Math.Min(best, Stopwatch.GetElapsedTime(begin).TotalSeconds / 10);
        }
        return best;
    }
}
