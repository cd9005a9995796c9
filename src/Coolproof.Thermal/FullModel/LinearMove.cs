using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Coolproof.Thermal.FullModel;

/// <summary>
/// ∫₀ʰ exp(sJ) ds · v for six bodies, by series on a short step and doubling: no inverse, so runaway and zero eigenvalues need no care.
/// Products and sums are never fused, so every machine gives the same bits.
/// </summary>
internal static class LinearMove
{
    const int N = HeatFlows.Nodes;

    // Matrices are kept column by column, six numbers and two zeros each: a product is then whole vectors scaled and added.
    const int Column = 8, Size = N * Column;

    // Truncation of the series below this norm is under 1e-11 of the result.
    const double SeriesNorm = 0.25;

    /// <summary>The integral.</summary>
    /// <param name="jacobian">36 numbers, row by row, 1/s.</param>
    /// <param name="h">Step, s.</param>
    /// <param name="v">Six numbers; overwritten by the result.</param>
    internal static void Over(ReadOnlySpan<double> jacobian, double h, Span<double> v)
    {
        int doublings = Doublings(jacobian, h);
        double scale = Math.ScaleB(h, -doublings);
        Span<double> a = stackalloc double[Size];
        a.Clear();
        for (int i = 0; i < N; i++)
        {
            for (int j = 0; j < N; j++)
                a[j * Column + i] = scale * jacobian[i * N + j];
        }
        Span<double> sum = stackalloc double[Column];
        sum.Clear();
        v.CopyTo(sum);
        SeriesOfMove(a, scale, sum);
        if (doublings > 0)
            Double(a, doublings, sum);
        sum[..N].CopyTo(v);
    }

    // The second half of a step starts where the first ended: move(2h) = move(h) + exp(hJ) move(h).
    static void Double(ReadOnlySpan<double> a, int doublings, Span<double> sum)
    {
        Span<double> e = stackalloc double[Size];
        Span<double> squared = stackalloc double[Size];
        Span<double> moved = stackalloc double[Column];
        SeriesOfExponential(a, e);
        for (int d = 0; d < doublings; d++)
        {
            Apply(e, sum, moved);
            for (int i = 0; i < N; i++)
                sum[i] += moved[i];
            if (d == doublings - 1)
                break;
            Multiply(e, e, squared);
            Span<double> swap = e;
            e = squared;
            squared = swap;
        }
    }

    static int Doublings(ReadOnlySpan<double> jacobian, double h)
    {
        double norm = 0;
        for (int i = 0; i < N; i++)
        {
            double row = 0;
            for (int j = 0; j < N; j++)
                row += Math.Abs(jacobian[i * N + j]);
            norm = Math.Max(norm, row);
        }
        return norm * h <= SeriesNorm ? 0 : Math.Max(0, (int)Math.Ceiling(Math.Log2(norm * h / SeriesNorm)));
    }

    // Σ Aᵏ h v / (k+1)!, to k = 8.
    static void SeriesOfMove(ReadOnlySpan<double> a, double h, Span<double> sum)
    {
        Span<double> term = stackalloc double[Column];
        Span<double> next = stackalloc double[Column];
        for (int i = 0; i < Column; i++)
            sum[i] = term[i] = h * sum[i];
        for (int k = 2; k <= 9; k++)
        {
            Apply(a, term, next);
            for (int i = 0; i < N; i++)
                sum[i] += term[i] = next[i] / k;
        }
    }

    // Eighth-degree Taylor polynomial by powers up to A⁴, four products in all (Paterson and Stockmeyer 1973).
    static void SeriesOfExponential(ReadOnlySpan<double> a, Span<double> e)
    {
        Span<double> a2 = stackalloc double[Size];
        Span<double> a3 = stackalloc double[Size];
        Span<double> a4 = stackalloc double[Size];
        Span<double> high = stackalloc double[Size];
        Multiply(a, a, a2);
        Multiply(a2, a, a3);
        Multiply(a2, a2, a4);
        for (int i = 0; i < Size; i++)
            high[i] = a[i] * (1.0 / 120) + a2[i] * (1.0 / 720) + a3[i] * (1.0 / 5040) + a4[i] * (1.0 / 40320);
        for (int i = 0; i < N; i++)
            high[i * Column + i] += 1.0 / 24;
        Multiply(a4, high, e);
        for (int i = 0; i < Size; i++)
            e[i] += a[i] + a2[i] * 0.5 + a3[i] * (1.0 / 6);
        for (int i = 0; i < N; i++)
            e[i * Column + i] += 1;
    }

    static void Multiply(ReadOnlySpan<double> a, ReadOnlySpan<double> b, Span<double> product)
    {
        for (int j = 0; j < N; j++)
            Apply(a, b.Slice(j * Column, Column), product.Slice(j * Column, Column));
    }

    static void Apply(ReadOnlySpan<double> a, ReadOnlySpan<double> x, Span<double> y)
    {
        ReadOnlySpan<Vector256<double>> columns = MemoryMarshal.Cast<double, Vector256<double>>(a);
        Vector256<double> top = columns[0] * x[0], bottom = columns[1] * x[0];
        for (int j = 1; j < N; j++)
        {
            top += columns[2 * j] * x[j];
            bottom += columns[2 * j + 1] * x[j];
        }
        Span<Vector256<double>> halves = MemoryMarshal.Cast<double, Vector256<double>>(y);
        halves[0] = top;
        halves[1] = bottom;
    }
}
