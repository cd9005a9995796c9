using MathNet.Numerics;

namespace Coolproof.Sampling.Classical;

/// <summary>An analysis of variance with sequential sums of squares.</summary>
/// <param name="Lines">Terms in the order they were entered.</param>
/// <param name="ResidualDegreesOfFreedom">Residual degrees of freedom.</param>
/// <param name="ResidualSumOfSquares">Residual sum of squares.</param>
public sealed record AnovaTable(IReadOnlyList<AnovaLine> Lines, int ResidualDegreesOfFreedom, double ResidualSumOfSquares)
{
    /// <summary>Residual standard deviation; NaN without residual degrees of freedom.</summary>
    public double ResidualSd => ResidualDegreesOfFreedom > 0 ? Math.Sqrt(ResidualSumOfSquares / ResidualDegreesOfFreedom) : double.NaN;

    /// <summary>Share of the sum of squares that the terms explain.</summary>
    public double RSquared
    {
        get
        {
            var explained = Lines.Sum(line => line.SumOfSquares);
            return explained / (explained + ResidualSumOfSquares);
        }
    }

    internal static AnovaLine Line(string term, int df, double sumOfSquares, int residualDf, double residualSumOfSquares)
    {
        if (df == 0 || residualDf == 0) return new(term, df, sumOfSquares, double.NaN, double.NaN);
        var f = sumOfSquares / df / (residualSumOfSquares / residualDf);
        return new(term, df, sumOfSquares, f, UpperTail(f, df, residualDf));
    }

    // From the incomplete beta function itself: one minus a distribution function would lose small tails.
    static double UpperTail(double f, double df, double residualDf) =>
        double.IsNaN(f) ? double.NaN
        : double.IsPositiveInfinity(f) ? 0
        : SpecialFunctions.BetaRegularized(residualDf / 2, df / 2, residualDf / (residualDf + df * f));
}
