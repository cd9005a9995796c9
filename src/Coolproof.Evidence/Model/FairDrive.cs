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
        PairStep drive = PairStep.Of(Priors.Alpha25 * copper - c.Kappa, c.Kappa, c.Kappa * c.Rho, -c.Kappa * c.Rho - Math.Exp(logG) * c.Rho, driveS);
        (double core, double can) = drive.Next(-c.Share * c.Slot * copper * warm, 0, (1 - c.Copper) * p + copper * warm, 0);
        return (airC + can, airC + core + c.Slot * copper * (warm + Priors.Alpha25 * core));
    }
}
