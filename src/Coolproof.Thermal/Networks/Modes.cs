using MathNet.Numerics.LinearAlgebra;

namespace Coolproof.Thermal;

/// <summary>
/// A symmetric network taken apart: z = Qᵀ C^½ T, so that each z decays at its own rate, dz/dt = −λ z + (Qᵀ C^−½ b).
/// Two nodes in closed form, more by symmetric eigen-decomposition of C^−½ K C^−½.
/// </summary>
internal sealed class Modes
{
    readonly int n;
    readonly double[] rates;
    readonly double[] toModes;
    readonly double[] fromModes;

    internal Modes(Network network)
    {
        n = network.Nodes;
        rates = new double[n];
        double[] vectors = n switch
        {
            1 => OneNode(network),
            2 => TwoNodes(network),
            _ => ManyNodes(network),
        };
        toModes = new double[n * n];
        fromModes = new double[n * n];
        for (int i = 0; i < n; i++)
        {
            double root = Math.Sqrt(network.CapacitiesJK[i]);
            for (int m = 0; m < n; m++)
            {
                toModes[m * n + i] = vectors[i * n + m] * root;
                fromModes[i * n + m] = vectors[i * n + m] / root;
            }
        }
    }

    internal ReadOnlySpan<double> Rates => rates;

    internal void Step(ReadOnlySpan<double> state, ReadOnlySpan<double> heat, double seconds, Span<double> output)
    {
        Span<double> z = stackalloc double[n];
        for (int m = 0; m < n; m++)
        {
            (double start, double drive) = Project(state, heat, m);
            z[m] = Math.Exp(-rates[m] * seconds) * start + Phi.Once(rates[m], seconds) * drive;
        }
        Gather(z, output);
    }

    internal void Integral(ReadOnlySpan<double> state, ReadOnlySpan<double> heat, double seconds, Span<double> output)
    {
        Span<double> z = stackalloc double[n];
        for (int m = 0; m < n; m++)
        {
            (double start, double drive) = Project(state, heat, m);
            z[m] = Phi.Once(rates[m], seconds) * start + Phi.Twice(rates[m], seconds) * drive;
        }
        Gather(z, output);
    }

    internal Propagator Over(double seconds)
    {
        double[] keep = new double[n * n], gain = new double[n * n];
        for (int m = 0; m < n; m++)
        {
            double decay = Math.Exp(-rates[m] * seconds), phi = Phi.Once(rates[m], seconds);
            for (int i = 0; i < n; i++)
                for (int j = 0; j < n; j++)
                {
                    keep[i * n + j] += fromModes[i * n + m] * decay * toModes[m * n + j];
                    gain[i * n + j] += fromModes[i * n + m] * phi * fromModes[j * n + m];
                }
        }
        return new Propagator(n, seconds, keep, gain);
    }

    (double Start, double Drive) Project(ReadOnlySpan<double> state, ReadOnlySpan<double> heat, int mode)
    {
        double start = 0, drive = 0;
        for (int j = 0; j < n; j++)
        {
            start += toModes[mode * n + j] * state[j];
            drive += fromModes[j * n + mode] * heat[j];
        }
        return (start, drive);
    }

    void Gather(ReadOnlySpan<double> z, Span<double> output)
    {
        for (int i = 0; i < n; i++)
        {
            double sum = 0;
            for (int m = 0; m < n; m++) sum += fromModes[i * n + m] * z[m];
            output[i] = sum;
        }
    }

    double[] OneNode(Network network)
    {
        rates[0] = network.SurplusWK[0] / network.CapacitiesJK[0];
        return [1];
    }

    /// <summary>
    /// Closed form. The determinant is taken from g (u₁ + u₂) + u₁ u₂, so that the smaller rate keeps all its digits and is exactly
    /// zero where the network neither loses nor gains heat.
    /// </summary>
    double[] TwoNodes(Network network)
    {
        double g = -network.Matrix[1], c1 = network.CapacitiesJK[0], c2 = network.CapacitiesJK[1];
        double u1 = network.SurplusWK[0], u2 = network.SurplusWK[1];
        double p = (g + u1) / c1, r = (g + u2) / c2, q = -g / Math.Sqrt(c1 * c2);
        double mean = 0.5 * (p + r), half = Math.Sqrt(0.25 * (p - r) * (p - r) + q * q);
        double determinant = (g * (u1 + u2) + u1 * u2) / (c1 * c2);
        rates[0] = mean >= 0 ? mean + half : determinant / (mean - half);
        rates[1] = mean < 0 ? mean - half : mean + half == 0 ? 0 : determinant / (mean + half);
        // The vector of the faster mode, from the sum that can't cancel; without a link it is exactly one of the nodes, so that nothing of
        // one leaks into the other, which a runaway would blow up.
        double sum = 0.5 * Math.Abs(p - r) + half, norm = Math.Sqrt(sum * sum + q * q);
        (double near, double far) = norm == 0 ? (1, 0) : (sum / norm, q / norm);
        (double cos, double sin) = p >= r ? (near, far) : (far, near);
        return [cos, -sin, sin, cos];
    }

    double[] ManyNodes(Network network)
    {
        Matrix<double> scaled = Matrix<double>.Build.Dense(
            n, n, (i, j) => network.Matrix[i * n + j] / Math.Sqrt(network.CapacitiesJK[i] * network.CapacitiesJK[j]));
        var eigen = scaled.Evd(Symmetricity.Symmetric);
        for (int m = 0; m < n; m++) rates[m] = eigen.EigenValues[m].Real;
        return eigen.EigenVectors.ToRowMajorArray();
    }
}
