namespace Coolproof.Sampling.Classical;

/// <summary>
/// A Jacobian from residuals alone: central differences at two steps, extrapolated (L. F. Richardson, Phil. Trans. R. Soc. A 210, 1911), so
/// that the error falls with the fourth power of the step. Four evaluations a parameter.
/// </summary>
public static class DifferenceJacobian
{
    // Fifth root of the rounding unit: balances a truncation error of order h⁴ against rounding of order ε/h.
    static readonly double RelativeStep = Math.Pow(double.BitIncrement(1) - 1, 0.2);

    /// <summary>Makes a Jacobian function of a residual function. The result keeps a workspace: one per thread.</summary>
    /// <param name="residuals">The residual function.</param>
    /// <param name="residualCount">n.</param>
    /// <param name="scales">Size of a notable change for each parameter, used for the step where a parameter is zero; 1 if omitted.</param>
    public static JacobianFunction Of(ResidualFunction residuals, int residualCount, IReadOnlyList<double>? scales = null)
    {
        var (far, near) = (new double[residualCount], new double[residualCount]);
        var work = new double[residualCount];
        return (parameters, jacobian) =>
        {
            var point = parameters.ToArray();
            for (var j = 0; j < point.Length; j++)
            {
                var size = point[j] != 0 ? Math.Abs(point[j]) : scales?[j] ?? 1;
                // Where the model is not defined on both sides at the usual step, smaller ones are tried.
                for (var step = RelativeStep * size; ; step /= 16)
                {
                    Central(residuals, point, j, step, far, work);
                    Central(residuals, point, j, step / 2, near, work);
                    if ((AllFinite(far) && AllFinite(near)) || step < 1e-12 * size) break;
                }
                for (var i = 0; i < residualCount; i++) jacobian[i * point.Length + j] = near[i] + (near[i] - far[i]) / 3;
            }
        };
    }

    static void Central(ResidualFunction residuals, double[] point, int j, double step, double[] slope, double[] work)
    {
        var centre = point[j];
        var (up, down) = (centre + step, centre - step);
        point[j] = up;
        residuals(point, slope);
        point[j] = down;
        residuals(point, work);
        point[j] = centre;
        for (var i = 0; i < slope.Length; i++) slope[i] = (slope[i] - work[i]) / (up - down);
    }

    static bool AllFinite(double[] values) => Array.TrueForAll(values, double.IsFinite);
}
