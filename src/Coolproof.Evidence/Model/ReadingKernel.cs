using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using V = System.Runtime.Intrinsics.Vector512<double>;
using Vec = System.Runtime.Intrinsics.Vector512;

namespace Coolproof.Evidence.Model;

/// <summary>
/// Log density of many readings at once. What a reading falls short of its expected value, x = f (T − T_sur) − e, is an exponential aim loss of mean s plus
/// scatter that is normal with sd σ (weight 0.95) or 5σ (weight 0.05): two exponentially modified Gaussians.
/// </summary>
internal sealed class ReadingKernel
{
    private const double LogTwo = 0.69314718055994531, Sqrt1Over2 = 0.70710678118654752, TwoOverSqrtPi = 1.1283791670955126;
    private readonly int _padded;

    /// <summary>Room for a number of readings.</summary>
    public ReadingKernel(int readings)
    {
        _padded = (readings + V.Count - 1) / V.Count * V.Count;
        Counts = new double[_padded];
        Array.Fill(Counts, 1, 0, readings);
        Shortfall = new double[_padded];
        Loss = new double[_padded];
        Scatter = new double[_padded];
        Array.Fill(Loss, 1);
        Array.Fill(Scatter, 1);
        ByShortfall = new double[_padded];
        ByLoss = new double[_padded];
        ByScatter = new double[_padded];
    }

    private double[] Counts { get; }

    /// <summary>x, K.</summary>
    public double[] Shortfall { get; }

    /// <summary>s, K; positive.</summary>
    public double[] Loss { get; }

    /// <summary>σ, K; positive.</summary>
    public double[] Scatter { get; }

    /// <summary>Derivative of the log density by x.</summary>
    public double[] ByShortfall { get; }

    /// <summary>Derivative of the log density by s.</summary>
    public double[] ByLoss { get; }

    /// <summary>Derivative of the log density by σ.</summary>
    public double[] ByScatter { get; }

    /// <summary>Sum of the log densities; fills the derivatives.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public double Evaluate()
    {
        V sum = V.Zero, logNarrow = Vec.Create(Math.Log(1 - Priors.WideWeight)), logWide = Vec.Create(Math.Log(Priors.WideWeight));
        for (int i = 0; i < _padded; i += V.Count)
        {
            V x = Load(Shortfall, i), s = Load(Loss, i), sigma = Load(Scatter, i), counts = Load(Counts, i);
            V rate = V.One / s;
            Component narrow = Component.Of(x, rate, sigma), wide = Component.Of(x, rate, Priors.WideFactor * sigma);
            V a = narrow.LogDensity + logNarrow, b = wide.LogDensity + logWide;
            V e = Vec.Exp(-Vec.Abs(a - b)), total = V.One + e;
            V big = V.One / total, small = e / total;
            V first = Vec.GreaterThanOrEqual(a, b);
            V wa = Vec.ConditionalSelect(first, big, small) * counts, wb = Vec.ConditionalSelect(first, small, big) * counts;
            sum += counts * (Vec.Max(a, b) + Vec.Log(total * rate) - Vec.Create(LogTwo));
            Store(ByShortfall, i, wa * narrow.ByX + wb * wide.ByX);
            Store(ByLoss, i, -(rate * rate) * (wa * narrow.ByRate + wb * wide.ByRate + counts * s));
            Store(ByScatter, i, wa * narrow.BySigma + wb * Priors.WideFactor * wide.BySigma);
        }
        return Vec.Sum(sum);
    }

    private static V Load(double[] a, int i) => Vec.LoadUnsafe(ref MemoryMarshal.GetArrayDataReference(a), (nuint)i);

    private static void Store(double[] a, int i, V v) => v.StoreUnsafe(ref MemoryMarshal.GetArrayDataReference(a), (nuint)i);

    /// <summary>
    /// One component without its −log(2s): −z²/2 + log erfcx(v), z = x/σ, v = (σ/s − z)/√2, and its derivatives by x, by 1/s and by σ.
    /// </summary>
    private ref struct Component
    {
        public V LogDensity, ByX, ByRate, BySigma;

        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        public static Component Of(V x, V rate, V sigma)
        {
            V inverse = V.One / sigma, z = x * inverse, v = (sigma * rate - z) * Sqrt1Over2;
            V abs = Vec.Abs(v), square = v * v, negative = Vec.LessThan(v, V.Zero);
            V right = ScaledComplement(abs), damp = Vec.Exp(-square);
            // erfcx(−|v|) = 2 exp(v²) − erfcx(|v|): the factor exp(v²) goes into the logarithm.
            V argument = Vec.ConditionalSelect(negative, Vec.Create(2.0) - damp * right, right);
            // −z²/2 + v² is written out: for a reading far off both are huge and their difference is not.
            V along = sigma * rate, logErfcx = Vec.Log(argument) + Vec.ConditionalSelect(negative, along * (0.5 * along - z), -0.5 * (z * z));
            V slope = 2.0 * v - TwoOverSqrtPi * Vec.ConditionalSelect(negative, damp, V.One) / argument;
            Component c = default;
            c.LogDensity = logErfcx;
            c.ByX = -(z + slope * Sqrt1Over2) * inverse;
            c.ByRate = slope * sigma * Sqrt1Over2;
            c.BySigma = z * z * inverse + slope * (rate + z * inverse) * Sqrt1Over2;
            return c;
        }
    }

    /// <summary>
    /// erfcx(x) = exp(x²) erfc(x) for x ≥ 0 by (1 + 2x)⁻¹ times a polynomial in (x − 2.5)/(x + 2.5), as in Shepherd and Laframboise (1981), Math. Comp. 36, 249;
    /// coefficients computed for this program from a Chebyshev expansion in 60 digits, relative error below 2e-15.
    /// </summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static V ScaledComplement(V x)
    {
        V t = (x - Vec.Create(2.5)) / (x + Vec.Create(2.5)), t2 = t * t;
        // Even and odd parts separately: two short chains instead of a long one.
        V even = Vec.Create(1.043327246672333e-08);
        V odd = Vec.Create(-2.640664980532181e-10);
        even = Fma(even, t2, -1.0181458785967409e-07);
        odd = Fma(odd, t2, -5.076001673367263e-08);
        even = Fma(even, t2, 4.973311423124062e-07);
        odd = Fma(odd, t2, 6.337238132100903e-07);
        even = Fma(even, t2, -1.550921327837679e-06);
        odd = Fma(odd, t2, -4.306021915965564e-06);
        even = Fma(even, t2, 2.5875002384947698e-06);
        odd = Fma(odd, t2, 2.2748070736397008e-05);
        even = Fma(even, t2, 6.2749300957096e-06);
        odd = Fma(odd, t2, -0.00011354002162922977);
        even = Fma(even, t2, -8.848168029900339e-05);
        odd = Fma(odd, t2, 0.0006321285094451136);
        even = Fma(even, t2, 0.0004918662388834135);
        odd = Fma(odd, t2, -0.004382078945302015);
        even = Fma(even, t2, 0.0009318927733468689);
        odd = Fma(odd, t2, 0.0327608933176992);
        even = Fma(even, t2, -0.10296705603621854);
        odd = Fma(odd, t2, 0.15762991902137585);
        even = Fma(even, t2, -0.09902453957365122);
        odd = Fma(odd, t2, -0.12235676308238377);
        even = Fma(even, t2, 1.2648381843668617);
        return Vec.FusedMultiplyAdd(odd, t, even) / (V.One + 2.0 * x);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static V Fma(V a, V b, double c) => Vec.FusedMultiplyAdd(a, b, Vec.Create(c));
}
