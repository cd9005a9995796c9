namespace Coolproof.Sampling.Tests.Posteriors;

/// <summary>The two posteriors of posteriordb whose likelihood solves a differential equation; positive parameters on the log scale.</summary>
static class Reactions
{
    /// <summary>One compartment, first-order absorption, Michaelis-Menten elimination: k_a, K_m, V_m, σ.</summary>
    public static Posterior OneCompartment()
    {
        DataFile data = new("one_comp_mm_elim_abs");
        double[] times = data.Column("times"), seen = data.Column("C_hat");
        double dose = data.Number("D"), volume = data.Number("V");
        double Density(ReadOnlySpan<double> q, Span<double> gradient)
        {
            Dual ka = Dual.Exp(Dual.Variable(q[0], 0)), km = Dual.Exp(Dual.Variable(q[1], 1)), vm = Dual.Exp(Dual.Variable(q[2], 2)), sigma = Dual.Exp(Dual.Variable(q[3], 3));
            Dual sum = 0;
            for (int i = 0; i < 4; i++)
                sum += Dual.Variable(q[i], i);
            foreach (Dual positive in new[] { ka, km, vm, sigma })
                sum -= Dual.Log(1.0 + positive * positive);
            Dual amount = 0, decay = 1, inflow = dose / volume * ka, drain = 1 / volume * vm;
            const int Steps = 20;
            double from = 0, h = times[0] / Steps;
            Dual half = Dual.Exp(-0.5 * h * ka);
            Dual Rate(Dual left, Dual c) => inflow * left - drain * c / (km + c);
            for (int n = 0; n < times.Length; n++)
            {
                // The published times are evenly spaced, so one decay per half step serves all.
                for (int s = 0; s < Steps; s++, from += h)
                {
                    Dual middle = decay * half, end = middle * half;
                    Dual k1 = Rate(decay, amount), k2 = Rate(middle, amount + 0.5 * h * k1), k3 = Rate(middle, amount + 0.5 * h * k2), k4 = Rate(end, amount + h * k3);
                    amount += h / 6 * (k1 + 2 * k2 + 2 * k3 + k4);
                    decay = end;
                }

                Dual off = (Math.Log(seen[n]) - Dual.Log(amount)) / sigma;
                sum = sum - 0.5 * off * off - Dual.Log(sigma);
            }

            for (int i = 0; i < 4; i++)
                gradient[i] = sum.Slope(i);
            return double.IsNaN(sum.Value) ? double.NegativeInfinity : sum.Value;
        }

        return new Posterior(
            4,
            ["k_a", "K_m", "V_m", "sigma"],
            Density,
            (q, values) =>
            {
                for (int i = 0; i < 4; i++)
                    values[i] = Math.Exp(q[i]);
            },
            random => [-0.5 + 0.3 * random.NextNormal(), 0.5 * random.NextNormal(), 0.5 * random.NextNormal(), -1 + 0.3 * random.NextNormal()]);
    }

    /// <summary>Lynx and hare: θ₁…θ₄, z_init, σ.</summary>
    /// <param name="start">Where chains begin; near the published posterior when null.</param>
    public static Posterior LotkaVolterra(Func<RandomStream, double[]>? start = null)
    {
        DataFile data = new("hudson_lynx_hare");
        double[] first = data.Column("y_init");
        double[][] later = data.Rows("y");
        double Density(ReadOnlySpan<double> q, Span<double> gradient)
        {
            Dual[] value = new Dual[8];
            for (int i = 0; i < 8; i++)
                value[i] = Dual.Exp(Dual.Variable(q[i], i));
            Dual sum = 0;
            for (int i = 0; i < 4; i++)
            {
                // normal(1, 0.5) for θ₁, θ₃; normal(0.05, 0.05) for θ₂, θ₄; with the logarithm's Jacobian.
                Dual z = i % 2 == 0 ? 2 * (value[i] - 1.0) : 20 * (value[i] - 0.05);
                sum = sum - 0.5 * z * z + Dual.Variable(q[i], i);
            }

            for (int k = 0; k < 2; k++)
            {
                Dual logStart = Dual.Variable(q[4 + k], 4 + k) - Math.Log(10), logSigma = Dual.Variable(q[6 + k], 6 + k) + 1.0;
                sum = sum - 0.5 * logStart * logStart - 0.5 * logSigma * logSigma;
            }

            Dual u = value[4], v = value[5];
            sum += Seen(first[0], u, value[6]) + Seen(first[1], v, value[7]);
            const int Steps = 20;
            const double H = 1.0 / Steps;
            (Dual, Dual) Rate(Dual a, Dual b) => ((value[0] - value[1] * b) * a, (value[3] * a - value[2]) * b);
            foreach (double[] row in later)
            {
                for (int s = 0; s < Steps; s++)
                {
                    (Dual u1, Dual v1) = Rate(u, v);
                    (Dual u2, Dual v2) = Rate(u + 0.5 * H * u1, v + 0.5 * H * v1);
                    (Dual u3, Dual v3) = Rate(u + 0.5 * H * u2, v + 0.5 * H * v2);
                    (Dual u4, Dual v4) = Rate(u + H * u3, v + H * v3);
                    u += H / 6 * (u1 + 2 * u2 + 2 * u3 + u4);
                    v += H / 6 * (v1 + 2 * v2 + 2 * v3 + v4);
                }

                sum += Seen(row[0], u, value[6]) + Seen(row[1], v, value[7]);
            }

            for (int i = 0; i < 8; i++)
                gradient[i] = sum.Slope(i);
            return double.IsNaN(sum.Value) ? double.NegativeInfinity : sum.Value;
        }

        return new Posterior(
            8,
            ["theta[1]", "theta[2]", "theta[3]", "theta[4]", "z_init[1]", "z_init[2]", "sigma[1]", "sigma[2]"],
            Density,
            (q, values) =>
            {
                for (int i = 0; i < 8; i++)
                    values[i] = Math.Exp(q[i]);
            },
            start ?? (random => [.. new[] { 0.5, 0.03, 0.8, 0.03, 30, 4, 0.3, 0.3 }.Select(at => Math.Log(at) + 0.1 * random.NextNormal())]));
    }

    /// <summary>value ~ lognormal(log at, σ), without its constant.</summary>
    static Dual Seen(double value, Dual at, Dual sigma)
    {
        Dual off = (Math.Log(value) - Dual.Log(at)) / sigma;
        return -0.5 * off * off - Dual.Log(sigma);
    }
}
