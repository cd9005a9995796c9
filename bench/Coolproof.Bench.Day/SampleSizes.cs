using Coolproof.Sampling.Diagnostics;

namespace Coolproof.Bench.Day;

/// <summary>What draws are worth, by one code for both sides.</summary>
internal static class SampleSizes
{
    private const int Chains = 4;
    private const double Standard = 4;

    /// <summary>Prints for each file: name, least bulk and least tail effective sample size over all parameters, largest R-hat.</summary>
    public static void Print(IEnumerable<string> files)
    {
        foreach (string file in files)
        {
            QuantityDiagnostics[] all = Of(file);
            Console.WriteLine(FormattableString.Invariant(
                $"{Path.GetFileName(file)}\t{Least(all, q => q.BulkSampleSize):R}\t{Least(all, q => q.TailSampleSize):R}\t{all.Max(q => q.RHat):R}"));
        }
    }

    /// <summary>
    /// Prints how well two sets of draws agree: parameters, largest difference of means in Monte Carlo standard errors, and how many beyond 4. Exit code 0
    /// when none is.
    /// </summary>
    public static int Agree(string own, string peer)
    {
        QuantityDiagnostics[] a = Of(own), b = Of(peer);
        double[] off = [.. a.Zip(b, (x, y) => Math.Abs(x.Mean - y.Mean) / double.Hypot(x.MeanError, y.MeanError))];
        int beyond = off.Count(x => !(x <= Standard));
        Console.WriteLine(FormattableString.Invariant($"{off.Length}\t{off.Max():R}\t{beyond}"));
        return beyond == 0 ? 0 : 1;
    }

    // A parameter that can't be assessed counts as worth nothing.
    private static double Least(QuantityDiagnostics[] all, Func<QuantityDiagnostics, double> of) => all.Min(q => double.IsNaN(of(q)) ? 0 : of(q));

    private static QuantityDiagnostics[] Of(string file)
    {
        double[][] draws = NumberFile.Read(file);
        ConvergenceDiagnostics diagnostics = new(Chains, draws.Length / Chains);
        return [.. Enumerable.Range(0, draws[0].Length).Select(i => diagnostics.Assess(draws.Select(d => d[i]).ToArray()))];
    }
}
