using Coolproof.Sampling.Calibration;
using Coolproof.Sampling.Diagnostics;
using Coolproof.Sampling.Hamiltonian;

namespace Coolproof.Sampling.Tests.Calibration;

public sealed class SimulationBasedCalibrationTests
{
    const int Schools = 6, Kept = 63;
    static readonly string[] Names = ["mu", "tau", "theta[1]", "theta[6]", "log likelihood"];

    [Fact]
    public void The_sampler_is_calibrated_on_a_hierarchical_model() => AssertCalibrated(Run(1, 400, 2), 4);

    [Fact]
    [Trait("Suite", "long")]
    public void The_sampler_is_calibrated_on_a_hierarchical_model_in_three_thousand_replicates() => AssertCalibrated(Run(1, 3000, 2, 11), 30);

    static void AssertCalibrated(CalibrationResult result, int mostShort)
    {
        Assert.True(result.Calibrated, string.Join(", ", result.Quantities.Where(q => q.LeavesAt is not null).Select(q => $"{q.Name} at rank {q.LeavesAt}")));
        Assert.InRange(result.ShortReplicates, 0, mostShort);
    }

    [Theory]
    [InlineData(0.7)]
    [InlineData(1.4)]
    public void A_posterior_whose_spread_is_wrong_by_a_third_is_found_out(double factor)
    {
        CalibrationResult result = Run(factor, 200, 2);
        Assert.False(result.Calibrated);
    }

    [Fact]
    public void Ranks_are_the_same_on_any_number_of_threads()
    {
        CalibrationResult one = Run(1, 12, 1), four = Run(1, 12, 4);
        for (int q = 0; q < Names.Length; q++)
            Assert.Equal(one.Quantities[q].Ranks, four.Quantities[q].Ranks);
    }

    [Fact]
    public void Exact_conjugate_draws_pass_and_those_three_tenths_off_do_not()
    {
        Assert.True(Conjugate(1, 0).Calibrated);
        Assert.False(Conjugate(1.3, 0).Calibrated);
        Assert.False(Conjugate(0.77, 0).Calibrated);
        Assert.False(Conjugate(1, 0.3).Calibrated);
    }

    [Fact]
    public void Ties_are_settled_by_lot_and_the_rank_covers_its_range()
    {
        RandomStream random = new(5);
        int[] seen = new int[5];
        for (int i = 0; i < 1000; i++)
            seen[SimulationBasedCalibration.Rank(1, [1, 1, 1, 1], 4, random)]++;
        Assert.All(seen, count => Assert.InRange(count, 140, 260));
        Assert.Equal(0, SimulationBasedCalibration.Rank(-1, [0, 1, 2, 3], 4, random));
        Assert.Equal(4, SimulationBasedCalibration.Rank(9, [0, 1, 2, 3], 4, random));
    }

    /// <summary>θ ~ normal(0, 1), y ~ normal(θ, 1): the posterior is normal(y/2, √½).</summary>
    static CalibrationResult Conjugate(double factor, double shift) => SimulationBasedCalibration.Run(
        ["theta"],
        1000,
        Kept,
        0.99,
        random =>
        {
            double theta = random.NextNormal(), y = theta + random.NextNormal();
            double[] draws = new double[Kept];
            random.FillNormal(draws);
            return new CalibrationReplicate([theta], [[.. draws.Select(z => y / 2 + Math.Sqrt(0.5) * (shift + factor * z))]], 1);
        },
        7,
        2);

    /// <summary>μ ~ normal(0, 2), log τ ~ normal(0, 0.7), θ ~ normal(μ, τ), y ~ normal(θ, σ); sampled non-centred.</summary>
    static CalibrationResult Run(double spread, int replicates, int threads, long seed = 1) => SimulationBasedCalibration.Run(
        Names,
        replicates,
        Kept,
        0.99,
        random =>
        {
            double[] truth = new double[Schools + 2], y = new double[Schools];
            random.FillNormal(truth);
            truth[0] *= 2;
            truth[1] *= 0.7;
            for (int j = 0; j < Schools; j++)
                y[j] = Theta(truth, j) + Sigma(j) * random.NextNormal();
            GatedResult result = GatedSampling.Run(
                Schools + 2,
                () => (position, gradient) => Density(position, gradient, y),
                (_, stream) => Hamiltonian.Targets.NormalStart(Schools + 2, stream),
                new NutsSettings(Chains: 2, WarmUp: 200, Draws: 150),
                Names,
                (position, values) => Report(position, values, y),
                new GateLimits(1.05, 100, 0.01),
                1200,
                (long)random.NextBits(),
                1);
            double[] reported = new double[Names.Length];
            Report(truth, reported, y);
            double[][] planted = [.. result.Quantities.Select(values => Spread(values, spread))];
            return new CalibrationReplicate(reported, planted, 2);
        },
        seed,
        threads);

    static double Theta(ReadOnlySpan<double> position, int school) => position[0] + Math.Exp(position[1]) * position[2 + school];

    static double Sigma(int school) => 0.6 + 0.2 * school;

    static void Report(ReadOnlySpan<double> position, Span<double> values, double[] y)
    {
        (values[0], values[1], values[2], values[3], values[4]) = (position[0], Math.Exp(position[1]), Theta(position, 0), Theta(position, Schools - 1), 0);
        for (int j = 0; j < Schools; j++)
            values[4] -= 0.5 * Math.Pow((y[j] - Theta(position, j)) / Sigma(j), 2);
    }

    static double Density(ReadOnlySpan<double> position, Span<double> gradient, double[] y)
    {
        double tau = Math.Exp(position[1]);
        double sum = -position[0] * position[0] / 8 - position[1] * position[1] / 0.98;
        gradient[0] = -position[0] / 4;
        gradient[1] = -position[1] / 0.49;
        for (int j = 0; j < Schools; j++)
        {
            double z = position[2 + j], off = (y[j] - Theta(position, j)) / Sigma(j), pull = off / Sigma(j);
            sum -= 0.5 * (z * z + off * off);
            gradient[0] += pull;
            gradient[1] += pull * tau * z;
            gradient[2 + j] = pull * tau - z;
        }

        return sum;
    }

    static double[] Spread(double[] values, double factor)
    {
        double mean = values.Average();
        return [.. values.Select(value => mean + factor * (value - mean))];
    }
}
