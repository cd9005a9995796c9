using Coolproof.Sampling.Laplace;
using MathNet.Numerics.LinearAlgebra;

namespace Coolproof.Sampling.Tests.Laplace;

public sealed class ArrowModeTests
{
    [Fact]
    public void The_mode_of_a_Gaussian_is_its_mean_in_one_step()
    {
        ArrowLayout layout = ArrowTargets.Uneven;
        (LogDensity density, _, double[] mean) = ArrowTargets.Gaussian(layout, 11);
        ArrowMode mode = ArrowMode.Find(density, layout, new double[layout.Dimension]);
        Assert.True(mode.Converged, mode.Reason);
        Assert.Equal(2, mode.Hessians);
        for (int i = 0; i < mean.Length; i++) Assert.Equal(mean[i], mode.Position[i], 1e-6);
    }

    [Theory]
    [InlineData(0.5)]
    [InlineData(20)]
    public void A_chain_coupled_target_still_converges(double coupling)
    {
        ArrowLayout layout = ArrowLayout.Even(3, 40, 3);
        (LogDensity density, Matrix<double> precision, double[] mean) = ArrowTargets.Gaussian(layout, 12, coupling);
        ArrowMode mode = ArrowMode.Find(density, layout, new double[layout.Dimension]);
        Assert.True(mode.Converged, mode.Reason);
        Vector<double> away = Vector<double>.Build.DenseOfArray(mode.Position) - Vector<double>.Build.DenseOfArray(mean);
        Assert.True(away * (precision * away) < 1e-6);
    }

    [Fact]
    public void A_log_scale_hierarchy_converges_from_far_away_to_the_same_mode()
    {
        ArrowLayout layout = ArrowLayout.Even(4, 30, 2);
        LogDensity density = ArrowTargets.Scales(30, 5, 13);
        double[] x = new double[layout.Dimension], gradient = new double[x.Length];
        ArrowMode first = ArrowMode.Find(density, layout, x);
        Assert.True(first.Converged, first.Reason);
        Assert.False(first.Factor.Repaired);
        density(first.Position, gradient);
        Assert.All(gradient, g => Assert.InRange(g, -1e-2, 1e-2));
        Random random = new(14);
        for (int trial = 0; trial < 20; trial++)
        {
            for (int i = 0; i < x.Length; i++) x[i] = (i < 4 ? 2 : 1) * ArrowTargets.Normal(random);
            ArrowMode other = ArrowMode.Find(density, layout, x);
            Assert.True(other.Converged, other.Reason);
            // Each slope or level may be reached with the other sign of its scale's locals only by crossing zero: one mode in height.
            Assert.Equal(first.LogDensity, other.LogDensity, 1e-6);
            Assert.InRange(other.Gradients, 1, 1500);
        }
    }

    [Fact]
    public void Another_curvature_one_known_at_the_start_and_patience_reach_the_same_mode()
    {
        ArrowLayout layout = ArrowLayout.Even(4, 30, 2);
        LogDensity density = ArrowTargets.Scales(30, 5, 13);
        double[] start = new double[layout.Dimension];
        int asked = 0;
        ArrowMode exact = ArrowMode.Find(density, layout, start);
        ArrowMode quick = ArrowMode.Find(density, layout, start, new()
        {
            Patient = true,
            Known = ArrowHessian.At(density, layout, start),
            Curvature = position =>
            {
                asked++;
                // Wrong on purpose: half as much again.
                return ArrowHessian.At(density, layout, position).Scaled([.. Enumerable.Repeat(Math.Sqrt(1.5), layout.Dimension)]);
            },
        });
        Assert.True(quick.Converged, quick.Reason);
        Assert.InRange(asked, 1, 20);
        Assert.Equal(exact.LogDensity, quick.LogDensity, 1e-6);
    }

    [Fact]
    public void Three_thousand_blocks_need_hardly_more_gradients_than_thirty()
    {
        ArrowMode Find(int groups) => ArrowMode.Find(
            ArrowTargets.Scales(groups, 3, 15), ArrowLayout.Even(4, groups, 2), [.. Enumerable.Repeat(0.1, 4 + 2 * groups)]);
        ArrowMode few = Find(30), many = Find(3000);
        Assert.True(few.Converged, few.Reason);
        Assert.True(many.Converged, many.Reason);
        Assert.InRange(many.Gradients, 1, 3 * few.Gradients);
    }

    [Fact]
    public void Rosenbrocks_valley_is_followed_to_its_end()
    {
        // Rosenbrock 1960, "An automatic method for finding the greatest or least value of a function": minimum 0 at (1, 1) from (−1.2, 1).
        LogDensity valley = (x, gradient) =>
        {
            double bend = x[1] - x[0] * x[0];
            gradient[0] = 400 * x[0] * bend + 2 * (1 - x[0]);
            gradient[1] = -200 * bend;
            return -100 * bend * bend - (1 - x[0]) * (1 - x[0]);
        };
        ArrowMode mode = ArrowMode.Find(valley, new(1, [1]), [-1.2, 1]);
        Assert.True(mode.Converged, mode.Reason);
        Assert.Equal(1, mode.Position[0], 1e-4);
        Assert.Equal(1, mode.Position[1], 1e-4);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void A_saddle_is_left_by_the_way_up(int bent)
    {
        // −(y² − 1)² has its maxima at ±1 and a stationary point at 0.
        LogDensity saddle = (x, gradient) =>
        {
            double y = x[bent], other = x[1 - bent];
            gradient[bent] = -4 * y * (y * y - 1);
            gradient[1 - bent] = -other;
            return -(y * y - 1) * (y * y - 1) - 0.5 * other * other;
        };
        ArrowMode mode = ArrowMode.Find(saddle, new(1, [1]), [0, 0]);
        Assert.True(mode.Converged, mode.Reason);
        Assert.Equal(1, Math.Abs(mode.Position[bent]), 1e-4);
    }

    [Fact]
    public void A_wrong_gradient_ends_with_a_reason_not_a_mode()
    {
        LogDensity wrong = (x, gradient) =>
        {
            gradient[0] = x[0];
            gradient[1] = x[1];
            return -0.5 * (x[0] * x[0] + x[1] * x[1]);
        };
        ArrowMode mode = ArrowMode.Find(wrong, new(1, [1]), [1, 2]);
        Assert.False(mode.Converged);
        Assert.Contains("gradient", mode.Reason);
    }

    [Fact]
    public void A_log_density_without_a_maximum_ends_with_a_reason()
    {
        LogDensity rising = (x, gradient) =>
        {
            gradient[0] = 1;
            gradient[1] = -x[1];
            return x[0] - 0.5 * x[1] * x[1];
        };
        ArrowMode mode = ArrowMode.Find(rising, new(1, [1]), [0, 1]);
        Assert.False(mode.Converged);
        Assert.NotNull(mode.Reason);
    }

    [Fact]
    public void A_start_outside_the_support_is_refused() =>
        Assert.Throws<ArgumentException>(() => ArrowMode.Find((_, _) => double.NegativeInfinity, new(1, [1]), [0, 0]));
}
