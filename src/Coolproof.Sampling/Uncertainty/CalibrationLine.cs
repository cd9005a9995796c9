namespace Coolproof.Sampling.Uncertainty;

/// <summary>A straight line y = Intercept + Slope (x − Pivot) by weighted least squares, as of a calibration (JCGM 100:2008, H.3).</summary>
/// <param name="Pivot">Where the intercept is taken.</param>
/// <param name="Intercept">Value there.</param>
/// <param name="Slope">Slope.</param>
/// <param name="InterceptVariance">Variance of the intercept for the weights given.</param>
/// <param name="SlopeVariance">Variance of the slope.</param>
/// <param name="Covariance">Covariance of both.</param>
/// <param name="ChiSquare">Sum of squared residuals, each over its standard uncertainty.</param>
/// <param name="Points">Number of points.</param>
public sealed record CalibrationLine(
    double Pivot, double Intercept, double Slope, double InterceptVariance, double SlopeVariance, double Covariance, double ChiSquare, int Points)
{
    /// <summary>Fits.</summary>
    /// <param name="x">Where.</param>
    /// <param name="y">What was observed.</param>
    /// <param name="u">Standard uncertainty of each observation; null: 1 each, to be scaled by <see cref="ResidualSd"/>.</param>
    /// <param name="pivot">Where the intercept is taken.</param>
    /// <exception cref="ArgumentException">Fewer than two different x, or lengths that differ.</exception>
    public static CalibrationLine Fit(ReadOnlySpan<double> x, ReadOnlySpan<double> y, ReadOnlySpan<double> u, double pivot = 0)
    {
        if (x.Length != y.Length || (u.Length > 0 && u.Length != x.Length))
            throw new ArgumentException($"{x.Length} x, {y.Length} y and {u.Length} uncertainties don't belong together.");
        double weights = 0, middle = 0, mean = 0, square = 0, product = 0, chi = 0;
        for (int i = 0; i < x.Length; i++)
        {
            double w = Weight(u, i);
            (weights, middle, mean) = (weights + w, middle + w * x[i], mean + w * y[i]);
        }
        (middle, mean) = (middle / weights, mean / weights);
        for (int i = 0; i < x.Length; i++)
        {
            double w = Weight(u, i), from = x[i] - middle;
            (square, product) = (square + w * from * from, product + w * from * (y[i] - mean));
        }
        if (!(square > 0))
            throw new ArgumentException("A line needs at least two different x.");
        double slope = product / square, intercept = mean + slope * (pivot - middle), lever = pivot - middle;
        for (int i = 0; i < x.Length; i++)
        {
            double miss = y[i] - intercept - slope * (x[i] - pivot);
            chi += Weight(u, i) * miss * miss;
        }
        return new(pivot, intercept, slope, 1 / weights + lever * lever / square, 1 / square, lever / square, chi, x.Length);
    }

    /// <summary>Standard deviation of the residuals in units of the uncertainties given; NaN for two points.</summary>
    public double ResidualSd => Points > 2 ? Math.Sqrt(ChiSquare / (Points - 2)) : double.NaN;

    /// <summary>Value on the line.</summary>
    public double At(double x) => Intercept + Slope * (x - Pivot);

    /// <summary>Standard uncertainty of a value on the line.</summary>
    public double StandardUncertaintyAt(double x) => Math.Sqrt(InterceptVariance + 2 * (x - Pivot) * Covariance + (x - Pivot) * (x - Pivot) * SlopeVariance);

    static double Weight(ReadOnlySpan<double> u, int i) => u.Length == 0 ? 1 : 1 / (u[i] * u[i]);
}
