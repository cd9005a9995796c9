using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace Coolproof.Sampling.Hamiltonian;

/// <summary>The sampler's inner loops, each one pass over memory. All arrays have one length unless said otherwise.</summary>
/// <remarks>Optimised at once: code on <see cref="Vector{T}"/> is never compiled ahead, and a short run would end before the runtime got round to it.</remarks>
static class Kernels
{
    /// <summary>Half kick and drift: momentum' = momentum + half·gradient; position' = position + step·scale·momentum'.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static void KickDrift(PhasePoint from, PhasePoint to, double[] scale, double step)
    {
        int n = scale.Length, i = 0;
        double half = 0.5 * step;
        ref double p = ref First(from.Momentum), g = ref First(from.Gradient), q = ref First(from.Position), s = ref First(scale);
        ref double p2 = ref First(to.Momentum), q2 = ref First(to.Position);
        Vector<double> vHalf = new(half), vStep = new(step);
        for (; i <= n - Vector<double>.Count; i += Vector<double>.Count)
        {
            Vector<double> kicked = Vector.FusedMultiplyAdd(vHalf, Load(ref g, i), Load(ref p, i));
            Store(kicked, ref p2, i);
            Store(Vector.FusedMultiplyAdd(vStep * Load(ref s, i), kicked, Load(ref q, i)), ref q2, i);
        }

        for (; i < n; i++)
        {
            double kicked = Math.FusedMultiplyAdd(half, from.Gradient[i], from.Momentum[i]);
            to.Momentum[i] = kicked;
            to.Position[i] = Math.FusedMultiplyAdd(step * scale[i], kicked, from.Position[i]);
        }
    }

    /// <summary>Second half kick with the fresh gradient, which is put into the metric's units on the way. Returns momentum·momentum.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static double Kick(PhasePoint at, double[] scale, double step)
    {
        int n = scale.Length, i = 0;
        double half = 0.5 * step;
        ref double p = ref First(at.Momentum), g = ref First(at.Gradient), s = ref First(scale);
        Vector<double> vHalf = new(half), squares = default;
        for (; i <= n - Vector<double>.Count; i += Vector<double>.Count)
        {
            Vector<double> gradient = Load(ref g, i) * Load(ref s, i);
            Vector<double> kicked = Vector.FusedMultiplyAdd(vHalf, gradient, Load(ref p, i));
            Store(gradient, ref g, i);
            Store(kicked, ref p, i);
            squares = Vector.FusedMultiplyAdd(kicked, kicked, squares);
        }

        double sum = Vector.Sum(squares);
        for (; i < n; i++)
        {
            double gradient = at.Gradient[i] * scale[i];
            double kicked = Math.FusedMultiplyAdd(half, gradient, at.Momentum[i]);
            at.Gradient[i] = gradient;
            at.Momentum[i] = kicked;
            sum = Math.FusedMultiplyAdd(kicked, kicked, sum);
        }

        return sum;
    }

    /// <summary>
    /// Joins two single points: writes a + b to <paramref name="total"/> and tells whether both momenta still point along it.
    /// </summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static bool JoinPoints(double[] a, double[] b, double[] total)
    {
        int n = total.Length, i = 0;
        ref double ra = ref First(a), rb = ref First(b), rt = ref First(total);
        Vector<double> alongA = default, alongB = default;
        for (; i <= n - Vector<double>.Count; i += Vector<double>.Count)
        {
            Vector<double> va = Load(ref ra, i), vb = Load(ref rb, i), sum = va + vb;
            Store(sum, ref rt, i);
            alongA = Vector.FusedMultiplyAdd(va, sum, alongA);
            alongB = Vector.FusedMultiplyAdd(vb, sum, alongB);
        }

        double dotA = Vector.Sum(alongA), dotB = Vector.Sum(alongB);
        for (; i < n; i++)
        {
            double va = a[i], vb = b[i];
            total[i] = va + vb;
            dotA += va * (va + vb);
            dotB += vb * (va + vb);
        }

        return dotA > 0 && dotB > 0;
    }

    /// <summary>
    /// Joins two stretches of a trajectory: writes the sum of their momentum sums to <paramref name="total"/> (which may be one of them) and
    /// tells whether nothing has turned: neither the whole, nor either stretch together with the first point of the other
    /// (the generalised criterion of Betancourt 2017 with the extra checks across the seam).
    /// </summary>
    /// <param name="sumA">Sum of the momenta of the first stretch.</param>
    /// <param name="sumB">Sum of the momenta of the second.</param>
    /// <param name="farA">Momentum at the outer end of the first.</param>
    /// <param name="nearA">Momentum of the first at the seam.</param>
    /// <param name="nearB">Momentum of the second at the seam.</param>
    /// <param name="farB">Momentum at the outer end of the second.</param>
    /// <param name="total">Receives sumA + sumB.</param>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static bool Join(double[] sumA, double[] sumB, double[] farA, double[] nearA, double[] nearB, double[] farB, double[] total)
    {
        int n = total.Length, i = 0;
        ref double rsa = ref First(sumA), rsb = ref First(sumB), rt = ref First(total);
        ref double rfa = ref First(farA), rna = ref First(nearA), rnb = ref First(nearB), rfb = ref First(farB);
        Vector<double> w1 = default, w2 = default, a1 = default, a2 = default, b1 = default, b2 = default;
        for (; i <= n - Vector<double>.Count; i += Vector<double>.Count)
        {
            Vector<double> sa = Load(ref rsa, i), sb = Load(ref rsb, i), fa = Load(ref rfa, i), na = Load(ref rna, i), nb = Load(ref rnb, i), fb = Load(ref rfb, i);
            Vector<double> whole = sa + sb, aPlus = sa + nb, bPlus = sb + na;
            Store(whole, ref rt, i);
            w1 = Vector.FusedMultiplyAdd(fa, whole, w1);
            w2 = Vector.FusedMultiplyAdd(fb, whole, w2);
            a1 = Vector.FusedMultiplyAdd(fa, aPlus, a1);
            a2 = Vector.FusedMultiplyAdd(nb, aPlus, a2);
            b1 = Vector.FusedMultiplyAdd(na, bPlus, b1);
            b2 = Vector.FusedMultiplyAdd(fb, bPlus, b2);
        }

        double d1 = Vector.Sum(w1), d2 = Vector.Sum(w2), d3 = Vector.Sum(a1), d4 = Vector.Sum(a2), d5 = Vector.Sum(b1), d6 = Vector.Sum(b2);
        for (; i < n; i++)
        {
            double whole = sumA[i] + sumB[i], aPlus = sumA[i] + nearB[i], bPlus = sumB[i] + nearA[i];
            total[i] = whole;
            d1 += farA[i] * whole;
            d2 += farB[i] * whole;
            d3 += farA[i] * aPlus;
            d4 += nearB[i] * aPlus;
            d5 += nearA[i] * bPlus;
            d6 += farB[i] * bPlus;
        }

        return d1 > 0 && d2 > 0 && d3 > 0 && d4 > 0 && d5 > 0 && d6 > 0;
    }

    /// <summary>result = matrixᵀ x for a triangular k × k matrix kept row by row (lower: rows ≥ column count; upper: rows ≤).</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static void TransposedProduct(double[] matrix, bool isLower, ReadOnlySpan<double> x, Span<double> result)
    {
        int k = result.Length, width = Vector<double>.Count, column = 0;
        for (; column <= k - 2 * width; column += 2 * width)
        {
            Vector<double> left = default, right = default;
            int start = isLower ? column : 0, end = isLower ? k : Math.Min(k, column + 2 * width);
            for (int row = start; row < end; row++)
            {
                Vector<double> factor = new(x[row]);
                ref double m = ref matrix[row * k + column];
                left = Vector.FusedMultiplyAdd(factor, Vector.LoadUnsafe(ref m), left);
                right = Vector.FusedMultiplyAdd(factor, Vector.LoadUnsafe(ref m, (nuint)width), right);
            }

            left.CopyTo(result[column..]);
            right.CopyTo(result[(column + width)..]);
        }

        for (; column < k; column++)
        {
            double sum = 0;
            int start = isLower ? column : 0, end = isLower ? k : column + 1;
            for (int row = start; row < end; row++)
                sum = Math.FusedMultiplyAdd(x[row], matrix[row * k + column], sum);
            result[column] = sum;
        }
    }

    static ref double First(double[] array) => ref MemoryMarshal.GetArrayDataReference(array);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    static Vector<double> Load(ref double first, int index) => Vector.LoadUnsafe(ref first, (nuint)index);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    static void Store(Vector<double> value, ref double first, int index) => value.StoreUnsafe(ref first, (nuint)index);
}
