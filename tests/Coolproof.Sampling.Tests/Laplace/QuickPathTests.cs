using System.Diagnostics;
using Coolproof.Sampling.Hamiltonian;
using Coolproof.Sampling.Laplace;
using MathNet.Numerics;
using MathNet.Numerics.LinearAlgebra;

namespace Coolproof.Sampling.Tests.Laplace;

public sealed class QuickPathTests(ITestOutputHelper output)
{
    static readonly double[] Effects = [28, 8, -3, 7, -1, 1, 18, 12];
    static readonly double[] Errors = [15, 10, 16, 11, 9, 11, 10, 18];

    /// <summary>
    /// Eight schools (Rubin 1981), globals μ ~ N(0, 5) and log τ with τ ~ half-Cauchy(0, 5), one local z_j to a block, θ_j = μ + τ z_j.
    /// </summary>
    static double EightSchools(ReadOnlySpan<double> x, Span<double> gradient)
    {
        double mu = x[0], tau = Math.Exp(x[1]);
        double sum = -0.5 * mu * mu / 25 - Math.Log(1 + tau * tau / 25) + x[1];
        gradient[0] = -mu / 25;
        gradient[1] = 1 - 2 * tau * tau / (25 + tau * tau);
        for (int j = 0; j < 8; j++)
        {
            double z = x[2 + j], pull = (Effects[j] - mu - tau * z) / (Errors[j] * Errors[j]);
            sum -= 0.5 * z * z + 0.5 * pull * pull * Errors[j] * Errors[j];
            gradient[0] += pull;
            gradient[1] += pull * tau * z;
            gradient[2 + j] = -z + pull * tau;
        }
        return sum;
    }

    static readonly ArrowLayout Schools = ArrowLayout.Even(2, 8, 1);

    [Theory]
    [InlineData(LocalCurvature.Measured, 11)]
    [InlineData(LocalCurvature.Measured, 12)]
    [InlineData(LocalCurvature.Interpolated, 11)]
    public void Eight_schools_has_its_published_moments(LocalCurvature curvature, long seed)
    {
        ArrowMode mode = ArrowMode.Find(EightSchools, Schools, new double[10]);
        QuickDraws draws = QuickPath.Draw(EightSchools, mode, seed, new QuickSettings(Draws: 4000, Curvature: curvature));
        Assert.False(draws.Rough);
        output.WriteLine($"k̂ {draws.ParetoShape:F2}, effective {draws.EffectiveSize:F0} of {draws.Count}");
        // Means, standard deviations and Monte Carlo errors of the mean of the published reference draws: stan-dev/posteriordb,
        // eight_schools-eight_schools_noncentered (BSD-3-Clause). The parabolas of the interpolated curvature are given 3 % of a standard deviation more.
        double bias = curvature == LocalCurvature.Interpolated ? 0.03 : 0;
        Check(draws, x => x[0], 4.41052, 3.30930, 0.03309, bias);
        Check(draws, x => Math.Exp(x[1]), 3.60206, 3.19848, 0.03200, bias);
        Check(draws, x => x[0] + Math.Exp(x[1]) * x[2], 6.15050, 5.61586, 0.05616, bias);
        Check(draws, x => x[0] + Math.Exp(x[1]) * x[6], 3.61444, 4.61472, 0.04633, bias);
        Check(draws, x => x[0] + Math.Exp(x[1]) * x[8], 6.31717, 5.00286, 0.05003, bias);
    }

    static void Check(QuickDraws draws, Func<ReadOnlySpan<double>, double> quantity, double mean, double sd, double error, double bias)
    {
        double own = draws.Mean(quantity), square = draws.Mean(x => quantity(x) * quantity(x)), noise = 0, equal = 0;
        for (int i = 0; i < draws.Count; i++)
        {
            double away = draws.Weights[i] * (quantity(draws.Weighted.AsSpan(i * draws.Dimension, draws.Dimension)) - own);
            noise += away * away;
            equal += quantity(draws.Draw(i)) / draws.Count;
        }
        Assert.Equal(mean, own, 4 * Math.Sqrt(noise + error * error) + bias * sd);
        // The error of a standard deviation is some 1.3 to 2 times that of the mean for these tails.
        Assert.Equal(sd, Math.Sqrt(square - own * own), 8 * Math.Sqrt(noise + error * error) + bias * sd);
        Assert.Equal(own, equal, 4 * sd / Math.Sqrt(draws.Count) + 4 * Math.Sqrt(noise));
    }

    /// <summary>
    /// Twelve readings ~ N(μ, σ²), flat in μ and log σ, and a local that has nothing to do with them. Exactly: (μ − ȳ)/(s/√n) ~ t with n − 1
    /// degrees of freedom and (n − 1)s²/σ² ~ χ²_{n−1} (Gelman et al., Bayesian Data Analysis, section 3.2).
    /// </summary>
    static readonly double[] s_readings = [3.1, 4.4, 2.2, 5.9, 3.3, 4.1, 3.8, 2.9, 6.1, 4.9, 3.5, 4.0];

    static double OneGroup(ReadOnlySpan<double> x, Span<double> gradient)
    {
        double precision = Math.Exp(-2 * x[1]), sum = -s_readings.Length * x[1] - 0.5 * x[2] * x[2];
        (gradient[0], gradient[1], gradient[2]) = (0, -s_readings.Length, -x[2]);
        foreach (double y in s_readings)
        {
            double away = y - x[0];
            sum -= 0.5 * away * away * precision;
            gradient[0] += away * precision;
            gradient[1] += away * away * precision;
        }
        return sum;
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Mean_and_spread_of_one_group_have_their_exact_moments(bool jointly)
    {
        ArrowMode mode = ArrowMode.Find(OneGroup, new(2, [1]), [3, 0, 1]);
        QuickDraws draws = jointly
            ? QuickPath.DrawJointly(OneGroup, mode, 5, draws: 20_000)
            : QuickPath.Draw(OneGroup, mode, 5, new QuickSettings(Draws: 20_000));
        Assert.False(draws.Rough);
        output.WriteLine($"k̂ {draws.ParetoShape:F2}, effective {draws.EffectiveSize:F0} of {draws.Count}");
        int n = s_readings.Length;
        double mean = s_readings.Average(), squares = s_readings.Sum(y => (y - mean) * (y - mean));
        double muSd = Math.Sqrt(squares / (n - 1) / n * (n - 1) / (n - 3));
        double logSigma = 0.5 * (Math.Log(squares / 2) - SpecialFunctions.DiGamma(0.5 * (n - 1)));
        // Half the log of a χ² has variance ψ'((n − 1)/2)/4; ψ'(5.5) = π²/2 − 4 (1 + 1/9 + 1/25 + 1/49 + 1/81).
        double logSd = 0.5 * Math.Sqrt(Math.PI * Math.PI / 2 - 4 * (1 + 1.0 / 9 + 1.0 / 25 + 1.0 / 49 + 1.0 / 81));
        Check(draws, x => x[0], mean, muSd, 0, 0);
        Check(draws, x => x[1], logSigma, logSd, 0, 0);
        Check(draws, x => x[2], 0, 1, 0, 0);
        // ∫ dμ gives √(2π/n) σ, then ∫ σ^{1−n} exp(−squares/2σ²) d log σ = ½ Γ((n−1)/2) (squares/2)^{−(n−1)/2}.
        double integral = 0.5 * Math.Log(Math.Tau / n) - Math.Log(2) + SpecialFunctions.GammaLn(0.5 * (n - 1))
            - 0.5 * (n - 1) * Math.Log(squares / 2) + 0.5 * Math.Log(Math.Tau);
        Assert.Equal(integral, draws.LogIntegral, 0.04);
    }

    [Theory]
    [InlineData(LocalCurvature.Measured)]
    [InlineData(LocalCurvature.Interpolated)]
    [InlineData(LocalCurvature.AtMode)]
    public void A_Gaussian_is_integrated_exactly_whichever_globals_are_sampled(LocalCurvature curvature)
    {
        ArrowLayout layout = ArrowTargets.Uneven;
        (LogDensity density, Matrix<double> precision, double[] mean) = ArrowTargets.Gaussian(layout, 41);
        ArrowMode mode = ArrowMode.Find(density, layout, new double[layout.Dimension]);
        double exact = 0.5 * (mean.Length * Math.Log(Math.Tau) - precision.Cholesky().DeterminantLn);
        Assert.Equal(exact, mode.LogIntegral, 1e-6);
        double[] sds = [.. precision.Inverse().Diagonal().Select(Math.Sqrt)];
        foreach (int[]? sampled in new int[]?[] { null, [2], [3, 0] })
        {
            QuickDraws draws = QuickPath.Draw(density, mode, 42, new QuickSettings(Draws: 4000, Curvature: curvature) { Sampled = sampled });
            Assert.False(draws.Rough);
            Assert.Equal(exact, draws.LogIntegral, 0.05);
            // The weights are then those of a normal against a t: the ratio is bounded, and the same for one |z|.
            for (int i = 0; i < mean.Length; i++)
            {
                double center = draws.Mean(x => x[i]), spread = Math.Sqrt(draws.Mean(x => (x[i] - mean[i]) * (x[i] - mean[i])));
                Assert.Equal(0, (center - mean[i]) / sds[i], 0.1);
                Assert.Equal(1, spread / sds[i], 0.1);
            }
        }
    }

    [Fact]
    public void A_mode_that_misses_most_of_the_mass_is_called_rough()
    {
        // A narrow spike on a broad hill: the mode and its curvature know the spike only.
        LogDensity spiked = (x, gradient) =>
        {
            double spike = 0.1 / 0.05 * Math.Exp(-0.5 * x[0] * x[0] / 0.0025), hill = 0.9 / 5 * Math.Exp(-0.5 * x[0] * x[0] / 25);
            gradient[0] = -(spike / 0.0025 + hill / 25) * x[0] / (spike + hill);
            gradient[1] = -x[1];
            return Math.Log(spike + hill) - 0.5 * x[1] * x[1];
        };
        ArrowMode mode = ArrowMode.Find(spiked, new(1, [1]), [0.01, 0.5]);
        Assert.True(mode.Converged, mode.Reason);
        Assert.True(QuickPath.Draw(spiked, mode, 1).Rough);
        Assert.True(QuickPath.DrawJointly(spiked, mode, 1).Rough);
    }

    [Fact]
    public void A_density_that_vanishes_next_to_its_mode_is_rough_and_not_a_crash()
    {
        LogDensity Within(double reach) => (x, gradient) =>
        {
            gradient[0] = -x[0];
            gradient[1] = -x[1];
            return Math.Abs(x[0]) > reach ? double.NegativeInfinity : -0.5 * (x[0] * x[0] + x[1] * x[1]);
        };
        ArrowMode mode = ArrowMode.Find(Within(9), new(1, [1]), [0, 0]);
        QuickDraws draws = QuickPath.Draw(Within(1e-9), mode, 1);
        Assert.True(draws.Rough);
        Assert.All(draws.Equal, x => Assert.True(double.IsFinite(x)));
        Assert.Throws<ArgumentException>(() => QuickPath.Draw(Within(-1), mode, 1));
    }

    [Fact]
    public void The_same_seed_gives_the_same_draws_and_another_seed_others()
    {
        ArrowMode mode = ArrowMode.Find(EightSchools, Schools, new double[10]);
        QuickDraws first = QuickPath.Draw(EightSchools, mode, 7), again = QuickPath.Draw(EightSchools, mode, 7);
        Assert.Equal(first.Equal, again.Equal);
        Assert.Equal(first.ParetoShape, again.ParetoShape);
        Assert.NotEqual(first.Equal, QuickPath.Draw(EightSchools, mode, 8).Equal);
    }

    [Fact]
    public void Globals_that_do_not_exist_are_refused()
    {
        ArrowMode mode = ArrowMode.Find(EightSchools, Schools, new double[10]);
        Assert.Throws<ArgumentException>(() => QuickPath.Draw(EightSchools, mode, 1, new QuickSettings { Sampled = [2] }));
        Assert.Throws<ArgumentException>(() => QuickPath.Draw(EightSchools, mode, 1, new QuickSettings { Sampled = [0, 0] }));
        Assert.Throws<ArgumentException>(() => QuickPath.Draw(EightSchools, mode, 1, new QuickSettings { Sampled = [] }));
    }

    [Theory]
    [InlineData(LocalCurvature.Measured)]
    [InlineData(LocalCurvature.Interpolated)]
    public void Scales_of_a_hierarchy_agree_with_Hamiltonian_draws_whichever_are_sampled(LocalCurvature curvature)
    {
        ArrowLayout layout = ArrowLayout.Even(4, 6, 2);
        LogDensity density = ArrowTargets.Scales(6, 6, 51);
        ArrowMode mode = ArrowMode.Find(density, layout, [.. Enumerable.Repeat(0.1, layout.Dimension)]);
        ArrowWhitening whitening = new(mode);
        NutsResult truth = Nuts.Sample(
            layout.Dimension, () => WhitenedDensity.Over(density, whitening), (_, _) => new double[layout.Dimension],
            new NutsSettings(Draws: 2000, TargetAcceptance: 0.95), 52, threads: 2);
        double[][] globals = truth.Derive(4, (z, values) =>
        {
            double[] x = new double[z.Length];
            whitening.ToPosition(z, x);
            x.AsSpan(0, 4).CopyTo(values);
        });
        foreach (int[]? sampled in new int[]?[] { null, [1, 2, 3] })
        {
            QuickDraws draws = QuickPath.Draw(density, mode, 53, new QuickSettings(Draws: 4000, Curvature: curvature) { Sampled = sampled });
            output.WriteLine($"k̂ {draws.ParetoShape:F2}, effective {draws.EffectiveSize:F0} of {draws.Count}");
            Assert.False(draws.Rough);
            for (int g = 0; g < 4; g++)
            {
                double mean = globals[g].Average(), sd = Math.Sqrt(globals[g].Average(x => (x - mean) * (x - mean)));
                double own = draws.Mean(x => x[g]), ownSd = Math.Sqrt(draws.Mean(x => (x[g] - own) * (x[g] - own)));
                output.WriteLine($"{g}: {own:F3} ± {ownSd:F3} against {mean:F3} ± {sd:F3}");
                Assert.Equal(mean, own, 0.1 * sd);
                Assert.Equal(1, ownSd / sd, 0.1);
            }
        }
    }

    [Theory]
    [InlineData(LocalCurvature.Measured, 12)]
    [InlineData(LocalCurvature.Interpolated, 5)]
    public void A_day_of_thirty_runs_needs_few_gradients_a_draw(LocalCurvature curvature, double most)
    {
        ArrowLayout layout = ArrowLayout.Even(4, 30, 2);
        LogDensity density = ArrowTargets.Scales(30, 5, 61);
        ArrowMode mode = ArrowMode.Find(density, layout, [.. Enumerable.Repeat(0.1, layout.Dimension)]);
        QuickDraws draws = QuickPath.Draw(density, mode, 1, new QuickSettings(Curvature: curvature));
        double best = double.PositiveInfinity;
        for (int round = 0; round < 10; round++)
        {
            long start = Stopwatch.GetTimestamp();
            QuickPath.Draw(density, mode, 1, new QuickSettings(Curvature: curvature));
            best = Math.Min(best, Stopwatch.GetElapsedTime(start).TotalMilliseconds);
        }
        output.WriteLine($"{draws.Gradients} gradients, {best:F1} ms, k̂ {draws.ParetoShape:F2}");
        Assert.False(draws.Rough);
        Assert.InRange(draws.Gradients, 1, most * draws.Count);
        // Not ten times as many for ten times the runs: only what the finer tolerance for each run asks.
        ArrowLayout larger = ArrowLayout.Even(4, 300, 2);
        LogDensity more = ArrowTargets.Scales(300, 5, 61);
        QuickDraws other = QuickPath.Draw(
            more, ArrowMode.Find(more, larger, [.. Enumerable.Repeat(0.1, larger.Dimension)]), 1, new QuickSettings(Curvature: curvature));
        Assert.InRange(other.Gradients, 1, 2 * draws.Gradients);
    }
}
