using Coolproof.Sampling.Hamiltonian;

namespace Coolproof.Sampling.Tests.Hamiltonian;

public sealed class NutsTests
{
    static NutsResult Sample(int dimension, LogDensity density, NutsSettings settings, long seed = 1, int threads = 2, InverseMetric? metric = null) =>
        Nuts.Sample(dimension, () => density, (_, random) => Targets.NormalStart(dimension, random), settings, seed, threads, metric);

    [Fact]
    public void A_standard_normal_in_150_dimensions_has_unit_moments()
    {
        NutsResult result = Sample(150, Targets.StandardNormal, new NutsSettings(AdaptMetric: false));
        for (int i = 0; i < 150; i++)
        {
            double[] x = result.Coordinate(i);
            double mean = x.Average(), variance = x.Select(v => (v - mean) * (v - mean)).Average();
            // 2000 draws, antithetic in the mean: five standard errors of independent draws.
            Assert.InRange(mean, -0.112, 0.112);
            Assert.InRange(variance, 0.80, 1.20);
        }

        Assert.Equal(0, result.Divergences);
        Assert.InRange(result.Chains.Average(c => c.Acceptances.Average()), 0.7, 0.95);
    }

    [Theory]
    [InlineData(MetricKind.Diagonal)]
    [InlineData(MetricKind.Dense)]
    [InlineData(MetricKind.LeadingBlock)]
    public void A_correlated_normal_is_recovered_under_each_metric(MetricKind metric)
    {
        double[,] covariance = { { 4, 1.8, 0 }, { 1.8, 1, 0 }, { 0, 0, 100 } };
        NutsResult result = Sample(3, Targets.Normal(covariance), new NutsSettings(WarmUp: 1000, Draws: 5000, Metric: metric, LeadingBlock: 2));
        double[] x = result.Coordinate(0), y = result.Coordinate(1), z = result.Coordinate(2);
        Assert.InRange(x.Average(v => v * v), 3.6, 4.4);
        Assert.InRange(x.Zip(y, (a, b) => a * b).Average(), 1.6, 2.0);
        Assert.InRange(z.Average(v => v * v), 90, 110);
        Assert.Equal(metric == MetricKind.Dense ? 3 : metric == MetricKind.LeadingBlock ? 2 : 0, result.Chains[0].Metric.BlockSize);
        Assert.InRange(result.Chains[0].Metric.Variances()[2], 60, 160);
    }

    [Fact]
    public void The_numbers_are_the_same_on_one_two_and_four_threads()
    {
        NutsSettings settings = new(WarmUp: 150, Draws: 50);
        NutsResult[] results = [.. new[] { 1, 2, 4 }.Select(threads => Sample(20, Targets.Funnel, settings, 7, threads))];
        foreach (NutsResult other in results[1..])
        {
            for (int chain = 0; chain < 4; chain++)
            {
                Assert.Equal(results[0].Chains[chain].Positions, other.Chains[chain].Positions);
                Assert.Equal(results[0].Chains[chain].StepSize, other.Chains[chain].StepSize);
            }
        }

        Assert.NotEqual(results[0].Chains[0].Positions, results[0].Chains[1].Positions);
    }

    [Theory]
    [InlineData(MetricKind.Diagonal)]
    [InlineData(MetricKind.Dense)]
    public void Going_on_gives_what_a_longer_run_would_have_given(MetricKind metric)
    {
        NutsSettings settings = new(WarmUp: 150, Draws: 120, Metric: metric);
        NutsResult whole = Sample(5, Targets.StandardNormal, settings, 3);
        NutsResult part = Sample(5, Targets.StandardNormal, settings with { Draws = 40 }, 3);
        NutsResult extended = part.Continue(50, 1).Continue(30, 2);
        for (int chain = 0; chain < 4; chain++)
        {
            Assert.Equal(whole.Chains[chain].Positions, extended.Chains[chain].Positions);
            Assert.Equal(whole.Chains[chain].Depths, extended.Chains[chain].Depths);
        }

        Assert.Equal(whole.Gradients, extended.Gradients);
        Assert.Equal(40, part.Draws);
    }
}
