using MathNet.Numerics.LinearAlgebra;

namespace Coolproof.Advice.Orders;

/// <summary>
/// How wide the answer of a day is expected to be: the mean 90 % interval of the difference of two options, from generalised least squares with the option's
/// effect, a refit whenever the option changes, drift over the day, a random walk and first-order carry-over.
/// </summary>
/// <param name="noise">What runs are off by.</param>
public sealed class ExpectedWidth(RunNoise noise)
{
    private const double NinetyPercent = 2 * 1.6448536269514722, MeanK = 100;

    /// <summary>Mean width, K, over all pairs of options; an option without a run counts with its prior.</summary>
    /// <param name="order">Option of each run.</param>
    /// <param name="startS">Start of each run, s from the first.</param>
    /// <param name="options">Number of options.</param>
    public double Of(ReadOnlySpan<int> order, ReadOnlySpan<double> startS, int options)
    {
        Matrix<double> effects = Effects(order, startS, options);
        double sum = 0;
        for (int a = 0; a < options; a++)
            for (int b = 0; b < a; b++)
                sum += Math.Sqrt(Math.Max(effects[a, a] + effects[b, b] - 2 * effects[a, b], 0));
        return NinetyPercent * sum / (options * (options - 1) / 2);
    }

    // Covariance of the options' effects given all runs: prior − K' V⁻¹ K with K the prior covariance of runs and effects.
    private Matrix<double> Effects(ReadOnlySpan<int> order, ReadOnlySpan<double> startS, int options)
    {
        double prior = noise.OptionK * noise.OptionK;
        Matrix<double> effects = Matrix<double>.Build.DenseDiagonal(options, prior);
        if (order.Length == 0)
            return effects;
        Matrix<double> cross = Matrix<double>.Build.Dense(order.Length, options);
        for (int i = 0; i < order.Length; i++)
            cross[i, order[i]] = prior;
        return effects - cross.TransposeThisAndMultiply(Runs(order, startS).Cholesky().Solve(cross));
    }

    // Covariance of what the runs would show. A common level is unknown.
    private Matrix<double> Runs(ReadOnlySpan<int> order, ReadOnlySpan<double> startS)
    {
        int n = order.Length;
        double first = startS[0], length = Math.Max(startS[^1] - first, 1), walk = noise.WalkKPerRootHour * noise.WalkKPerRootHour / 3600;
        Matrix<double> v = Matrix<double>.Build.Dense(n, n);
        int[] mounting = new int[n];
        for (int i = 1; i < n; i++)
            mounting[i] = mounting[i - 1] + (order[i] == order[i - 1] ? 0 : 1);
        for (int i = 0; i < n; i++)
        {
            for (int j = 0; j <= i; j++)
            {
                double trend = ((startS[i] - first) / length - 0.5) * ((startS[j] - first) / length - 0.5);
                double sum = MeanK * MeanK + noise.TrendK * noise.TrendK * trend + walk * (startS[j] - first);
                sum += order[i] == order[j] ? noise.OptionK * noise.OptionK : 0;
                sum += mounting[i] == mounting[j] ? noise.MountingK * noise.MountingK : 0;
                sum += i > 0 && j > 0 && order[i - 1] == order[j - 1] ? noise.CarryK * noise.CarryK : 0;
                sum += i == j ? noise.RunK * noise.RunK : 0;
                v[i, j] = v[j, i] = sum;
            }
        }
        return v;
    }
}
