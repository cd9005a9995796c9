using Coolproof.Sampling.Laplace;
using MathNet.Numerics.LinearAlgebra;

namespace Coolproof.Sampling.Tests.Laplace;

/// <summary>Against dense algebra (MathNet) on the whole matrix.</summary>
public sealed class ArrowMarginalTests
{
    private static readonly int[] Varied = [1, 4, 6, 8];

    [Fact]
    public void Integral_and_marginal_are_those_of_the_whole_matrix_for_any_priors()
    {
        (ArrowHessian hessian, Matrix<double> dense, double[] linear) = Target();
        ArrowMarginal marginal = new(hessian, linear, Varied);
        foreach (double[] precisions in new double[][] { [1, 1, 1, 1], [0.3, 4, 9, 0.6] })
        {
            Matrix<double> whole = dense.Clone();
            for (int v = 0; v < Varied.Length; v++) whole[marginal.Varied[v], marginal.Varied[v]] += precisions[v] - 1;
            Vector<double> b = Vector<double>.Build.DenseOfArray(linear), mean = whole.Cholesky().Solve(b);
            GlobalsMarginal globals = marginal.With(precisions);
            Assert.Equal(0.5 * b * mean - 0.5 * whole.Cholesky().DeterminantLn, globals.LogIntegral, 1e-9);
            for (int g = 0; g < 3; g++) Assert.Equal(mean[g], globals.Mean[g], 1e-9);
            AssertCovariance(whole.Inverse(), globals);
        }
    }

    [Fact]
    public void What_bends_upwards_leaves_a_coordinate_to_its_prior()
    {
        (ArrowHessian hessian, _, double[] linear) = Target();
        hessian.AddToDiagonal(6, -100);
        GlobalsMarginal globals = new ArrowMarginal(hessian, linear, Varied).With([1, 1, 0.1, 1]);
        Assert.True(double.IsFinite(globals.LogIntegral));
        Assert.All(globals.Mean, m => Assert.InRange(m, -100, 100));
    }

    // Draws of unit vectors give L⁻ᵀ column by column: its square is the covariance.
    private static void AssertCovariance(Matrix<double> inverse, GlobalsMarginal globals)
    {
        Matrix<double> root = Matrix<double>.Build.Dense(3, 3);
        double[] draw = new double[3];
        for (int k = 0; k < 3; k++)
        {
            globals.Draw([.. Enumerable.Range(0, 3).Select(i => i == k ? 1.0 : 0.0)], draw);
            for (int i = 0; i < 3; i++) root[i, k] = draw[i] - globals.Mean[i];
        }
        Matrix<double> covariance = root * root.Transpose();
        for (int i = 0; i < 3; i++)
            for (int j = 0; j < 3; j++) Assert.Equal(inverse[i, j], covariance[i, j], 1e-9);
    }

    // Three globals, then blocks of 2, 1 and 3: precisions of priors 1 and evidence that is positive.
    private static (ArrowHessian Hessian, Matrix<double> Dense, double[] Linear) Target()
    {
        ArrowLayout layout = new(3, [2, 1, 3]);
        (LogDensity density, Matrix<double> precision, _) = ArrowTargets.Gaussian(layout, 31);
        ArrowHessian hessian = ArrowHessian.At(density, layout, new double[layout.Dimension]);
        for (int i = 0; i < layout.Dimension; i++)
        {
            hessian.AddToDiagonal(i, 1);
            precision[i, i] += 1;
        }
        Random random = new(32);
        return (hessian, precision, [.. Enumerable.Range(0, layout.Dimension).Select(_ => ArrowTargets.Normal(random))]);
    }
}
