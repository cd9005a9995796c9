using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using Coolproof.Evidence.Model;

namespace Coolproof.Evidence.Curves;

/// <summary>
/// What a reading lost to aim, given how far it fell short: x = L − e with L exponential of mean s and e normal with sd σ or, seldom, wide. In each case L
/// given x is a normal with mean x − σ²/s and sd σ, cut off below 0.
/// </summary>
/// <param name="ExpectedK">Expected loss, K.</param>
/// <param name="WideProbability">Probability that the scatter was the wide one.</param>
internal readonly record struct AimLoss(double ExpectedK, double WideProbability)
{
    private const double FarBelow = 200;

    /// <summary>Loss of one reading.</summary>
    /// <param name="shortK">x: expected without aim loss minus read, K.</param>
    /// <param name="meanK">s, K; positive.</param>
    /// <param name="scatterK">σ of the narrow scatter, K; positive.</param>
    public static AimLoss Of(double shortK, double meanK, double scatterK)
    {
        (double narrow, double narrowLog) = One(shortK, meanK, scatterK);
        (double wide, double wideLog) = One(shortK, meanK, Priors.WideFactor * scatterK);
        double odds = Math.Exp(wideLog - narrowLog) * Priors.WideWeight / (1 - Priors.WideWeight), share = double.IsPositiveInfinity(odds) ? 1 : odds / (1 + odds);
        return new(narrow + share * (wide - narrow), share);
    }

    // Expected loss, and the log density of x up to what both scatters share: log Φ(z) + σ²/2s² − x/s with z = x/σ − σ/s.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static (double ExpectedK, double LogDensity) One(double x, double s, double sigma)
    {
        double z = x / sigma - sigma / s, v = Math.Abs(z) * Math.Sqrt(0.5), scaled = ReadingKernel.ScaledComplement(Vector512.Create(v))[0];
        if (z >= 0)
        {
            double below = 0.5 * Math.Exp(-v * v) * scaled, ratio = Math.Exp(-v * v) / (Math.Sqrt(2 * Math.PI) * (1 - below));
            return (sigma * (z + ratio), Math.Log(1 - below) + 0.5 * sigma * sigma / (s * s) - x / s);
        }
        // Far out the two terms of the mean cancel: there its series in 1/z.
        double mean = z < -FarBelow ? (-1 + (2 - 10 / (z * z)) / (z * z)) / z : z + Math.Sqrt(2 / Math.PI) / scaled;
        return (sigma * mean, Math.Log(0.5 * scaled) - 0.5 * x * x / (sigma * sigma));
    }
}
