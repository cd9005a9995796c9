namespace Coolproof.Sampling.Tests.Posteriors;

/// <summary>Rubin's (1981) eight schools, non-centred: coordinates μ, log τ, z.</summary>
static class EightSchools
{
    public static Posterior Of()
    {
        DataFile data = new("eight_schools");
        double[] y = data.Column("y"), sigma = data.Column("sigma");
        int n = y.Length;
        double Density(ReadOnlySpan<double> position, Span<double> gradient)
        {
            double mu = position[0], tau = Math.Exp(position[1]), u = tau * tau / 25;
            double sum = -mu * mu / 50 - Math.Log(1 + u) + position[1];
            gradient[0] = -mu / 25;
            gradient[1] = 1 - 2 * u / (1 + u);
            for (int j = 0; j < n; j++)
            {
                double z = position[2 + j], off = (y[j] - mu - tau * z) / sigma[j], pull = off / sigma[j];
                sum -= 0.5 * (z * z + off * off);
                gradient[0] += pull;
                gradient[1] += pull * tau * z;
                gradient[2 + j] = pull * tau - z;
            }

            return sum;
        }

        return new Posterior(
            n + 2,
            [.. Enumerable.Range(1, n).Select(j => $"theta[{j}]"), "mu", "tau"],
            Density,
            (position, values) =>
            {
                for (int j = 0; j < n; j++)
                    values[j] = position[0] + Math.Exp(position[1]) * position[2 + j];
                (values[n], values[n + 1]) = (position[0], Math.Exp(position[1]));
            },
            random => Scattered(n + 2, random));
    }

    static double[] Scattered(int count, RandomStream random)
    {
        double[] start = new double[count];
        random.FillNormal(start);
        return start;
    }
}
