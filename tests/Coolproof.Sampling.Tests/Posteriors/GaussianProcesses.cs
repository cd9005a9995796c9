namespace Coolproof.Sampling.Tests.Posteriors;

/// <summary>The two Gaussian process models of posteriordb; scales and length on the log scale.</summary>
static class GaussianProcesses
{
    public static Posterior Regression()
    {
        DataFile data = new("gp_pois_regr");
        double[] x = data.Column("x"), y = data.Column("y");
        return new Posterior(
            3,
            ["rho", "alpha", "sigma"],
            (position, gradient) =>
            {
                Dual logRho = Dual.Variable(position[0], 0), logAlpha = Dual.Variable(position[1], 1), logSigma = Dual.Variable(position[2], 2);
                Dual sigma = Dual.Exp(logSigma);
                Dual[,] factor = Factor(x, Dual.Exp(logRho), Dual.Exp(logAlpha), sigma);
                Dual sum = Prior(logRho, logAlpha) - 0.5 * sigma * sigma + logSigma;
                Dual[] solved = new Dual[x.Length];
                for (int i = 0; i < x.Length; i++)
                {
                    Dual rest = y[i];
                    for (int j = 0; j < i; j++)
                        rest -= factor[i, j] * solved[j];
                    solved[i] = rest / factor[i, i];
                    sum = sum - 0.5 * solved[i] * solved[i] - Dual.Log(factor[i, i]);
                }

                for (int i = 0; i < 3; i++)
                    gradient[i] = sum.Slope(i);
                return sum.Value;
            },
            Exponentials,
            random => [Math.Log(6) + 0.2 * random.NextNormal(), 0.5 * random.NextNormal(), 0.5 * random.NextNormal()]);
    }

    public static Posterior Poisson()
    {
        DataFile data = new("gp_pois_regr");
        double[] x = data.Column("x"), counts = data.Column("k");
        int n = x.Length;
        double Density(ReadOnlySpan<double> position, Span<double> gradient)
        {
            Dual logRho = Dual.Variable(position[0], 0), logAlpha = Dual.Variable(position[1], 1);
            Dual[,] factor = Factor(x, Dual.Exp(logRho), Dual.Exp(logAlpha), 1e-10);
            Dual prior = Prior(logRho, logAlpha);
            double sum = prior.Value;
            (gradient[0], gradient[1]) = (prior.Slope(0), prior.Slope(1));
            for (int j = 0; j < n; j++)
            {
                gradient[2 + j] = -position[2 + j];
                sum -= 0.5 * position[2 + j] * position[2 + j];
            }

            for (int i = 0; i < n; i++)
            {
                Dual f = 0;
                for (int j = 0; j <= i; j++)
                    f += position[2 + j] * factor[i, j];
                double rate = Math.Exp(f.Value), pull = counts[i] - rate;
                sum += counts[i] * f.Value - rate;
                gradient[0] += pull * f.Slope(0);
                gradient[1] += pull * f.Slope(1);
                for (int j = 0; j <= i; j++)
                    gradient[2 + j] += pull * factor[i, j].Value;
            }

            return sum;
        }

        return new Posterior(
            n + 2,
            ["rho", "alpha", .. Enumerable.Range(1, n).Select(i => $"f[{i}]")],
            Density,
            (position, values) =>
            {
                (values[0], values[1]) = (Math.Exp(position[0]), Math.Exp(position[1]));
                Dual[,] factor = Factor(x, values[0], values[1], 1e-10);
                for (int i = 0; i < n; i++)
                {
                    values[2 + i] = 0;
                    for (int j = 0; j <= i; j++)
                        values[2 + i] += factor[i, j].Value * position[2 + j];
                }
            },
            random => [Math.Log(6) + 0.1 * random.NextNormal(), 1 + 0.2 * random.NextNormal(), .. Enumerable.Range(0, n).Select(_ => 0.5 * random.NextNormal())]);
    }

    /// <summary>ρ ~ gamma(25, 4), α ~ half-normal(0, 2), with the Jacobian of both logarithms.</summary>
    static Dual Prior(Dual logRho, Dual logAlpha)
    {
        Dual alpha = Dual.Exp(logAlpha);
        return 25 * logRho - 4 * Dual.Exp(logRho) - 0.125 * alpha * alpha + logAlpha;
    }

    static Dual[,] Factor(double[] x, Dual rho, Dual alpha, Dual nugget)
    {
        int n = x.Length;
        Dual[,] factor = new Dual[n, n];
        Dual fall = -0.5 * ((Dual)1.0 / (rho * rho)), variance = alpha * alpha;
        for (int i = 0; i < n; i++)
        {
            for (int j = 0; j <= i; j++)
            {
                Dual rest = variance * Dual.Exp((x[i] - x[j]) * (x[i] - x[j]) * fall);
                if (i == j)
                    rest += nugget;
                for (int k = 0; k < j; k++)
                    rest -= factor[i, k] * factor[j, k];
                factor[i, j] = i == j ? Dual.Sqrt(rest) : rest / factor[j, j];
            }
        }

        return factor;
    }

    static void Exponentials(ReadOnlySpan<double> position, Span<double> values)
    {
        for (int i = 0; i < values.Length; i++)
            values[i] = Math.Exp(position[i]);
    }
}
