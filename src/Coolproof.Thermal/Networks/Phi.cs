namespace Coolproof.Thermal;

/// <summary>Integrals of a decaying (or growing, or constant) exponential, exact also where the rate is zero.</summary>
internal static class Phi
{
    /// <summary>exp(x) − 1 without cancellation, by 2 sinh(x/2) exp(x/2). (The runtime's ExpM1 subtracts.)</summary>
    internal static double Expm1(double x) => x < -40 ? -1 : x > 700 ? Math.Exp(x) : 2 * Math.Sinh(0.5 * x) * Math.Exp(0.5 * x);

    /// <summary>∫₀ᵗ exp(−λ s) ds = (1 − exp(−λ t))/λ; t at λ = 0.</summary>
    internal static double Once(double rate, double seconds)
    {
        double x = rate * seconds;
        return Math.Abs(x) < 1e-8 ? seconds * (1 - 0.5 * x) : -Expm1(-x) / rate;
    }

    /// <summary>∫₀ᵗ ∫₀ˢ exp(−λ r) dr ds = (t − φ(λ, t))/λ; t²/2 at λ = 0.</summary>
    internal static double Twice(double rate, double seconds)
    {
        double x = rate * seconds;
        if (Math.Abs(x) > 0.5) return (seconds + Expm1(-x) / rate) / rate;
        double term = 0.5, sum = 0.5;
        for (int k = 3; Math.Abs(term) > 1e-18; k++)
        {
            term *= -x / k;
            sum += term;
        }
        return seconds * seconds * sum;
    }
}
