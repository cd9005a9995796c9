using System.Globalization;

namespace Coolproof.Sampling.Diagnostics;

/// <summary>Lets draws through, or names the quantity that is known worst.</summary>
public static class ConvergenceGate
{
    /// <summary>Judges all named quantities.</summary>
    /// <param name="names">Names, one per quantity.</param>
    /// <param name="values">Quantity × (chain after chain, draw after draw).</param>
    /// <param name="chains">Chains.</param>
    /// <param name="divergences">Divergent draws over all chains.</param>
    /// <param name="limits">What must be kept.</param>
    /// <param name="threads">Threads at most; the figures are the same whatever it is.</param>
    /// <exception cref="ArgumentException">Names and quantities differ in number, or a quantity's length is no multiple of the chains.</exception>
    public static GateResult Check(IReadOnlyList<string> names, IReadOnlyList<double[]> values, int chains, int divergences, GateLimits limits, int threads = 1)
    {
        if (names.Count != values.Count || names.Count == 0)
            throw new ArgumentException($"{names.Count} names for {values.Count} quantities.", nameof(names));
        int total = values[0].Length;
        if (total == 0 || total % chains != 0)
            throw new ArgumentException($"{total} draws over {chains} chains.", nameof(values));
        QuantityDiagnostics[] figures = new QuantityDiagnostics[values.Count];
        Parallel.For(0, values.Count, new ParallelOptions { MaxDegreeOfParallelism = threads }, () => new ConvergenceDiagnostics(chains, total / chains), (q, _, diagnostics) =>
        {
            figures[q] = diagnostics.Assess(values[q]);
            return diagnostics;
        }, _ => { });
        double share = (double)divergences / total;
        int worst = Enumerable.Range(0, figures.Length).MaxBy(i => Severity(figures[i], limits));
        (string reason, string remedy) = share > limits.DivergentShare
            ? (Text($"{divergences} of {total} draws diverged, more than {limits.DivergentShare:0.##%}"), "Smaller steps, or a parametrisation with less curvature.")
            : Severity(figures[worst], limits) >= 1 ? Explain(names[worst], figures[worst], values[worst], limits) : ("", "");
        return new GateResult(
            reason == "",
            reason == "" || share > limits.DivergentShare ? null : names[worst],
            reason,
            remedy,
            figures.Aggregate(double.NegativeInfinity, (most, f) => Math.Max(most, f.RHat)),
            figures.Aggregate(double.PositiveInfinity, (least, f) => Math.Min(least, Math.Min(f.BulkSampleSize, f.TailSampleSize))),
            share,
            figures);
    }

    /// <summary>How far past its limits a quantity is: 1 at a limit, more beyond, infinite without figures.</summary>
    static double Severity(in QuantityDiagnostics f, GateLimits limits)
    {
        double severity = Math.Max((f.RHat - 1) / (limits.RHat - 1), limits.SampleSize / Math.Min(f.BulkSampleSize, f.TailSampleSize));
        return double.IsNaN(severity) ? double.PositiveInfinity : severity;
    }

    static (string Reason, string Remedy) Explain(string name, in QuantityDiagnostics f, double[] values, GateLimits limits)
    {
        if (!Array.TrueForAll(values, double.IsFinite))
            return ($"{name} has draws that are not finite numbers", "Look for an overflow or a division by zero in how it is computed.");
        if (double.IsNaN(f.RHat) || double.IsNaN(f.BulkSampleSize) || double.IsNaN(f.TailSampleSize))
        {
            return f.StandardDeviation > 0
                ? ($"{name} has too few draws to judge", "Draw more.")
                : ($"{name} never moves", "Leave constants out, or find out why the chains are stuck.");
        }

        return f.RHat >= limits.RHat
            ? (Text($"R-hat of {name} is {f.RHat:0.000}, not below {limits.RHat:0.###}: the chains disagree"), "Draw more; if they stay apart, look for a second mode or a bad start.")
            : (Text($"{name} has {Math.Min(f.BulkSampleSize, f.TailSampleSize):0} effective draws ({(f.BulkSampleSize <= f.TailSampleSize ? "bulk" : "tail")}), not above {limits.SampleSize:0}"), "Draw more.");
    }

    static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
