namespace Coolproof.Sampling.Classical;

/// <summary>An estimated linear combination of coefficients.</summary>
/// <param name="Estimate">In units of the response; NaN when the data cannot tell it (confounded columns).</param>
/// <param name="StandardError">In units of the response; NaN when nothing is left to estimate it from, see <paramref name="Caveat"/>.</param>
/// <param name="DegreesOfFreedom">Degrees of freedom of the standard error, need not be whole; 0 when there is no standard error.</param>
/// <param name="Caveat">What keeps the figures from being taken as they stand; <see cref="ContrastCaveat.None"/> if nothing does.</param>
public sealed record ContrastEstimate(double Estimate, double StandardError, double DegreesOfFreedom, ContrastCaveat Caveat)
{
    /// <summary>Half-width of the two-sided Student t interval; NaN without a standard error.</summary>
    /// <param name="confidence">Coverage in (0, 1), for example 0.90.</param>
    public double HalfWidth(double confidence)
    {
        if (!(confidence > 0 && confidence < 1))
            throw new ArgumentOutOfRangeException(nameof(confidence), confidence, "A confidence lies between 0 and 1.");
        if (!double.IsFinite(StandardError) || !(DegreesOfFreedom > 0)) return double.NaN;
        return StandardError * MathNet.Numerics.Distributions.StudentT.InvCDF(0, 1, DegreesOfFreedom, 0.5 + confidence / 2);
    }
}
