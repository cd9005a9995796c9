using Coolproof.Sampling.Hamiltonian;
using CsCheck;

namespace Coolproof.Sampling.Tests.Hamiltonian;

public sealed class LeapfrogTests
{
    static readonly double[,] Covariance = { { 2, 0.6, 0.1 }, { 0.6, 1, -0.2 }, { 0.1, -0.2, 0.5 } };

    static IEnumerable<InverseMetric> Metrics(int dimension)
    {
        double[] variances = [.. Enumerable.Range(0, dimension).Select(i => 0.5 + 0.3 * i)];
        yield return InverseMetric.Identity(dimension);
        yield return InverseMetric.Diagonal(variances);
        yield return InverseMetric.LeadingBlock(variances, new double[,] { { 2, 0.9 }, { 0.9, 1 } });
        yield return InverseMetric.LeadingBlock(variances, Dense(dimension));
    }

    [Theory]
    [InlineData(3)]
    [InlineData(9)]
    [InlineData(18)]
    public void Going_forth_and_back_returns_to_the_start_under_each_metric(int dimension)
    {
        foreach (InverseMetric metric in Metrics(dimension))
        {
            Leapfrog integrator = new(Quartic, metric);
            PhasePoint start = Start(dimension, integrator, 1), at = start;
            for (int i = 0; i < 20; i++)
                at = Step(integrator, at, 0.05);
            for (int i = 0; i < 20; i++)
                at = Step(integrator, at, -0.05);
            for (int i = 0; i < dimension; i++)
            {
                Assert.Equal(start.Position[i], at.Position[i], 1e-12);
                Assert.Equal(start.Momentum[i], at.Momentum[i], 1e-12);
            }

            Assert.Equal(start.Energy, at.Energy, 1e-11);
        }
    }

    [Fact]
    public void The_energy_error_falls_with_the_square_of_the_step_under_each_metric()
    {
        foreach (InverseMetric metric in Metrics(9))
        {
            Leapfrog integrator = new(Quartic, metric);
            double Error(int steps)
            {
                PhasePoint at = Start(9, integrator, 2);
                double before = at.Energy, worst = 0;
                for (int i = 0; i < steps; i++)
                {
                    at = Step(integrator, at, 1.0 / steps);
                    worst = Math.Max(worst, Math.Abs(at.Energy - before));
                }

                return worst;
            }

            double order = Math.Log2(Error(64) / Error(128)), next = Math.Log2(Error(128) / Error(256));
            Assert.InRange(order, 1.9, 2.1);
            Assert.InRange(next, 1.95, 2.05);
        }
    }

    [Fact]
    public void A_dense_and_a_diagonal_metric_of_the_same_variances_step_alike()
    {
        double[] variances = [0.5, 2, 3, 1, 0.1, 4, 9, 0.2, 1.5];
        double[,] block = new double[9, 9];
        for (int i = 0; i < 9; i++)
            block[i, i] = variances[i];
        Leapfrog diagonal = new(Quartic, InverseMetric.Diagonal(variances)), dense = new(Quartic, InverseMetric.LeadingBlock(variances, block));
        PhasePoint a = Step(diagonal, Start(9, diagonal, 3), 0.1), b = Step(dense, Start(9, dense, 3), 0.1);
        for (int i = 0; i < 9; i++)
            Assert.Equal(a.Position[i], b.Position[i], 1e-14);
        Assert.Equal(a.Energy, b.Energy, 1e-12);
    }

    [Fact]
    public void A_full_metric_step_equals_the_textbook_step()
    {
        // q' = q + h·W·(p₀ + h/2·g) with physical momentum p₀ = F⁻ᵀ p.
        double[,] w = Covariance;
        Leapfrog integrator = new(Targets.StandardNormal, InverseMetric.LeadingBlock(new double[3], w));
        PhasePoint start = Start(3, integrator, 4), end = Step(integrator, start, 0.2);
        var metric = MathNet.Numerics.LinearAlgebra.Matrix<double>.Build.DenseOfArray(w);
        var factor = metric.Cholesky().Factor;
        var momentum = factor.Transpose().Solve(MathNet.Numerics.LinearAlgebra.Vector<double>.Build.Dense(start.Momentum));
        var position = MathNet.Numerics.LinearAlgebra.Vector<double>.Build.Dense(start.Position);
        var wanted = position + 0.2 * metric * (momentum - 0.1 * position);
        for (int i = 0; i < 3; i++)
            Assert.Equal(wanted[i], end.Position[i], 1e-13);
    }

    [Fact]
    public void The_U_turn_sums_agree_with_plain_loops_for_any_length() =>
        Gen.Select(Gen.Int[1, 40], Gen.Long).Sample((n, seed) =>
        {
            RandomStream random = new(seed);
            double[][] v = [.. Enumerable.Range(0, 6).Select(_ => new double[n])];
            foreach (double[] vector in v)
            {
                random.FillNormal(vector);
                vector[0] += 1;
            }

            double Dot(Func<int, double> a, Func<int, double> b) => Enumerable.Range(0, n).Sum(i => a(i) * b(i));
            bool wanted = Dot(i => v[2][i], i => v[0][i] + v[1][i]) > 0 && Dot(i => v[5][i], i => v[0][i] + v[1][i]) > 0
                && Dot(i => v[2][i], i => v[0][i] + v[4][i]) > 0 && Dot(i => v[4][i], i => v[0][i] + v[4][i]) > 0
                && Dot(i => v[3][i], i => v[1][i] + v[3][i]) > 0 && Dot(i => v[5][i], i => v[1][i] + v[3][i]) > 0;
            double[] total = new double[n], pair = new double[n];
            bool points = Dot(i => v[0][i], i => v[0][i] + v[1][i]) > 0 && Dot(i => v[1][i], i => v[0][i] + v[1][i]) > 0;
            return Kernels.Join(v[0], v[1], v[2], v[3], v[4], v[5], total) == wanted
                && Kernels.JoinPoints(v[0], v[1], pair) == points
                && Enumerable.Range(0, n).All(i => total[i] == v[0][i] + v[1][i] && pair[i] == total[i]);
        });

    /// <summary>A smooth target that is not normal: −Σ(q² / 2 + q⁴ / 4) with a coupling.</summary>
    static double Quartic(ReadOnlySpan<double> q, Span<double> gradient)
    {
        double sum = 0;
        gradient.Clear();
        for (int i = 0; i < q.Length; i++)
        {
            sum -= 0.5 * q[i] * q[i] + 0.25 * q[i] * q[i] * q[i] * q[i];
            gradient[i] -= q[i] + q[i] * q[i] * q[i];
            if (i > 0)
            {
                sum += 0.3 * q[i] * q[i - 1];
                gradient[i] += 0.3 * q[i - 1];
                gradient[i - 1] += 0.3 * q[i];
            }
        }

        return sum;
    }

    static PhasePoint Start(int dimension, Leapfrog integrator, long seed)
    {
        RandomStream random = new(seed);
        PhasePoint point = new(dimension);
        random.FillNormal(point.Position);
        integrator.Evaluate(point);
        Leapfrog.Refresh(point, random);
        return point;
    }

    static PhasePoint Step(Leapfrog integrator, PhasePoint from, double step)
    {
        PhasePoint to = new(from.Position.Length);
        integrator.Step(from, to, step);
        return to;
    }

    static double[,] Dense(int dimension)
    {
        double[,] result = new double[dimension, dimension];
        for (int i = 0; i < dimension; i++)
        {
            for (int j = 0; j < dimension; j++)
                result[i, j] = Math.Pow(0.6, Math.Abs(i - j));
        }

        return result;
    }
}
