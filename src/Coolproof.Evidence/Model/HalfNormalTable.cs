namespace Coolproof.Evidence.Model;

/// <summary>
/// <see cref="HalfNormal"/> by quintic Hermite interpolation between exact values, slopes and curvatures. The error is below 1e-12; value and slope belong to one
/// smooth function. Below its reach, where x is so small that this would be told in its logarithm, the exact function goes on.
/// </summary>
internal static class HalfNormalTable
{
    private const double Least = -3, Most = 8;
    private const int PerUnit = 32;
    private static readonly double[] Pieces = Build();

    /// <summary>x(u) in units of the scale, and dx/du.</summary>
    public static (double X, double Slope) At(double u)
    {
        if (!(u >= Least && u < Most))
        {
            (double x, double logSlope) = HalfNormal.At(u);
            return (x, x * logSlope);
        }
        double place = (u - Least) * PerUnit;
        int piece = (int)place;
        double t = place - piece;
        ReadOnlySpan<double> c = Pieces.AsSpan(6 * piece, 6);
        double value = c[0] + t * (c[1] + t * (c[2] + t * (c[3] + t * (c[4] + t * c[5]))));
        return (value, PerUnit * (c[1] + t * (2 * c[2] + t * (3 * c[3] + t * (4 * c[4] + t * 5 * c[5])))));
    }

    private static double[] Build()
    {
        int count = (int)((Most - Least) * PerUnit);
        double[] pieces = new double[6 * count];
        (double F, double D, double C) left = Knot(0);
        for (int i = 0; i < count; i++)
        {
            (double F, double D, double C) right = Knot(i + 1);
            double rise = right.F - left.F - left.D - left.C / 2, slope = right.D - left.D - left.C, bend = right.C - left.C;
            double[] c = [left.F, left.D, left.C / 2, 10 * rise - 4 * slope + bend / 2, -15 * rise + 7 * slope - bend, 6 * rise - 3 * slope + bend / 2];
            c.CopyTo(pieces, 6 * i);
            left = right;
        }
        return pieces;
    }

    // Value, slope and curvature per piece: x' = φ(u)/(2φ(x)), x'' = x' (x x' − u).
    private static (double F, double D, double C) Knot(int i)
    {
        double u = Least + (double)i / PerUnit;
        (double x, double logSlope) = HalfNormal.At(u);
        double d = x * logSlope;
        return (x, d / PerUnit, d * (x * d - u) / (PerUnit * PerUnit));
    }
}
