namespace Coolproof.Sampling.Classical;

/// <summary>A linear least-squares fit of n readings to p columns.</summary>
public sealed class LinearFit
{
    readonly double[][] _inverseR;
    readonly double[][] _nullVectors;

    internal LinearFit(double[] coefficients, double[][] inverseR, double[][] nullVectors, double[] effects, IReadOnlyList<int> kept,
        double[] residuals, double residualSumOfSquares, double totalSumOfSquares, bool exact)
    {
        (Coefficients, _inverseR, _nullVectors, Effects, Kept, Residuals) = (coefficients, inverseR, nullVectors, effects, kept, residuals);
        ResidualSumOfSquares = residualSumOfSquares;
        DegreesOfFreedom = residuals.Length - kept.Count;
        ResidualSd = DegreesOfFreedom > 0 ? Math.Sqrt(residualSumOfSquares / DegreesOfFreedom) : double.NaN;
        RSquared = totalSumOfSquares > 0 ? 1 - residualSumOfSquares / totalSumOfSquares : double.NaN;
        IsExact = exact;
        StandardDeviations = [.. Enumerable.Range(0, coefficients.Length).Select(j => Math.Sqrt(Covariance(j, j)))];
    }

    /// <summary>Estimates, one for each column of the design; NaN for a column that depends linearly on those before it.</summary>
    public IReadOnlyList<double> Coefficients { get; }

    /// <summary>Standard deviations of the estimates; NaN for aliased columns and without residual degrees of freedom.</summary>
    public IReadOnlyList<double> StandardDeviations { get; }

    /// <summary>Columns that are linearly independent, in order.</summary>
    public IReadOnlyList<int> Kept { get; }

    /// <summary>Reading minus fitted value, n numbers, units of the response.</summary>
    public IReadOnlyList<double> Residuals { get; }

    /// <summary>Sum of squared residuals.</summary>
    public double ResidualSumOfSquares { get; }

    /// <summary>n minus the rank of the design.</summary>
    public int DegreesOfFreedom { get; }

    /// <summary>Residual standard deviation; NaN without residual degrees of freedom.</summary>
    public double ResidualSd { get; }

    /// <summary>Share of the sum of squares explained: about the mean if the design can produce a constant, otherwise about zero.</summary>
    public double RSquared { get; }

    /// <summary>True when the residuals are no larger than the rounding of the readings, so that their size says nothing.</summary>
    public bool IsExact { get; }

    /// <summary>Qᵀy for the kept columns: the square of entry k is the sum of squares of column Kept[k] after those before it.</summary>
    internal double[] Effects { get; }

    /// <summary>Covariance of two estimates; NaN if either is aliased or no residual degrees of freedom are left.</summary>
    public double Covariance(int i, int j)
    {
        var (a, b) = (IndexOf(i), IndexOf(j));
        if (a < 0 || b < 0) return double.NaN;
        var sum = 0.0;
        for (var k = Math.Max(a, b); k < Kept.Count; k++) sum += _inverseR[k][a] * _inverseR[k][b];
        return sum * ResidualSd * ResidualSd;
    }

    /// <summary>Estimates Σ weightⱼ coefficientⱼ, if the data can tell it.</summary>
    /// <param name="weights">One weight for each column of the design.</param>
    /// <exception cref="ArgumentException">The number of weights is not the number of columns.</exception>
    public ContrastEstimate Contrast(IReadOnlyList<double> weights)
    {
        if (weights.Count != Coefficients.Count)
            throw new ArgumentException($"{weights.Count} weights for {Coefficients.Count} coefficients.", nameof(weights));
        if (!IsEstimable(weights)) return new(double.NaN, double.NaN, 0, ContrastCaveat.Confounded);
        var estimate = Kept.Sum(j => weights[j] * Coefficients[j]);
        if (DegreesOfFreedom == 0) return new(estimate, double.NaN, 0, ContrastCaveat.NoResidualDegreesOfFreedom);
        if (IsExact) return new(estimate, double.NaN, 0, ContrastCaveat.NoScatter);
        return new(estimate, ResidualSd * UnitError(weights), DegreesOfFreedom, ContrastCaveat.None);
    }

    // A combination is estimable when it is orthogonal to every direction in which the coefficients can move without moving the fit.
    bool IsEstimable(IReadOnlyList<double> weights)
    {
        foreach (var direction in _nullVectors)
        {
            var (dot, size) = (0.0, 0.0);
            for (var j = 0; j < direction.Length; j++)
            {
                dot += weights[j] * direction[j];
                size += Math.Abs(weights[j] * direction[j]);
            }
            if (Math.Abs(dot) > 1e-9 * size) return false;
        }
        return true;
    }

    double UnitError(IReadOnlyList<double> weights)
    {
        var sum = 0.0;
        for (var k = 0; k < Kept.Count; k++)
        {
            var along = 0.0;
            for (var l = 0; l <= k; l++) along += weights[Kept[l]] * _inverseR[k][l];
            sum += along * along;
        }
        return Math.Sqrt(sum);
    }

    int IndexOf(int column)
    {
        for (var k = 0; k < Kept.Count; k++)
        {
            if (Kept[k] == column) return k;
        }
        return -1;
    }
}
