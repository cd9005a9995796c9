using Coolproof.Sampling.Classical;
using CsCheck;

namespace Coolproof.Sampling.Tests.Classical;

public class LeastSquaresBehaviourTests
{
    [Fact]
    public void Enzyme_rates_give_the_published_michaelis_menten_constants()
    {
        // M. A. Treloar 1974, as in D. M. Bates and D. G. Watts, Nonlinear Regression Analysis (1988), A1.3, treated cells; figures from R 4.2.2 nls,
        // which stops at a relative offset of 1e-5: about 8 digits of the parameters.
        double[] substrate = [0.02, 0.02, 0.06, 0.06, 0.11, 0.11, 0.22, 0.22, 0.56, 0.56, 1.1, 1.1];
        double[] rate = [76, 47, 97, 107, 123, 139, 159, 152, 191, 201, 207, 200];
        var fit = LevenbergMarquardt.Minimise((b, r) =>
        {
            for (var i = 0; i < r.Length; i++) r[i] = rate[i] - b[0] * substrate[i] / (b[1] + substrate[i]);
        }, rate.Length, [200, 0.1]);
        Assert.True(fit.Succeeded, fit.Reason);
        Assert.Equal(212.6837414, fit.Parameters[0], 1e-5);
        Assert.Equal(0.06412127897, fit.Parameters[1], 1e-8);
        Assert.Equal(6.947155096, fit.StandardDeviations[0], 1e-5);
        Assert.Equal(0.00828094926, fit.StandardDeviations[1], 1e-8);
        Assert.Equal(10.93365819, fit.ResidualSd, 1e-7);
    }

    [Fact]
    public void Each_way_to_fail_has_its_name_and_its_sentence()
    {
        Fails(FitOutcome.TooFewResiduals, LevenbergMarquardt.Minimise((b, r) => r[0] = b[0] + b[1], 1, [1, 1]));
        Fails(FitOutcome.StartNotFinite, LevenbergMarquardt.Minimise((b, r) => r.Fill(Math.Log(b[0])), 3, [-1]));
        Fails(FitOutcome.Unidentified, LevenbergMarquardt.Minimise((b, r) =>
        {
            for (var i = 0; i < r.Length; i++) r[i] = b[0] + b[1] - i;
        }, 4, [1, 1]));
        Fails(FitOutcome.IterationLimit, NistNonlinearProblem.Read("MGH17") is var p
            ? LevenbergMarquardt.Minimise(p.Residuals, p.Y.Length, p.Starts[0], p.Jacobian, new(MaxIterations: 5)) : null!);
        Fails(FitOutcome.JacobianNotFinite, LevenbergMarquardt.Minimise((b, r) => r.Fill(b[0]), 2, [1], (b, j) => j.Fill(double.NaN)));
    }

    [Fact]
    public void A_perfect_fit_converges_with_no_scatter()
    {
        var fit = LevenbergMarquardt.Minimise((b, r) =>
        {
            for (var i = 0; i < r.Length; i++) r[i] = 3 * Math.Exp(-0.5 * i) - b[0] * Math.Exp(-b[1] * i);
        }, 8, [1, 1]);
        Assert.True(fit.Succeeded, fit.Reason);
        Assert.Equal(3, fit.Parameters[0], 1e-12);
        Assert.Equal(0.5, fit.Parameters[1], 1e-12);
        Assert.Equal(0, fit.ResidualSd, 1e-12);
    }

    [Fact]
    public void Steps_that_leave_the_domain_of_a_model_are_taken_back()
    {
        // √(b − i) has no value below b = 4: a long first step from 100 must be shortened, not believed.
        var fit = LevenbergMarquardt.Minimise((b, r) =>
        {
            for (var i = 0; i < r.Length; i++) r[i] = Math.Sqrt(b[0] - i) - Math.Sqrt(5.0 - i);
        }, 5, [100]);
        Assert.True(fit.Succeeded, fit.Reason);
        Assert.Equal(5, fit.Parameters[0], 1e-10);
    }

    [Fact]
    public void A_line_keeps_its_slope_when_readings_are_shifted_or_reordered()
    {
        var gen = Gen.Select(Gen.Double[-10, 10].Array[5, 20], Gen.Double[-1e6, 1e6], Gen.Int[0, int.MaxValue]);
        gen.Sample((y, shift, seed) =>
        {
            var x = y.Select((_, i) => (double)i).ToArray();
            var order = Enumerable.Range(0, y.Length).ToArray();
            new Random(seed).Shuffle(order);
            var plain = LinearLeastSquares.FitPolynomial(x, y, 1);
            var shifted = LinearLeastSquares.FitPolynomial(x, [.. y.Select(v => v + shift)], 1);
            var shuffled = LinearLeastSquares.FitPolynomial([.. order.Select(i => x[i])], [.. order.Select(i => y[i])], 1);
            Assert.Equal(plain.Coefficients[1], shifted.Coefficients[1], 1e-8);
            Assert.Equal(plain.Coefficients[0] + shift, shifted.Coefficients[0], 1e-8);
            Assert.Equal(plain.ResidualSd, shifted.ResidualSd, 1e-8);
            Assert.Equal(plain.Coefficients[1], shuffled.Coefficients[1], 1e-12);
            Assert.Equal(plain.StandardDeviations[1], shuffled.StandardDeviations[1], 1e-12);
        });
    }

    [Fact]
    public void A_dependent_column_is_set_aside_and_named()
    {
        var design = new double[,] { { 1, 1, 0 }, { 1, 1, 0 }, { 1, 0, 1 }, { 1, 0, 1 } };
        var fit = LinearLeastSquares.Fit(design, [1, 2, 4, 6]);
        Assert.Equal([0, 1], fit.Kept);
        Assert.True(double.IsNaN(fit.Coefficients[2]));
        Assert.Equal(ContrastCaveat.Confounded, fit.Contrast([0, 0, 1]).Caveat);
        Assert.Equal(3.5, fit.Contrast([0, -1, 1]).Estimate, 1e-12);
        Assert.Equal(5, fit.Contrast([1, 0, 1]).Estimate, 1e-12);
    }

    static void Fails(FitOutcome expected, NonlinearFit fit)
    {
        Assert.Equal(expected, fit.Outcome);
        Assert.False(fit.Succeeded);
        Assert.True(fit.Reason.Length > 20);
        Assert.All(fit.StandardDeviations, sd => Assert.True(double.IsNaN(sd)));
    }
}
