namespace Coolproof.Sampling.Diagnostics;

/// <summary>The generalised Pareto distribution of excesses, 1 − (1 + k x/σ)^(−1/k).</summary>
static class GeneralisedPareto
{
    /// <summary>
    /// Shape and scale by the empirical Bayes of Zhang and Stephens (2009, Technometrics 51:316), its 30 + √n grid and the weak prior that
    /// draws k̂ towards 1/2 with the weight of ten observations as in Vehtari et al. (2024), appendix G.
    /// </summary>
    /// <param name="excess">Excesses in rising order, not all alike.</param>
    public static (double Shape, double Scale) Fit(ReadOnlySpan<double> excess)
    {
        const double PriorShare = 3, PriorWeight = 10, PriorShape = 0.5;
        int n = excess.Length, grid = 30 + (int)Math.Sqrt(n);
        double largest = excess[^1], quartile = excess[(int)Math.Floor(n / 4.0 + 0.5) - 1];
        double[] theta = new double[grid], profile = new double[grid];
        for (int j = 0; j < grid; j++)
        {
            theta[j] = 1 / largest + (1 - Math.Sqrt(grid / (j + 0.5))) / PriorShare / quartile;
            double shapeThere = MeanLog(theta[j], excess);
            profile[j] = n * (Math.Log(-theta[j] / shapeThere) - shapeThere - 1);
        }

        double best = 0;
        for (int j = 0; j < grid; j++)
        {
            double others = 0;
            foreach (double p in profile)
                others += Math.Exp(p - profile[j]);
            best += theta[j] / others;
        }

        double shape = MeanLog(best, excess), scale = -shape / best;
        return ((shape * n + PriorShape * PriorWeight) / (n + PriorWeight), scale);
    }

    /// <summary>The excess below which a share <paramref name="p"/> lies.</summary>
    public static double Quantile(double p, double shape, double scale) =>
        shape == 0 ? -scale * Math.Log(1 - p) : scale * (Math.Pow(1 - p, -shape) - 1) / shape;

    static double MeanLog(double theta, ReadOnlySpan<double> excess)
    {
        double sum = 0;
        foreach (double x in excess)
            sum += Math.Log(1 - theta * x);
        return sum / excess.Length;
    }
}
