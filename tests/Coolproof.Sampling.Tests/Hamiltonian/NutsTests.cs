using Coolproof.Sampling.Diagnostics;
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

    [Fact]
    public void A_banana_has_its_moments()
    {
        NutsResult result = Sample(2, Targets.Banana, new NutsSettings(WarmUp: 1000, Draws: 5000, TargetAcceptance: 0.95), 5);
        double[][] values = result.Derive(3, (q, v) => (v[0], v[1], v[2]) = (q[0] * q[0], q[1], (q[1] - 1) * (q[1] - 1)));
        double[] truth = [1, 1, 2.25];
        ConvergenceDiagnostics diagnostics = new(4, 5000);
        for (int i = 0; i < 3; i++)
        {
            QuantityDiagnostics got = diagnostics.Assess(values[i]);
            Assert.InRange((got.Mean - truth[i]) / got.MeanError, -4, 4);
        }
    }

    [Fact]
    public void A_funnel_diverges_and_says_where() =>
        Assert.True(Sample(10, Targets.Funnel, new NutsSettings(), 1).Divergences > 2);

    [Fact]
    public void The_distribution_on_a_line_is_the_target_and_not_just_its_moments()
    {
        // Student t with 5 degrees of freedom; ranks of thinned draws against the exact distribution, Kolmogorov bound at 1e-4.
        static double Student(ReadOnlySpan<double> q, Span<double> gradient)
        {
            gradient[0] = -6 * q[0] / (5 + q[0] * q[0]);
            return -3 * Math.Log(1 + q[0] * q[0] / 5);
        }

        double[] x = Sample(1, Student, new NutsSettings(Draws: 20_000), 6).Coordinate(0);
        double[] thinned = [.. x.Where((_, i) => i % 10 == 0).Order()];
        double distance = thinned.Select((v, i) => Math.Abs(MathNet.Numerics.Distributions.StudentT.CDF(0, 1, 5, v) - (i + 0.5) / thinned.Length)).Max();
        Assert.InRange(distance, 0, 2.23 / Math.Sqrt(thinned.Length));
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.NegativeInfinity)]
    public void Outside_the_support_steps_are_refused_and_the_draws_stay_inside(double outside)
    {
        // A half normal, given without transformation.
        double Half(ReadOnlySpan<double> q, Span<double> gradient)
        {
            gradient[0] = -q[0];
            return q[0] < 0 ? outside : -0.5 * q[0] * q[0];
        }

        NutsResult result = Nuts.Sample(1, () => Half, (_, _) => [0.5], new NutsSettings(Draws: 4000), 1, 2);
        double[] x = result.Coordinate(0);
        Assert.All(x, v => Assert.True(v >= 0));
        Assert.InRange(x.Average(), 0.75, 0.85);
        Assert.True(result.Divergences > 0);
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.NegativeInfinity)]
    [InlineData(double.PositiveInfinity)]
    public void A_start_without_density_names_chain_and_value(double value)
    {
        foreach (int threads in new[] { 1, 2 })
        {
            ArgumentException refusal = Assert.Throws<ArgumentException>(() => Nuts.Sample(
                1,
                () => (q, gradient) => q[0] > 5 ? value : Targets.StandardNormal(q, gradient),
                (chain, _) => [chain == 2 ? 9 : 0],
                new NutsSettings(),
                1,
                threads));
            Assert.Contains("Chain 2", refusal.Message);
            Assert.Contains(value.ToString(), refusal.Message);
        }
    }

    [Fact]
    public void A_start_without_gradient_or_of_the_wrong_size_names_chain_and_place()
    {
        static double Broken(ReadOnlySpan<double> q, Span<double> gradient)
        {
            (gradient[0], gradient[1]) = (0, double.NaN);
            return 0;
        }

        Assert.Contains("component 1", Assert.Throws<ArgumentException>(() => Nuts.Sample(2, () => Broken, (_, _) => [0, 0], new NutsSettings(), 1, 1)).Message);
        Assert.Contains("3 coordinates", Assert.Throws<ArgumentException>(() => Nuts.Sample(2, () => Targets.StandardNormal, (_, _) => [0, 0, 0], new NutsSettings(), 1, 1)).Message);
    }

    [Fact]
    public void A_flat_density_is_refused_for_having_no_step_size() =>
        Assert.Contains("no step size", Assert.Throws<NoStepSizeException>(() => Nuts.Sample(1, () => (_, g) => g[0] = 0, (_, _) => [0], new NutsSettings(), 1, 1)).Message);

    [Fact]
    public void Cancelling_stops_at_once_and_progress_ends_at_one()
    {
        using CancellationTokenSource source = new();
        List<double> told = [];
        Told all = new(told);
        Nuts.Sample(3, () => Targets.StandardNormal, (_, _) => new double[3], new NutsSettings(WarmUp: 50, Draws: 50), 1, 2, null, all);
        Assert.Equal(1, told[^1]);
        Assert.Equal(told.Order(), told);
        source.Cancel();
        Assert.ThrowsAny<OperationCanceledException>(() => Nuts.Sample(3, () => Targets.StandardNormal, (_, _) => new double[3], new NutsSettings(), 1, 2, null, null, source.Token));
    }

    [Theory]
    [InlineData(0, 0.8)]
    [InlineData(4, 1.0)]
    [InlineData(4, double.NaN)]
    public void Impossible_settings_are_refused(int chains, double target) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Sample(1, Targets.StandardNormal, new NutsSettings(Chains: chains, TargetAcceptance: target)));

    [Fact]
    public void A_warm_sampler_allocates_nothing_per_draw()
    {
        NutsResult Run(int draws) => Nuts.Sample(50, () => Targets.StandardNormal, (_, r) => Targets.NormalStart(50, r), new NutsSettings(Chains: 1, WarmUp: 100, Draws: draws), 1, 1);
        Run(10);
        long before = GC.GetAllocatedBytesForCurrentThread();
        Run(1000);
        long some = GC.GetAllocatedBytesForCurrentThread() - before;
        Run(3000);
        long more = GC.GetAllocatedBytesForCurrentThread() - before - some;
        // What grows is the record of the draws itself: 50 coordinates and 29 bytes of figures a draw.
        Assert.InRange((more - some) / 2000.0, 400, 440);
    }

    sealed class Told(List<double> told) : IProgress<double>
    {
        public void Report(double value) => told.Add(value);
    }
}
