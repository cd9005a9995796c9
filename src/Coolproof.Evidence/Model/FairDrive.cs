namespace Coolproof.Evidence.Model;

/// <summary>One drive at fair conditions: can, core and winding start at the air, no roll-in, no deviations.</summary>
internal static class FairDrive
{
    /// <summary>Can and mean winding at the end of hard driving, °C.</summary>
    /// <param name="c">The motor.</param>
    /// <param name="logG">log of conductance over core capacity, 1/s.</param>
    /// <param name="airC">Air, °C.</param>
    /// <param name="driveS">Seconds of hard driving.</param>
    public static (double CanC, double WindingC) Peak(in Constants c, double logG, double airC, double driveS)
    {
        double p = Math.Exp(c.LogHeat), copper = c.CopperHeat(p), warm = 1 + Priors.Alpha25 * (airC - 25);
        (double core, double can) = Drive(c, logG, Priors.Alpha25 * copper, (1 - c.Copper) * p + copper * warm, -c.Share * c.Slot * copper * warm, driveS);
        return (airC + can, airC + core + c.Slot * copper * (warm + Priors.Alpha25 * core));
    }

    // x(t) = e^(At) x₀ + ∫e^(As) ds b with x₀ = (start, 0), b = (heat, 0), by the two eigenvalues of A; the slow one may be zero or positive.
    private static (double Core, double Can) Drive(in Constants c, double logG, double feedback, double heat, double start, double t)
    {
        double a11 = feedback - c.Kappa, a12 = c.Kappa, a21 = c.Kappa * c.Rho, a22 = -a21 - Math.Exp(logG) * c.Rho;
        double m = 0.5 * (a11 + a22), d = 0.5 * (a11 - a22), q = Math.Sqrt(d * d + a12 * a21), plus = m + q, minus = m - q;
        double ePlus = Math.Exp(plus * t), eMinus = Math.Exp(minus * t), c1 = (ePlus - eMinus) / (2 * q), c0 = ePlus - plus * c1;
        double fPlus = Response(plus, t), fMinus = Response(minus, t), d1 = (fPlus - fMinus) / (2 * q), d0 = fPlus - plus * d1;
        return ((c0 + c1 * a11) * start + (d0 + d1 * a11) * heat, c1 * a21 * start + d1 * a21 * heat);
    }

    private static double Response(double rate, double t)
    {
        double z = rate * t;
        return Math.Abs(z) < 1e-5 ? t * (1 + z / 2 + z * z / 6) : (Math.Exp(z) - 1) / rate;
    }
}
