using MathNet.Numerics;

namespace Coolproof.Sampling.Laplace;

/// <summary>The multivariate t about 0 with unit scale.</summary>
static class Student
{
    /// <summary>√(ν/χ²_ν): a standard normal vector times this is t with ν degrees of freedom.</summary>
    public static double Stretch(RandomStream random, double degreesOfFreedom)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(degreesOfFreedom);
        return Math.Sqrt(degreesOfFreedom / (2 * Gamma(random, 0.5 * degreesOfFreedom)));
    }

    /// <summary>Log density.</summary>
    public static double LogDensity(ReadOnlySpan<double> z, double degreesOfFreedom)
    {
        double half = 0.5 * (degreesOfFreedom + z.Length);
        return SpecialFunctions.GammaLn(half) - SpecialFunctions.GammaLn(0.5 * degreesOfFreedom)
            - 0.5 * z.Length * Math.Log(degreesOfFreedom * Math.PI) - half * Math.Log(1 + Columns.Dot(z, z) / degreesOfFreedom);
    }

    /// <summary>Gamma with unit rate (Marsaglia and Tsang 2000, "A simple method for generating gamma variables").</summary>
    static double Gamma(RandomStream random, double shape)
    {
        if (shape < 1) return Gamma(random, shape + 1) * Math.Pow(1 - random.NextUniform(), 1 / shape);
        double d = shape - 1.0 / 3, c = 1 / Math.Sqrt(9 * d);
        while (true)
        {
            double x = random.NextNormal(), v = 1 + c * x;
            if (v <= 0) continue;
            v = v * v * v;
            if (Math.Log(1 - random.NextUniform()) < 0.5 * x * x + d - d * v + d * Math.Log(v)) return d * v;
        }
    }
}
