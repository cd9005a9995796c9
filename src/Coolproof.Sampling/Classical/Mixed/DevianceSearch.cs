using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.Optimization;

namespace Coolproof.Sampling.Classical;

/// <summary>
/// Finds the θ of least deviance. The sign of a column of a covariance factor does not matter to the model, so the deviance is even in it: the
/// search may run over all reals, the bound "diagonal at least zero" is met by turning signs, and zero variance is an ordinary stationary point
/// that is tried by name.
/// </summary>
internal static class DevianceSearch
{
    /// <summary>Beyond this a standard deviation is, next to that of single readings, as good as infinite.</summary>
    public const double LargestTheta = 1e5;

    public static double[] Minimise(Func<double[], double> deviance, CovarianceFactors factors)
    {
        // Far out the deviance is made to rise, so that a simplex has something to compare where there is no solution.
        double Bounded(double[] theta)
        {
            var largest = theta.Max(Math.Abs);
            return largest > LargestTheta ? 1e100 * largest : deviance(theta) is var d && double.IsFinite(d) ? d : 1e100;
        }

        var best = factors.Unit;
        foreach (var scale in (double[])[1, 0.1, 10])
        {
            var found = Simplex(Bounded, [.. factors.Unit.Select(t => t * scale)], scale / 2);
            if (Bounded(found) < Bounded(best) - 1e-9) best = found;
        }
        best = Simplex(Bounded, best, 0.05 * Math.Max(0.1, best.Max(Math.Abs)));
        var free = ZeroWherePossible(Bounded, best, factors);
        best = Newton(Bounded, best, free);
        foreach (var column in factors.Columns.Where(column => best[column[0]] < 0))
        {
            foreach (var k in column) best[k] = -best[k];
        }
        return best;
    }

    static double[] Simplex(Func<double[], double> function, double[] start, double size)
    {
        var objective = ObjectiveFunction.Value(v => function(v.ToArray()));
        var guess = Vector<double>.Build.DenseOfArray(start);
        try
        {
            var result = NelderMeadSimplex.Minimum(objective, guess, Vector<double>.Build.Dense(start.Length, size), 1e-9, 4000);
            return function([.. result.MinimizingPoint]) <= function(start) ? [.. result.MinimizingPoint] : start;
        }
        catch (MaximumIterationsException)
        {
            return start;
        }
    }

    // A column of a factor that does no worse at zero is put to zero, exactly. Returns the entries that stay free.
    static int[] ZeroWherePossible(Func<double[], double> function, double[] theta, CovarianceFactors factors)
    {
        var free = new List<int>();
        foreach (var column in factors.Columns)
        {
            var before = function(theta);
            var kept = column.Select(k => theta[k]).ToArray();
            foreach (var k in column) theta[k] = 0;
            if (function(theta) <= before + 1e-12 * Math.Abs(before)) continue;
            for (var i = 0; i < column.Length; i++) theta[column[i]] = kept[i];
            free.AddRange(column);
            // The diagonal of a two-effect factor may be the one at zero (correlation of one) while the entry below it is not.
            if (column.Length == 1) continue;
            theta[column[0]] = 0;
            if (function(theta) <= before + 1e-12 * Math.Abs(before)) free.Remove(column[0]);
            else theta[column[0]] = kept[0];
        }
        return [.. free];
    }

    static double[] Newton(Func<double[], double> function, double[] theta, int[] free)
    {
        for (var i = 0; i < 4 && free.Length > 0; i++)
        {
            double At(double[] values) => function(With(theta, free, values));
            double[] point = [.. free.Select(k => theta[k])];
            var gradient = Vector<double>.Build.DenseOfArray(SmoothDerivatives.Gradient(At, point));
            var step = Matrix<double>.Build.DenseOfArray(SmoothDerivatives.Hessian(At, point)).LU().Solve(gradient);
            var next = With(theta, free, [.. point.Zip(step, (x, s) => x - s)]);
            var before = function(theta);
            // Near the minimum the deviance is rounded too coarsely to compare: only a clear rise speaks against the step.
            if (!step.ForAll(double.IsFinite) || !(function(next) <= before + 1e-11 * Math.Abs(before))) break;
            theta = next;
        }
        return theta;
    }

    static double[] With(double[] theta, int[] free, double[] values)
    {
        var result = (double[])theta.Clone();
        for (var k = 0; k < free.Length; k++) result[free[k]] = values[k];
        return result;
    }
}
