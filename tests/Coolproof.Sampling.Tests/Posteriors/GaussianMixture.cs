namespace Coolproof.Sampling.Tests.Posteriors;

/// <summary>Two normals with ordered means: coordinates μ₁, log(μ₂ − μ₁), log σ₁, log σ₂, logit θ.</summary>
static class GaussianMixture
{
    public static Posterior Of()
    {
        double[] y = new DataFile("low_dim_gauss_mix").Column("y");
        double Density(ReadOnlySpan<double> q, Span<double> gradient)
        {
            double gap = Math.Exp(q[1]), mu1 = q[0], mu2 = mu1 + gap, s1 = Math.Exp(q[2]), s2 = Math.Exp(q[3]);
            double theta = 1 / (1 + Math.Exp(-q[4])), log1 = -Math.Log(1 + Math.Exp(-q[4])), log2 = -Math.Log(1 + Math.Exp(q[4]));
            // beta(5, 5) and the logit's Jacobian; half-normal(0, 2) and the logarithms' Jacobians.
            double sum = 5 * (log1 + log2) - 0.125 * (mu1 * mu1 + mu2 * mu2 + s1 * s1 + s2 * s2) + q[1] + q[2] + q[3];
            double d1 = -0.25 * mu1, d2 = -0.25 * mu2, g1 = 1 - 0.25 * s1 * s1, g2 = 1 - 0.25 * s2 * s2, gt = 5 * (1 - 2 * theta);
            foreach (double value in y)
            {
                double z1 = (value - mu1) / s1, z2 = (value - mu2) / s2;
                double a = log1 - q[2] - 0.5 * z1 * z1, b = log2 - q[3] - 0.5 * z2 * z2, top = Math.Max(a, b);
                double both = Math.Log(1 + Math.Exp(Math.Min(a, b) - top)) + top, share = Math.Exp(a - both);
                sum += both;
                d1 += share * z1 / s1;
                d2 += (1 - share) * z2 / s2;
                g1 += share * (z1 * z1 - 1);
                g2 += (1 - share) * (z2 * z2 - 1);
                gt += share - theta;
            }

            (gradient[0], gradient[1], gradient[2], gradient[3], gradient[4]) = (d1 + d2, d2 * gap + 1, g1, g2, gt);
            return sum;
        }

        return new Posterior(
            5,
            ["mu[1]", "mu[2]", "sigma[1]", "sigma[2]", "theta"],
            Density,
            (q, values) =>
            {
                (values[0], values[1]) = (q[0], q[0] + Math.Exp(q[1]));
                (values[2], values[3], values[4]) = (Math.Exp(q[2]), Math.Exp(q[3]), 1 / (1 + Math.Exp(-q[4])));
            },
            random => [random.NextNormal() - 1, 1 + 0.5 * random.NextNormal(), 0.3 * random.NextNormal(), 0.3 * random.NextNormal(), 0.5 * random.NextNormal()]);
    }
}
