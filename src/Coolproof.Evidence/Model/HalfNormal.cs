using MathNet.Numerics;

namespace Coolproof.Evidence.Model;

/// <summary>
/// A half-normal quantity as a function of a standard normal one: x = √2 erf⁻¹(Φ(u)), increasing, x > 0. So a spread has a prior without an edge, and neither
/// tail runs away as with a logarithm.
/// </summary>
internal static class HalfNormal
{
    /// <summary>x(u) in units of the scale, and d log x/du.</summary>
    public static (double X, double LogSlope) At(double u)
    {
        double upper = 0.5 * SpecialFunctions.Erfc(u / MathNet.Numerics.Constants.Sqrt2);
        double x = MathNet.Numerics.Constants.Sqrt2 * (u > 0 ? SpecialFunctions.ErfcInv(upper) : SpecialFunctions.ErfInv(0.5 * SpecialFunctions.Erfc(-u / MathNet.Numerics.Constants.Sqrt2)));
        return (x, 0.5 * Math.Exp(0.5 * (x * x - u * u)) / x);
    }

    /// <summary>The u of an x &gt; 0.</summary>
    public static double Invert(double x) => x < 0.7
        ? -MathNet.Numerics.Constants.Sqrt2 * SpecialFunctions.ErfcInv(2 * SpecialFunctions.Erf(x / MathNet.Numerics.Constants.Sqrt2))
        : MathNet.Numerics.Constants.Sqrt2 * SpecialFunctions.ErfcInv(2 * SpecialFunctions.Erfc(x / MathNet.Numerics.Constants.Sqrt2));
}
