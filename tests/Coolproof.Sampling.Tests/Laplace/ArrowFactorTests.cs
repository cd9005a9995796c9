using Coolproof.Sampling.Laplace;
using CsCheck;
using MathNet.Numerics.LinearAlgebra;

namespace Coolproof.Sampling.Tests.Laplace;

public sealed class ArrowFactorTests
{
    static readonly Gen<(int Globals, int[] Sizes, int Seed)> Shapes =
        Gen.Select(Gen.Int[0, 9], Gen.Int[1, 8].Array[1, 12], Gen.Int[0, 100_000]);

    // Triangles of more than forty rows are kept in another way.
    static readonly Gen<(int Globals, int[] Sizes, int Seed)> LargeShapes =
        Gen.Select(Gen.Int[0, 5], Gen.Int[1, 50].Array[1, 3].Select(sizes => (int[])[.. sizes, 41]), Gen.Int[0, 100_000]);

    [Fact]
    public void Determinant_solution_and_marginal_variances_are_those_of_the_dense_matrix() => Shapes.Sample(IsThatOfTheDenseMatrix, iter: 100);

    [Fact]
    public void So_they_are_where_blocks_are_large() => LargeShapes.Sample(IsThatOfTheDenseMatrix, iter: 20);

    static void IsThatOfTheDenseMatrix((int Globals, int[] Sizes, int Seed) shape)
    {
        ArrowLayout layout = new(shape.Globals, shape.Sizes);
        (_, Matrix<double> precision, _) = ArrowTargets.Gaussian(layout, shape.Seed);
        ArrowFactor factor = ArrowFactor.Of(Exact(layout, precision));
        Assert.False(factor.Repaired);
        Assert.Equal(precision.Cholesky().DeterminantLn, factor.LogDeterminant, 1e-8);
        double[] c = [.. Enumerable.Range(0, layout.Dimension).Select(i => Math.Cos(i) + 0.1)], x = new double[c.Length];
        factor.Solve(c, x);
        Vector<double> back = precision * Vector<double>.Build.DenseOfArray(x);
        Matrix<double> inverse = precision.Inverse();
        double[] variances = factor.MarginalVariances();
        for (int i = 0; i < c.Length; i++)
        {
            Assert.Equal(c[i], back[i], 1e-8);
            Assert.Equal(1, variances[i] / inverse[i, i], 1e-8);
        }
    }

    [Fact]
    public void A_matrix_that_bends_upwards_is_made_positive_and_says_so()
    {
        ArrowLayout layout = new(2, [2, 2]);
        Matrix<double> matrix = Matrix<double>.Build.DenseDiagonal(6, 6, 1.0);
        matrix[0, 0] = -3;
        matrix[2, 3] = matrix[3, 2] = 2;
        ArrowFactor factor = ArrowFactor.Of(Exact(layout, matrix));
        Assert.True(factor.Repaired);
        // Eigenvalues −3, and 3 and −1 of the first block, become 3, 3 and 1: the inverse of the block has (1/3 + 1)/2 on its diagonal.
        double[] variances = factor.MarginalVariances();
        Assert.Equal([1.0 / 3, 1, 2.0 / 3, 2.0 / 3, 1, 1], variances, (a, b) => Math.Abs(a - b) < 1e-12);
        Assert.Equal(Math.Log(9), factor.LogDeterminant, 1e-12);
    }

    [Fact]
    public void A_flat_direction_is_raised_to_the_floor_of_the_prior_precision()
    {
        ArrowLayout layout = new(1, [1]);
        Matrix<double> matrix = Matrix<double>.Build.DenseOfArray(new double[,] { { 0, 0 }, { 0, 1e-9 } });
        ArrowFactor factor = ArrowFactor.Of(Exact(layout, matrix), [4, 25], floor: 0.1);
        Assert.True(factor.Repaired);
        double[] variances = factor.MarginalVariances();
        Assert.Equal(1 / 0.4, variances[0], 1e-12);
        Assert.Equal(1 / 2.5, variances[1], 1e-12);
    }

    [Fact]
    public void A_strongly_correlated_but_positive_matrix_is_left_alone()
    {
        ArrowLayout layout = new(1, [2]);
        Matrix<double> matrix = Matrix<double>.Build.DenseOfArray(new double[,] { { 1, 0.999, 0 }, { 0.999, 1, 0 }, { 0, 0, 1 } });
        ArrowFactor factor = ArrowFactor.Of(Exact(layout, matrix));
        Assert.False(factor.Repaired);
        Assert.Equal(1 / (1 - 0.999 * 0.999), factor.MarginalVariances()[0], 1e-6);
    }

    [Fact]
    public void A_prior_precision_of_zero_is_refused_by_number() =>
        Assert.Contains("1 is 0", Assert.Throws<ArgumentException>(
            () => ArrowFactor.Of(Exact(new(1, [1]), Matrix<double>.Build.DenseIdentity(2)), [1, 0])).Message);

    /// <summary>The arrow-shaped entries of a dense matrix.</summary>
    static ArrowHessian Exact(ArrowLayout layout, Matrix<double> dense)
    {
        ArrowHessian hessian = new(layout);
        int globals = layout.Globals;
        for (int g = 0; g < globals; g++)
        {
            for (int k = 0; k < globals; k++) hessian.GlobalGlobal[g * globals + k] = dense[g, k];
            for (int l = 0; l < layout.Locals; l++) hessian.LocalGlobal[g * layout.Locals + l] = dense[globals + l, g];
        }
        for (int b = 0; b < layout.Blocks; b++)
            for (int i = 0; i < layout.Size(b); i++)
                for (int j = 0; j < layout.Size(b); j++)
                    hessian.BlockBlock[layout.EntryStart(b) + i * layout.Size(b) + j] =
                        dense[globals + layout.Start(b) + i, globals + layout.Start(b) + j];
        return hessian;
    }
}
