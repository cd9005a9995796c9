using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Coolproof.Thermal;

/// <summary>
/// Rows of temperatures on a uniform grid. Each row is made from the one <see cref="Stride"/> rows before it, so that as many
/// chains of multiplications run side by side in the processor; every <see cref="AnchorRows"/> rows the chains start anew from an exact
/// step, which keeps round-off from adding up.
/// </summary>
internal static class GridSampling
{
    /// <summary>Chains side by side: enough to hide the latency of a row's four fused multiply-adds.</summary>
    internal const int Stride = 16;

    /// <summary>Rows between exact steps: 256 links a chain, so about 256 roundings at most.</summary>
    internal const int AnchorRows = 4096;

    internal static void Fill(
        Stepper stepper, ReadOnlySpan<double> state, ReadOnlySpan<double> heat, double first, double every, Span<double> rows)
    {
        int n = stepper.Nodes, count = rows.Length / n;
        if (count == 0) return;
        Propagator single = stepper.Over(every);
        Propagator? stride = count > Stride ? stepper.Over(every * Stride) : null;
        for (int begin = 0; begin < count; begin += AnchorRows)
        {
            int block = Math.Min(AnchorRows, count - begin);
            Span<double> part = rows.Slice(begin * n, block * n);
            stepper.Step(state, heat, first + begin * every, part[..n]);
            for (int k = 1; k < Math.Min(block, Stride); k++) single.Apply(part.Slice((k - 1) * n, n), heat, part.Slice(k * n, n));
            if (block > Stride) Chain(stride!, heat, n, part);
        }
    }

    static void Chain(Propagator stride, ReadOnlySpan<double> heat, int n, Span<double> rows)
    {
        Span<double> gain = stackalloc double[n];
        stride.FillGain(heat, gain);
        if (n == 4) ChainFour(stride.Keep, gain, rows);
        else ChainAny(stride.Keep, gain, n, rows);
    }

    static void ChainFour(ReadOnlySpan<double> keep, ReadOnlySpan<double> gain, Span<double> rows)
    {
        Vector256<double> c0 = Column(keep, 0), c1 = Column(keep, 1), c2 = Column(keep, 2), c3 = Column(keep, 3);
        Vector256<double> constant = Vector256.Create(gain);
        ref double source = ref MemoryMarshal.GetReference(rows);
        ref double target = ref Unsafe.Add(ref source, Stride * 4);
        for (int left = rows.Length / 4 - Stride; left > 0; left--)
        {
            Vector256<double> low = Vector256.MultiplyAddEstimate(c0, Vector256.Create(source), constant);
            Vector256<double> high = c1 * Vector256.Create(Unsafe.Add(ref source, 1));
            low = Vector256.MultiplyAddEstimate(c2, Vector256.Create(Unsafe.Add(ref source, 2)), low);
            high = Vector256.MultiplyAddEstimate(c3, Vector256.Create(Unsafe.Add(ref source, 3)), high);
            (low + high).StoreUnsafe(ref target);
            source = ref Unsafe.Add(ref source, 4);
            target = ref Unsafe.Add(ref target, 4);
        }
    }

    static void ChainAny(ReadOnlySpan<double> keep, ReadOnlySpan<double> gain, int n, Span<double> rows)
    {
        for (int k = Stride * n; k < rows.Length; k += n)
        {
            ReadOnlySpan<double> source = rows.Slice(k - Stride * n, n);
            Span<double> target = rows.Slice(k, n);
            for (int i = 0; i < n; i++)
            {
                double sum = gain[i];
                for (int j = 0; j < n; j++) sum = Math.FusedMultiplyAdd(keep[i * n + j], source[j], sum);
                target[i] = sum;
            }
        }
    }

    static Vector256<double> Column(ReadOnlySpan<double> keep, int j) =>
        Vector256.Create(keep[j], keep[4 + j], keep[8 + j], keep[12 + j]);
}
