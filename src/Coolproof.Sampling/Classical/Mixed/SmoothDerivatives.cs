namespace Coolproof.Sampling.Classical;

/// <summary>Gradient and Hessian of a smooth function by five-point differences (error of fourth order in the step).</summary>
internal static class SmoothDerivatives
{
    // Leaves about 1e-8 of truncation and, for functions rounded at 1e-13, about as much rounding in second derivatives.
    const double RelativeStep = 1e-2;

    public static double[] Gradient(Func<double[], double> function, double[] point)
    {
        var gradient = new double[point.Length];
        for (var j = 0; j < point.Length; j++)
        {
            var h = Step(point[j]);
            gradient[j] = (8 * (At(1) - At(-1)) - (At(2) - At(-2))) / (12 * h);

            double At(int steps) => function(Moved(point, j, steps * h));
        }
        return gradient;
    }

    public static double[,] Hessian(Func<double[], double> function, double[] point)
    {
        var hessian = new double[point.Length, point.Length];
        for (var j = 0; j < point.Length; j++)
        {
            var h = Step(point[j]);
            var (up, down) = (Gradient(function, Moved(point, j, h)), Gradient(function, Moved(point, j, -h)));
            var (up2, down2) = (Gradient(function, Moved(point, j, 2 * h)), Gradient(function, Moved(point, j, -2 * h)));
            for (var i = 0; i < point.Length; i++) hessian[i, j] = (8 * (up[i] - down[i]) - (up2[i] - down2[i])) / (12 * h);
        }
        for (var i = 0; i < point.Length; i++)
        {
            for (var j = 0; j < i; j++) hessian[i, j] = hessian[j, i] = (hessian[i, j] + hessian[j, i]) / 2;
        }
        return hessian;
    }

    static double Step(double value) => RelativeStep * Math.Max(0.1, Math.Abs(value));

    static double[] Moved(double[] point, int j, double by)
    {
        var moved = (double[])point.Clone();
        moved[j] += by;
        return moved;
    }
}
