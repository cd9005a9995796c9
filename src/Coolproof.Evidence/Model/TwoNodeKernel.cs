using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using V = System.Runtime.Intrinsics.Vector512<double>;
using Vec = System.Runtime.Intrinsics.Vector512;

namespace Coolproof.Evidence.Model;

/// <summary>
/// Exact steps of the two-node motor for many intervals at once, and their adjoint. In an interval of t seconds, core x₁ and can x₂ (K over the air) obey
/// dx/dt = A x + w u e^(−νt) with u = (1, 0) and A = [[−κ + a, κ], [κρ, −κρ − γ]]: constant heat has ν = 0, warmth released by the winding
/// ν = 1/τ_w. Then x(t) = E x(0) + w F. Rates are per second: κ core to can over core capacity, ρ core over can capacity, γ can to air over can
/// capacity, a copper feedback over core capacity.
/// </summary>
internal sealed class TwoNodeKernel
{
    private const double SeriesBelow = 0.05;
    private readonly int _padded;
    private readonly Spectrum[] _spectra;

    /// <summary>Room for a number of intervals.</summary>
    public TwoNodeKernel(int intervals)
    {
        _padded = (intervals + V.Count - 1) / V.Count * V.Count;
        _spectra = new Spectrum[_padded / V.Count];
        Seconds = Filled(1);
        LogGamma = Filled(-4);
        Gamma = Filled(0);
        Feedback = Filled(0);
        Releases = Filled(0);
        E11 = Filled(0);
        E12 = Filled(0);
        E21 = Filled(0);
        E22 = Filled(0);
        F1 = Filled(0);
        F2 = Filled(0);
        Decay = Filled(0);
    }

    /// <summary>Length of each interval, s.</summary>
    public double[] Seconds { get; }

    /// <summary>log γ of each interval; padding stays harmless.</summary>
    public double[] LogGamma { get; }

    /// <summary>γ of each interval, 1/s.</summary>
    public double[] Gamma { get; }

    /// <summary>a of each interval, 1/s.</summary>
    public double[] Feedback { get; }

    /// <summary>1 where the winding releases warmth (ν = 1/τ_w), 0 where heat is constant.</summary>
    public double[] Releases { get; }

    /// <summary>Step matrix.</summary>
    public double[] E11 { get; }

    /// <summary>Step matrix.</summary>
    public double[] E12 { get; }

    /// <summary>Step matrix.</summary>
    public double[] E21 { get; }

    /// <summary>Step matrix.</summary>
    public double[] E22 { get; }

    /// <summary>Response of the core to one unit of w.</summary>
    public double[] F1 { get; }

    /// <summary>Response of the can to one unit of w.</summary>
    public double[] F2 { get; }

    /// <summary>e^(−νt).</summary>
    public double[] Decay { get; }

    private double[] Filled(double value)
    {
        double[] a = new double[_padded];
        Array.Fill(a, value);
        return a;
    }

    /// <summary>Fills E, F and Decay from Seconds, LogGamma, Feedback and Releases.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Forward(double kappa, double rho, double nu)
    {
        V a12 = Vec.Create(kappa), a21 = Vec.Create(kappa * rho);
        for (int i = 0; i < _padded; i += V.Count)
        {
            V gamma = Vec.Exp(Load(LogGamma, i)), t = Load(Seconds, i), n = Load(Releases, i) * nu;
            V a11 = Load(Feedback, i) - a12, a22 = -a21 - gamma;
            Spectrum s = Spectrum.Of(a11, a12, a21, a22, t, n);
            _spectra[i / V.Count] = s;
            V c1 = (s.ExpPlus - s.ExpMinus) * s.H, c0 = s.ExpPlus - s.Plus * c1;
            V d1 = (s.FPlus - s.FMinus) * s.H, d0 = s.FPlus - s.Plus * d1;
            Store(Gamma, i, gamma);
            Store(E11, i, c0 + c1 * a11);
            Store(E12, i, c1 * a12);
            Store(E21, i, c1 * a21);
            Store(E22, i, c0 + c1 * a22);
            Store(F1, i, d0 + d1 * a11);
            Store(F2, i, d1 * a21);
            Store(Decay, i, s.ExpNu);
        }
    }

    /// <summary>
    /// Adjoint of <see cref="Forward"/>: takes the adjoints of E, F and Decay, leaves those of Seconds, LogGamma and Feedback, and returns those of κ, ρ and ν.
    /// </summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public (double Kappa, double Rho, double Nu) Backward(double kappa, double rho, double nu, TwoNodeAdjoint b)
    {
        V a12 = Vec.Create(kappa), a21 = Vec.Create(kappa * rho);
        V sum12 = V.Zero, sum21 = V.Zero, sum11 = V.Zero, sumNu = V.Zero;
        for (int i = 0; i < _padded; i += V.Count)
        {
            V gamma = Load(Gamma, i), t = Load(Seconds, i), releases = Load(Releases, i), n = releases * nu;
            V a11 = Load(Feedback, i) - a12, a22 = -a21 - gamma;
            ref Spectrum s = ref _spectra[i / V.Count];
            V c1 = (s.ExpPlus - s.ExpMinus) * s.H, d1 = (s.FPlus - s.FMinus) * s.H;
            V e11 = Load(b.E11, i), e12 = Load(b.E12, i), e21 = Load(b.E21, i), e22 = Load(b.E22, i), f1 = Load(b.F1, i), f2 = Load(b.F2, i);
            V bc0 = e11 + e22, bc1 = e11 * a11 + e12 * a12 + e21 * a21 + e22 * a22 - s.Plus * bc0;
            V bd0 = f1, bd1 = f1 * a11 + f2 * a21 - s.Plus * bd0;
            V b11 = c1 * e11 + d1 * f1, b12 = c1 * e12, b21 = c1 * e21 + d1 * f2, b22 = c1 * e22;
            V bFPlus = bd0 + s.H * bd1, bFMinus = -(s.H * bd1), bExpPlus = bc0 + s.H * bc1, bExpMinus = -(s.H * bc1);
            V bH = (s.FPlus - s.FMinus) * bd1 + (s.ExpPlus - s.ExpMinus) * bc1;
            V bPlus = -(d1 * bd0) - c1 * bc0 + bFPlus * s.DfPlus + bExpPlus * t * s.ExpPlus;
            V bMinus = bFMinus * s.DfMinus + bExpMinus * t * s.ExpMinus;
            V bDecay = Load(b.Decay, i) * s.ExpNu;
            V bt = bFPlus * (s.Plus * s.FPlus + s.ExpNu) + bFMinus * (s.Minus * s.FMinus + s.ExpNu)
                + bExpPlus * s.Plus * s.ExpPlus + bExpMinus * s.Minus * s.ExpMinus - n * bDecay;
            V bNu = bFPlus * (s.DfPlus - t * s.FPlus) + bFMinus * (s.DfMinus - t * s.FMinus) - t * bDecay;
            V bq = bPlus - bMinus - 2.0 * (s.H * s.H) * bH, bm = 0.5 * (bPlus + bMinus);
            V bs = bq * s.H, bd = 0.5 * (2.0 * s.D * bs);
            b11 += bm + bd;
            b22 += bm - bd;
            b12 += a21 * bs;
            b21 += a12 * bs;
            Store(b.Seconds, i, bt);
            Store(b.LogGamma, i, -(b22 * gamma));
            Store(b.Feedback, i, b11);
            sum11 += b11;
            sum12 += b12;
            sum21 += b21 - b22;
            sumNu += bNu * releases;
        }
        double s21 = Vec.Sum(sum21);
        return (Vec.Sum(sum12) - Vec.Sum(sum11) + rho * s21, kappa * s21, Vec.Sum(sumNu));
    }

    private static V Load(double[] a, int i) => Vec.LoadUnsafe(ref MemoryMarshal.GetArrayDataReference(a), (nuint)i);

    private static void Store(double[] a, int i, V v) => v.StoreUnsafe(ref MemoryMarshal.GetArrayDataReference(a), (nuint)i);

    /// <summary>Eigenvalues λ± of A, and the scalar functions e^(λt) and f(λ) = (e^(λt) − e^(−νt))/(λ + ν) with ∂f/∂λ at both.</summary>
    private struct Spectrum
    {
        public V D, H, Plus, Minus, ExpPlus, ExpMinus, ExpNu, FPlus, FMinus, DfPlus, DfMinus;

        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        public static Spectrum Of(V a11, V a12, V a21, V a22, V t, V nu)
        {
            V m = 0.5 * (a11 + a22), d = 0.5 * (a11 - a22), q = Vec.Sqrt(d * d + a12 * a21);
            Spectrum s = default;
            s.D = d;
            s.H = Vec.Create(0.5) / q;
            s.Plus = m + q;
            s.Minus = m - q;
            s.ExpPlus = Vec.Exp(s.Plus * t);
            s.ExpMinus = Vec.Exp(s.Minus * t);
            s.ExpNu = Vec.Exp(-(nu * t));
            (s.FPlus, s.DfPlus) = Response(s.Plus, s.ExpPlus, s.ExpNu, t, nu);
            (s.FMinus, s.DfMinus) = Response(s.Minus, s.ExpMinus, s.ExpNu, t, nu);
            return s;
        }

        // Near λ = −ν the quotient is 0/0: there its series, f = e^(−νt) t φ₁(z), φ₁(z) = Σ zᵏ/(k + 1)!, z = (λ + ν)t.
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        private static (V F, V Df) Response(V lambda, V expLambda, V expNu, V t, V nu)
        {
            V rate = lambda + nu, z = rate * t;
            V near = Vec.LessThan(Vec.Abs(z), Vec.Create(SeriesBelow));
            V safe = Vec.ConditionalSelect(near, V.One, rate);
            V f = (expLambda - expNu) / safe, df = (t * expLambda - f) / safe;
            if (near == V.Zero)
                return (f, df);
            // Even and odd powers apart: short chains instead of a long one.
            V z2 = z * z;
            V phi = Fma(z, Four(z2, 1.0 / 40320, 1.0 / 720, 1.0 / 24, 1.0 / 2), Four(z2, 1.0 / 5040, 1.0 / 120, 1.0 / 6, 1));
            V slope = Fma(z, Four(z2, 1.0 / 45360, 1.0 / 840, 1.0 / 30, 1.0 / 3), Four(z2, 1.0 / 5760, 1.0 / 144, 1.0 / 8, 1.0 / 2));
            V scale = expNu * t;
            return (Vec.ConditionalSelect(near, scale * phi, f), Vec.ConditionalSelect(near, scale * t * slope, df));
        }

        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        private static V Fma(V a, V b, V c) => Vec.FusedMultiplyAdd(a, b, c);

        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        private static V Four(V x, double c3, double c2, double c1, double c0) =>
            Fma(Fma(Fma(Vec.Create(c3), x, Vec.Create(c2)), x, Vec.Create(c1)), x, Vec.Create(c0));
    }
}

/// <summary>Adjoints of a <see cref="TwoNodeKernel"/>'s arrays.</summary>
internal sealed class TwoNodeAdjoint(int padded)
{
    public double[] E11 { get; } = new double[padded];
    public double[] E12 { get; } = new double[padded];
    public double[] E21 { get; } = new double[padded];
    public double[] E22 { get; } = new double[padded];
    public double[] F1 { get; } = new double[padded];
    public double[] F2 { get; } = new double[padded];
    public double[] Decay { get; } = new double[padded];
    public double[] Seconds { get; } = new double[padded];
    public double[] LogGamma { get; } = new double[padded];
    public double[] Feedback { get; } = new double[padded];

    /// <summary>Sets the incoming adjoints to zero.</summary>
    public void Clear()
    {
        foreach (double[] a in (ReadOnlySpan<double[]>)[E11, E12, E21, E22, F1, F2, Decay])
            Array.Clear(a);
    }
}
