using System.Numerics;
using System.Runtime.InteropServices;

namespace Coolproof.Sampling.Laplace;

/// <summary>
/// Products with a tall dense matrix kept column by column. Four columns go at once, so that the result is loaded and stored once for four of them.
/// </summary>
static class Columns
{
    /// <summary>y += sign · M x; <paramref name="matrix"/> has x.Length columns of y.Length numbers.</summary>
    public static void AddProduct(ReadOnlySpan<double> matrix, ReadOnlySpan<double> x, double sign, Span<double> y)
    {
        int rows = y.Length, j = 0;
        for (; j + 4 <= x.Length; j += 4)
            AddFour(matrix.Slice(j * rows, 4 * rows), sign * x[j], sign * x[j + 1], sign * x[j + 2], sign * x[j + 3], y);
        for (; j < x.Length; j++)
            AddScaled(matrix.Slice(j * rows, rows), sign * x[j], y);
    }

    /// <summary>y += sign · M' x; <paramref name="matrix"/> has y.Length columns of x.Length numbers.</summary>
    public static void AddTransposedProduct(ReadOnlySpan<double> matrix, ReadOnlySpan<double> x, double sign, Span<double> y)
    {
        int rows = x.Length, j = 0;
        for (; j + 4 <= y.Length; j += 4)
            DotFour(matrix.Slice(j * rows, 4 * rows), x, sign, y.Slice(j, 4));
        for (; j < y.Length; j++)
            y[j] += sign * Dot(matrix.Slice(j * rows, rows), x);
    }

    /// <summary>Sum of products.</summary>
    public static double Dot(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        ReadOnlySpan<Vector<double>> va = Wide(a), vb = Wide(b[..a.Length]);
        Vector<double> sum0 = default, sum1 = default;
        int i = 0;
        for (; i + 2 <= va.Length; i += 2)
        {
            sum0 = Vector.FusedMultiplyAdd(va[i], vb[i], sum0);
            sum1 = Vector.FusedMultiplyAdd(va[i + 1], vb[i + 1], sum1);
        }
        if (i < va.Length) sum0 = Vector.FusedMultiplyAdd(va[i], vb[i], sum0);
        double sum = Vector.Sum(sum0 + sum1);
        for (int k = va.Length * Vector<double>.Count; k < a.Length; k++) sum += a[k] * b[k];
        return sum;
    }

    /// <summary>y += factor · x.</summary>
    public static void AddScaled(ReadOnlySpan<double> x, double factor, Span<double> y)
    {
        ReadOnlySpan<Vector<double>> vx = Wide(x);
        Span<Vector<double>> vy = Wide(y[..x.Length]);
        Vector<double> f = new(factor);
        for (int i = 0; i < vx.Length && i < vy.Length; i++) vy[i] = Vector.FusedMultiplyAdd(vx[i], f, vy[i]);
        for (int k = vx.Length * Vector<double>.Count; k < x.Length; k++) y[k] += factor * x[k];
    }

    /// <summary>y += a ∘ x, entry by entry.</summary>
    public static void AddEntrywise(ReadOnlySpan<double> a, ReadOnlySpan<double> x, Span<double> y)
    {
        ReadOnlySpan<Vector<double>> va = Wide(a), vx = Wide(x[..a.Length]);
        Span<Vector<double>> vy = Wide(y[..a.Length]);
        for (int i = 0; i < va.Length && i < vx.Length && i < vy.Length; i++) vy[i] = Vector.FusedMultiplyAdd(va[i], vx[i], vy[i]);
        for (int k = va.Length * Vector<double>.Count; k < a.Length; k++) y[k] += a[k] * x[k];
    }

    static void AddFour(ReadOnlySpan<double> four, double x0, double x1, double x2, double x3, Span<double> y)
    {
        int rows = y.Length;
        ReadOnlySpan<double> c0 = four[..rows], c1 = four.Slice(rows, rows), c2 = four.Slice(2 * rows, rows), c3 = four.Slice(3 * rows, rows);
        ReadOnlySpan<Vector<double>> v0 = Wide(c0), v1 = Wide(c1), v2 = Wide(c2), v3 = Wide(c3);
        Span<Vector<double>> vy = Wide(y);
        Vector<double> f0 = new(x0), f1 = new(x1), f2 = new(x2), f3 = new(x3);
        for (int i = 0; i < vy.Length && i < v0.Length && i < v1.Length && i < v2.Length && i < v3.Length; i++)
        {
            Vector<double> left = Vector.FusedMultiplyAdd(v0[i], f0, Vector.FusedMultiplyAdd(v1[i], f1, vy[i]));
            vy[i] = left + Vector.FusedMultiplyAdd(v2[i], f2, v3[i] * f3);
        }
        for (int k = vy.Length * Vector<double>.Count; k < rows; k++) y[k] += x0 * c0[k] + x1 * c1[k] + x2 * c2[k] + x3 * c3[k];
    }

    static void DotFour(ReadOnlySpan<double> four, ReadOnlySpan<double> x, double sign, Span<double> y)
    {
        int rows = x.Length;
        ReadOnlySpan<double> c0 = four[..rows], c1 = four.Slice(rows, rows), c2 = four.Slice(2 * rows, rows), c3 = four.Slice(3 * rows, rows);
        ReadOnlySpan<Vector<double>> v0 = Wide(c0), v1 = Wide(c1), v2 = Wide(c2), v3 = Wide(c3), vx = Wide(x);
        Vector<double> s0 = default, s1 = default, s2 = default, s3 = default;
        for (int i = 0; i < vx.Length && i < v0.Length && i < v1.Length && i < v2.Length && i < v3.Length; i++)
        {
            Vector<double> xi = vx[i];
            s0 = Vector.FusedMultiplyAdd(v0[i], xi, s0);
            s1 = Vector.FusedMultiplyAdd(v1[i], xi, s1);
            s2 = Vector.FusedMultiplyAdd(v2[i], xi, s2);
            s3 = Vector.FusedMultiplyAdd(v3[i], xi, s3);
        }
        double d0 = Vector.Sum(s0), d1 = Vector.Sum(s1), d2 = Vector.Sum(s2), d3 = Vector.Sum(s3);
        for (int k = vx.Length * Vector<double>.Count; k < rows; k++)
        {
            double xk = x[k];
            d0 += c0[k] * xk;
            d1 += c1[k] * xk;
            d2 += c2[k] * xk;
            d3 += c3[k] * xk;
        }
        y[0] += sign * d0;
        y[1] += sign * d1;
        y[2] += sign * d2;
        y[3] += sign * d3;
    }

    static ReadOnlySpan<Vector<double>> Wide(ReadOnlySpan<double> x) => MemoryMarshal.Cast<double, Vector<double>>(x);

    static Span<Vector<double>> Wide(Span<double> x) => MemoryMarshal.Cast<double, Vector<double>>(x);
}
