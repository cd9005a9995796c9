using Coolproof.Sampling.Laplace;
using MathNet.Numerics.LinearAlgebra;

namespace Coolproof.Sampling.Tests.Laplace;

public sealed class ArrowHessianTests
{
    [Fact]
    public void A_layout_counts_its_coordinates_and_refuses_empty_blocks()
    {
        ArrowLayout layout = ArrowTargets.Uneven;
        Assert.Equal((4, 15, 19, 5), (layout.Globals, layout.Locals, layout.Dimension, layout.LargestBlock));
        Assert.Equal((5, 5, 9 + 4, 9 + 4 + 25 + 1 + 16), (layout.Start(2), layout.Size(2), layout.EntryStart(2), layout.BlockEntries));
        Assert.Throws<ArgumentOutOfRangeException>(() => new ArrowLayout(1, [2, 0]));
        Assert.Throws<ArgumentOutOfRangeException>(() => new ArrowLayout(0, []));
    }

    [Fact]
    public void The_curvature_of_a_Gaussian_is_its_precision()
    {
        ArrowLayout layout = ArrowTargets.Uneven;
        (LogDensity density, Matrix<double> precision, double[] mean) = ArrowTargets.Gaussian(layout, 1);
        ArrowHessian hessian = ArrowHessian.At(density, layout, mean.Select(m => m + 0.3).ToArray());
        Assert.True(hessian.IsFinite);
        Assert.True(LargestError(hessian, precision) < 1e-8);
    }

    [Fact]
    public void A_second_thread_changes_no_bit()
    {
        ArrowLayout layout = ArrowLayout.Even(4, 6, 2);
        double[] x = [.. Enumerable.Range(0, layout.Dimension).Select(i => i == 0 ? 2.5 : 0.4 * Math.Sin(i))];
        ArrowHessian one = ArrowHessian.At(ArrowTargets.Scales(6, 4, 3), layout, x), two = ArrowHessian.At(ArrowTargets.Scales(6, 4, 3), layout, x, second: ArrowTargets.Scales(6, 4, 3));
        Assert.Equal(one.GlobalGlobal, two.GlobalGlobal);
        Assert.Equal(one.LocalGlobal, two.LocalGlobal);
        Assert.Equal(one.BlockBlock, two.BlockBlock);
        Assert.Equal(one.Gradients, two.Gradients);
    }

    [Fact]
    public void Neighbours_in_a_chain_do_not_leak_into_each_others_blocks()
    {
        ArrowLayout layout = ArrowTargets.Uneven;
        (LogDensity density, Matrix<double> precision, double[] mean) = ArrowTargets.Gaussian(layout, 2, coupling: 0.7);
        ArrowHessian hessian = ArrowHessian.At(density, layout, mean);
        Assert.True(LargestError(hessian, precision) < 1e-8);
    }

    [Fact]
    public void The_curvature_of_a_log_scale_hierarchy_agrees_with_extrapolated_differences()
    {
        ArrowLayout layout = ArrowLayout.Even(4, 6, 2);
        LogDensity density = ArrowTargets.Scales(6, 4, 3);
        double[] x = [.. Enumerable.Range(0, layout.Dimension).Select(i => i == 0 ? 2.5 : 0.4 * Math.Sin(i))];
        ArrowHessian hessian = ArrowHessian.At(density, layout, x);
        Matrix<double> dense = Matrix<double>.Build.Dense(x.Length, x.Length);
        double[] up = new double[x.Length], down = new double[x.Length];
        for (int i = 0; i < x.Length; i++)
        {
            // Two steps, Richardson: error of order step⁴.
            foreach ((double step, double weight) in new[] { (2e-3, 4.0 / 3), (4e-3, -1.0 / 3) })
            {
                double[] moved = [.. x];
                moved[i] += step;
                density(moved, up);
                moved[i] -= 2 * step;
                density(moved, down);
                for (int j = 0; j < x.Length; j++) dense[i, j] -= weight * (up[j] - down[j]) / (2 * step);
            }
        }
        Assert.True(LargestError(hessian, dense) < 1e-6);
    }

    [Theory]
    [InlineData(3)]
    [InlineData(300)]
    public void The_number_of_gradients_does_not_depend_on_the_number_of_blocks(int groups)
    {
        ArrowLayout layout = ArrowLayout.Even(4, groups, 2);
        double[] ones = Enumerable.Repeat(0.1, layout.Dimension).ToArray();
        ArrowHessian hessian = ArrowHessian.At(ArrowTargets.Scales(groups, 3, 4), layout, ones, ones);
        Assert.Equal(2 * 4 + 2 * 2 * 2, hessian.Gradients);
    }

    [Fact]
    public void A_step_out_of_the_support_is_shortened_and_an_edge_is_reported()
    {
        ArrowLayout layout = new(1, [1]);
        LogDensity Walled(double wall) => (x, gradient) =>
        {
            gradient[0] = -x[0];
            gradient[1] = -4 * x[1];
            return x[0] < wall ? double.NegativeInfinity : -0.5 * (x[0] * x[0] + 4 * x[1] * x[1]);
        };
        ArrowHessian near = ArrowHessian.At(Walled(-1e-5), layout, [0, 0]);
        Assert.True(near.IsFinite);
        Assert.Equal(1, near.GlobalGlobal[0], 1e-6);
        Assert.False(ArrowHessian.At(Walled(0), layout, [0, 0]).IsFinite);
    }

    [Fact]
    public void The_product_with_a_vector_is_that_of_the_dense_matrix()
    {
        ArrowLayout layout = ArrowTargets.Uneven;
        (LogDensity density, Matrix<double> precision, double[] mean) = ArrowTargets.Gaussian(layout, 5);
        double[] x = [.. Enumerable.Range(0, layout.Dimension).Select(i => Math.Sin(i + 0.5))], y = new double[x.Length];
        ArrowHessian.At(density, layout, mean).Multiply(x, y);
        Vector<double> expected = precision * Vector<double>.Build.DenseOfArray(x);
        for (int i = 0; i < x.Length; i++) Assert.Equal(expected[i], y[i], 1e-7 * (1 + Math.Abs(expected[i])));
    }

    /// <summary>Largest |difference| over √(H_ii H_jj), over what an arrow holds.</summary>
    static double LargestError(ArrowHessian hessian, Matrix<double> dense)
    {
        ArrowLayout layout = hessian.Layout;
        int globals = layout.Globals;
        double largest = 0;
        void See(int i, int j, double value) =>
            largest = Math.Max(largest, Math.Abs(value - dense[i, j]) / Math.Sqrt(Math.Abs(dense[i, i] * dense[j, j])));
        for (int g = 0; g < globals; g++)
        {
            for (int k = 0; k < globals; k++) See(g, k, hessian.GlobalGlobal[g * globals + k]);
            for (int l = 0; l < layout.Locals; l++) See(globals + l, g, hessian.LocalGlobal[g * layout.Locals + l]);
        }
        for (int b = 0; b < layout.Blocks; b++)
            for (int i = 0; i < layout.Size(b); i++)
                for (int j = 0; j < layout.Size(b); j++)
                    See(globals + layout.Start(b) + i, globals + layout.Start(b) + j, hessian.BlockBlock[layout.EntryStart(b) + i * layout.Size(b) + j]);
        return largest;
    }

    [Fact]
    public void Stretched_coordinates_scale_every_entry_by_both_factors()
    {
        ArrowLayout layout = ArrowTargets.Uneven;
        (LogDensity density, _, _) = ArrowTargets.Gaussian(layout, 21);
        ArrowHessian plain = ArrowHessian.At(density, layout, new double[layout.Dimension]);
        double[] factors = [.. Enumerable.Range(0, layout.Dimension).Select(i => 0.5 + i)], x = new double[layout.Dimension], y = new double[x.Length], z = new double[x.Length];
        Random random = new(22);
        for (int i = 0; i < x.Length; i++) x[i] = ArrowTargets.Normal(random);
        ArrowHessian scaled = plain.Scaled(factors);
        scaled.AddToDiagonal(layout.Dimension - 1, 2);
        scaled.Multiply(x, y);
        plain.Multiply([.. x.Zip(factors, (a, f) => a * f)], z);
        for (int i = 0; i < x.Length; i++) Assert.Equal(factors[i] * z[i] + (i == x.Length - 1 ? 2 * x[i] : 0), y[i], 1e-9 * (1 + Math.Abs(y[i])));
    }
}
