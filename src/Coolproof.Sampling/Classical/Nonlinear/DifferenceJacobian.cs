namespace Coolproof.Sampling.Classical;

/// <summary>
/// A Jacobian from residuals alone: central differences at two steps, extrapolated (L. F. Richardson, Phil. Trans. R. Soc. A 210, 1911), so
/// that the error falls with the fourth power of the step. Four evaluations a parameter, more where the step has to shrink.
/// </summary>
public static class DifferenceJacobian
{
    // Fifth root of the rounding unit: balances a truncation error of order h⁴ against rounding of order ε/h.
    static readonly double RelativeStep = Math.Pow(double.BitIncrement(1) - 1, 0.2);

    // The error left after extrapolation is about the square of the relative difference between the two slopes.
    const double LargestBend = 1e-5;

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
                var step = RelativeStep * size;
                Slopes(step);
                // Where the model bends within the step (a location far from zero) or has no meaning on both sides, shorter steps.
                for (var bend = Bend(far, near); !(bend <= LargestBend) && step > 1e-9 * size; bend = Bend(far, near)) Slopes(step /= 4);

                void Slopes(double distance)
                {
                    Central(residuals, point, j, distance, far, work);
                    Central(residuals, point, j, distance / 2, near, work);
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

    // Difference of the two slopes relative to the larger; NaN if one is not finite.
    static double Bend(double[] far, double[] near)
    {
        var (difference, size) = (0.0, 0.0);
        for (var i = 0; i < far.Length; i++)
        {
            var gap = far[i] - near[i];
            difference += gap * gap;
            size += near[i] * near[i];
        }
        return size > 0 ? Math.Sqrt(difference / size) : Math.Sqrt(difference);
    }
}
