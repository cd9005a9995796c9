using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace Coolproof.Sampling.Laplace;

/// <summary>
/// Products with a tall dense matrix kept column by column. Four columns go at once, so that the vector is loaded (and stored) once for four of them.
/// Lengths are checked on entry; the loops inside then go without.
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
        int n = a.Length, i = 0, wide = Vector<double>.Count;
        ref double ra = ref First(a), rb = ref First(b[..n]);
        Vector<double> sum0 = default, sum1 = default;
        for (; i + 2 * wide <= n; i += 2 * wide)
        {
            sum0 = Vector.FusedMultiplyAdd(Load(ref ra, i), Load(ref rb, i), sum0);
            sum1 = Vector.FusedMultiplyAdd(Load(ref ra, i + wide), Load(ref rb, i + wide), sum1);
        }
        double sum = Vector.Sum(sum0 + sum1);
        for (; i < n; i++) sum += a[i] * b[i];
        return sum;
    }

    /// <summary>y += factor · x.</summary>
    public static void AddScaled(ReadOnlySpan<double> x, double factor, Span<double> y)
    {
        int n = x.Length, i = 0;
        ref double rx = ref First(x), ry = ref First(y[..n]);
        Vector<double> f = new(factor);
        for (; i + Vector<double>.Count <= n; i += Vector<double>.Count)
            Vector.FusedMultiplyAdd(Load(ref rx, i), f, Load(ref ry, i)).StoreUnsafe(ref ry, (nuint)i);
        for (; i < n; i++) y[i] += factor * x[i];
    }

    /// <summary>y += a ∘ x, entry by entry.</summary>
    public static void AddEntrywise(ReadOnlySpan<double> a, ReadOnlySpan<double> x, Span<double> y)
    {
        int n = a.Length, i = 0;
        ref double ra = ref First(a), rx = ref First(x[..n]), ry = ref First(y[..n]);
        for (; i + Vector<double>.Count <= n; i += Vector<double>.Count)
            Vector.FusedMultiplyAdd(Load(ref ra, i), Load(ref rx, i), Load(ref ry, i)).StoreUnsafe(ref ry, (nuint)i);
        for (; i < n; i++) y[i] += a[i] * x[i];
    }

    static void AddFour(ReadOnlySpan<double> four, double x0, double x1, double x2, double x3, Span<double> y)
    {
        int rows = y.Length, i = 0;
        ref double c0 = ref First(four[..(4 * rows)]), ry = ref First(y);
        ref double c1 = ref Unsafe.Add(ref c0, rows), c2 = ref Unsafe.Add(ref c1, rows), c3 = ref Unsafe.Add(ref c2, rows);
        Vector<double> f0 = new(x0), f1 = new(x1), f2 = new(x2), f3 = new(x3);
        for (; i + Vector<double>.Count <= rows; i += Vector<double>.Count)
        {
            Vector<double> left = Vector.FusedMultiplyAdd(Load(ref c0, i), f0, Vector.FusedMultiplyAdd(Load(ref c1, i), f1, Load(ref ry, i)));
            Vector<double> right = Vector.FusedMultiplyAdd(Load(ref c2, i), f2, Load(ref c3, i) * f3);
            (left + right).StoreUnsafe(ref ry, (nuint)i);
        }
        for (; i < rows; i++) y[i] += x0 * four[i] + x1 * four[rows + i] + x2 * four[2 * rows + i] + x3 * four[3 * rows + i];
    }

    static void DotFour(ReadOnlySpan<double> four, ReadOnlySpan<double> x, double sign, Span<double> y)
    {
        int rows = x.Length, i = 0;
        ref double c0 = ref First(four[..(4 * rows)]), rx = ref First(x);
        ref double c1 = ref Unsafe.Add(ref c0, rows), c2 = ref Unsafe.Add(ref c1, rows), c3 = ref Unsafe.Add(ref c2, rows);
        Vector<double> s0 = default, s1 = default, s2 = default, s3 = default;
        for (; i + Vector<double>.Count <= rows; i += Vector<double>.Count)
        {
            Vector<double> xi = Load(ref rx, i);
            s0 = Vector.FusedMultiplyAdd(Load(ref c0, i), xi, s0);
            s1 = Vector.FusedMultiplyAdd(Load(ref c1, i), xi, s1);
            s2 = Vector.FusedMultiplyAdd(Load(ref c2, i), xi, s2);
            s3 = Vector.FusedMultiplyAdd(Load(ref c3, i), xi, s3);
        }
        double d0 = Vector.Sum(s0), d1 = Vector.Sum(s1), d2 = Vector.Sum(s2), d3 = Vector.Sum(s3);
        for (; i < rows; i++)
        {
            d0 += four[i] * x[i];
            d1 += four[rows + i] * x[i];
            d2 += four[2 * rows + i] * x[i];
            d3 += four[3 * rows + i] * x[i];
        }
        y[0] += sign * d0;
        y[1] += sign * d1;
        y[2] += sign * d2;
        y[3] += sign * d3;
    }

    static ref double First(ReadOnlySpan<double> x) => ref MemoryMarshal.GetReference(x);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    static Vector<double> Load(ref double from, int i) => Vector.LoadUnsafe(ref from, (nuint)i);
}
