namespace Coolproof.Evidence.Model;

/// <summary>x(t) = e^(At) x₀ + ∫₀ᵗ e^(As) ds b for two nodes with real eigenvalues; the slow one may be zero or positive.</summary>
internal readonly record struct PairStep(double E11, double E12, double E21, double E22, double F11, double F12, double F21, double F22)
{
    /// <summary>The step of a matrix with a12 a21 > 0.</summary>
    public static PairStep Of(double a11, double a12, double a21, double a22, double t)
    {
        double m = 0.5 * (a11 + a22), d = 0.5 * (a11 - a22), q = Math.Sqrt(d * d + a12 * a21), plus = m + q, minus = m - q;
        double ePlus = Math.Exp(plus * t), eMinus = Math.Exp(minus * t), c1 = (ePlus - eMinus) / (2 * q), c0 = ePlus - plus * c1;
        double fPlus = Response(plus, t), fMinus = Response(minus, t), d1 = (fPlus - fMinus) / (2 * q), d0 = fPlus - plus * d1;
        return new(c0 + c1 * a11, c1 * a12, c1 * a21, c0 + c1 * a22, d0 + d1 * a11, d1 * a12, d1 * a21, d0 + d1 * a22);
    }

    /// <summary>The state after the step, with constant forcing.</summary>
    public (double X1, double X2) Next(double x1, double x2, double b1, double b2) =>
        (E11 * x1 + E12 * x2 + F11 * b1 + F12 * b2, E21 * x1 + E22 * x2 + F21 * b1 + F22 * b2);

    private static double Response(double rate, double t)
    {
        double z = rate * t;
        return Math.Abs(z) < 1e-5 ? t * (1 + z / 2 + z * z / 6) : (Math.Exp(z) - 1) / rate;
    }
}
