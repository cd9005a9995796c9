using Coolproof.Sampling.Hamiltonian;

namespace Coolproof.Sampling.Tests.Hamiltonian;

public sealed class AdaptationTests
{
    [Theory]
    [InlineData(0.6)]
    [InlineData(0.8)]
    [InlineData(0.95)]
    public void Dual_averaging_finds_the_step_of_a_noisy_response(double target)
    {
        // Acceptance exp(−step) with noise: the step sought is −log(target).
        RandomStream random = new(2);
        DualAveraging averaging = new(target);
        averaging.Restart(1);
        for (int i = 0; i < 2000; i++)
            averaging.Learn(Math.Clamp(Math.Exp(-averaging.Step) + 0.05 * random.NextNormal(), 0, 1));
        Assert.Equal(-Math.Log(target), averaging.Averaged, 0.05 * -Math.Log(target) + 0.01);
    }

    [Theory]
    [InlineData(1000, 75, new[] { 99, 149, 249, 449, 949 })]
    [InlineData(500, 75, new[] { 99, 149, 249, 449 })]
    [InlineData(100, 15, new[] { 89 })]
    [InlineData(10, 10, new int[0])]
    public void Windows_double_and_the_last_takes_the_rest(int warmUp, int first, int[] ends)
    {
        WarmUpSchedule schedule = new(new NutsSettings(WarmUp: warmUp));
        Assert.Equal(ends, Enumerable.Range(0, warmUp).Where(schedule.EndsWindow));
        int[] gathered = [.. Enumerable.Range(0, warmUp).Where(schedule.Gathers)];
        Assert.Equal(ends.Length == 0 ? [] : Enumerable.Range(first, ends[^1] + 1 - first), gathered);
    }

    [Fact]
    public void Without_metric_adaptation_nothing_is_gathered()
    {
        WarmUpSchedule schedule = new(new NutsSettings(AdaptMetric: false));
        Assert.DoesNotContain(Enumerable.Range(0, 500), i => schedule.Gathers(i) || schedule.EndsWindow(i));
    }

    [Fact]
    public void The_running_covariance_is_the_covariance()
    {
        RandomStream random = new(3);
        RunningCovariance running = new(3, 2);
        double[][] rows = [.. Enumerable.Range(0, 40_000).Select(_ =>
        {
            double a = random.NextNormal(), b = random.NextNormal();
            return new[] { 100 + a, 3 * a + b, 0.1 * random.NextNormal() };
        })];
        foreach (double[] row in rows)
            running.Add(row);
        InverseMetric metric = running.Metric(InverseMetric.Identity(3), 1e-3);
        double[] variances = metric.Variances();
        for (int i = 0; i < 3; i++)
        {
            double mean = rows.Average(r => r[i]), variance = rows.Sum(r => (r[i] - mean) * (r[i] - mean)) / (rows.Length - 1);
            Assert.Equal(1, variances[i] / variance, 2e-4);
        }

        Assert.Equal(2, metric.BlockSize);
        double covariance = metric.FactorAt(0, 0) * metric.FactorAt(1, 0);
        Assert.Equal(3, covariance, 0.06);
    }

    [Fact]
    public void A_short_window_invents_no_correlations_and_keeps_the_real_one()
    {
        // 40 coordinates, 50 draws; only the first two belong together (0.99).
        RandomStream random = new(4);
        RunningCovariance running = new(40, 40);
        double[] row = new double[40];
        for (int draw = 0; draw < 50; draw++)
        {
            random.FillNormal(row);
            row[1] = 0.99 * row[0] + Math.Sqrt(1 - 0.99 * 0.99) * row[1];
            running.Add(row);
        }

        InverseMetric metric = running.Metric(InverseMetric.Identity(40), 1e-3);
        double Correlation(int i, int j)
        {
            double covariance = Enumerable.Range(0, Math.Min(i, j) + 1).Sum(k => metric.FactorAt(i, k) * metric.FactorAt(j, k));
            double[] variances = metric.Variances();
            return covariance / Math.Sqrt(variances[i] * variances[j]);
        }

        double stray = Enumerable.Range(2, 38).SelectMany(i => Enumerable.Range(2, i - 2).Select(j => Math.Abs(Correlation(i, j)))).Average();
        // Raw sample correlations of 50 draws average 0.11 in size.
        Assert.InRange(stray, 0, 0.03);
    }

    [Fact]
    public void Short_runs_pull_towards_a_given_metric_and_not_towards_a_placeholder()
    {
        RunningCovariance running = new(1, 0);
        foreach (double x in new[] { -0.1, 0.1, -0.1, 0.1, 0.0 })
            running.Add([x]);
        double given = running.Metric(InverseMetric.Diagonal([4.0]), 1).Variances()[0], placeholder = running.Metric(InverseMetric.Identity(1), 1e-3).Variances()[0];
        Assert.Equal(0.5 * 0.01 + 0.5 * 4, given, 1e-12);
        Assert.Equal(0.5 * 0.01 + 0.5 * 1e-3, placeholder, 1e-12);
    }

    [Fact]
    public void A_metric_that_is_none_is_refused_by_place_and_value()
    {
        Assert.Contains("Variance 1 is -1", Assert.Throws<ArgumentException>(() => InverseMetric.Diagonal([1, -1])).Message);
        Assert.Contains("positive definite", Assert.Throws<ArgumentException>(() => InverseMetric.LeadingBlock([1, 1], new double[,] { { 1, 2 }, { 2, 1 } })).Message);
        Assert.Throws<ArgumentException>(() => InverseMetric.LeadingBlock([1], new double[2, 2]));
    }
}
