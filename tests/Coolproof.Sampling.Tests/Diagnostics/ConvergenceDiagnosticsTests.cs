using System.Diagnostics;
using Coolproof.Sampling.Diagnostics;
using MathNet.Numerics.Distributions;

namespace Coolproof.Sampling.Tests.Diagnostics;

public sealed class ConvergenceDiagnosticsTests
{
    [Theory]
    [InlineData("slow")]
    [InlineData("antithetic")]
    [InlineData("heavy")]
    [InlineData("apart")]
    [InlineData("tied")]
    [InlineData("spread")]
    public void Figures_agree_with_the_R_package_posterior(string quantity)
    {
        Table draws = new("convergence-draws.csv"), figures = new("convergence-figures.csv");
        double[] values = [.. draws.Where("quantity", quantity).Select(row => draws.Number(row, "value"))];
        string[] wanted = figures.Single("quantity", quantity);
        ConvergenceDiagnostics diagnostics = new(4, 100);
        QuantityDiagnostics got = diagnostics.Assess(values);
        Assert.Equal(1, got.Mean / figures.Number(wanted, "mean"), 1e-11);
        Assert.Equal(1, got.StandardDeviation / figures.Number(wanted, "sd"), 1e-11);
        Assert.Equal(1, got.RHat / figures.Number(wanted, "rhat"), 1e-11);
        Assert.Equal(1, got.BulkSampleSize / figures.Number(wanted, "ess_bulk"), 1e-9);
        Assert.Equal(1, got.TailSampleSize / figures.Number(wanted, "ess_tail"), 1e-9);
        Assert.Equal(1, got.MeanSampleSize / figures.Number(wanted, "ess_mean"), 1e-9);
        Assert.Equal(1, got.MeanError / figures.Number(wanted, "mcse_mean"), 1e-9);
        Assert.Equal(1, got.StandardDeviationError / figures.Number(wanted, "mcse_sd"), 1e-9);
        Assert.Equal(1, diagnostics.QuantileSampleSize(values, 0.3) / figures.Number(wanted, "ess_q30"), 1e-9);
        Assert.Equal(figures.Number(wanted, "mcse_q30"), diagnostics.QuantileWithError(values, 0.3).Error, 1e-9);
    }

    [Fact]
    public void One_bad_draw_gives_no_figures_and_never_a_large_sample_size()
    {
        foreach (double bad in new[] { double.NaN, double.PositiveInfinity, double.NegativeInfinity })
        {
            double[] values = Independent(4 * 50, 1);
            values[77] = bad;
            AssertNoFigures(new ConvergenceDiagnostics(4, 50).Assess(values));
        }
    }

    [Fact]
    public void A_quantity_that_never_moves_has_no_figures() =>
        AssertNoFigures(new ConvergenceDiagnostics(4, 50).Assess(Enumerable.Repeat(3.7, 200).ToArray()));

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(7)]
    public void Too_few_draws_have_no_figures(int draws) => AssertNoFigures(new ConvergenceDiagnostics(4, draws).Assess(Independent(4 * draws, 2)));

    [Fact]
    public void Chains_each_stuck_at_its_own_place_are_as_good_as_no_sample()
    {
        double[] values = [.. Enumerable.Range(0, 400).Select(i => (double)(i / 100))];
        QuantityDiagnostics got = new ConvergenceDiagnostics(4, 100).Assess(values);
        Assert.True(got.RHat > 100, $"R-hat {got.RHat}");
        Assert.InRange(got.BulkSampleSize, 1, 16);
    }

    [Fact]
    public void One_chain_alone_is_judged_by_its_halves()
    {
        double[] steady = Independent(1000, 3), drifting = [.. steady.Select((x, i) => x + i / 250.0)];
        ConvergenceDiagnostics diagnostics = new(1, 1000);
        Assert.InRange(diagnostics.Assess(steady).RHat, 0.99, 1.01);
        Assert.True(diagnostics.Assess(drifting).RHat > 1.2);
    }

    [Fact]
    public void Independent_draws_count_fully_and_an_autoregression_as_theory_says()
    {
        // AR(1): effective share (1 − φ)/(1 + φ) for the mean.
        foreach ((double phi, double share) in new[] { (0.0, 1.0), (0.5, 1.0 / 3), (0.8, 1.0 / 9) })
        {
            double[] noise = Independent(4 * 20000, 5), values = new double[noise.Length];
            for (int i = 0; i < noise.Length; i++)
                values[i] = i % 20000 == 0 ? noise[i] / Math.Sqrt(1 - phi * phi) : phi * values[i - 1] + noise[i];
            QuantityDiagnostics got = new ConvergenceDiagnostics(4, 20000).Assess(values);
            Assert.InRange(got.MeanSampleSize / noise.Length / share, 0.92, 1.08);
            Assert.InRange(got.RHat, 0.999, 1.002);
        }
    }

    [Fact]
    public void The_stated_errors_of_mean_spread_and_quantile_are_the_errors_made()
    {
        // 400 replicates of 4 × 100 autoregressive draws, φ = 0.5: the z-scores against the truth have spread 1.
        ConvergenceDiagnostics diagnostics = new(4, 100);
        double mean = 0, spread = 0, quantile = 0, truth = Normal.InvCDF(0, 1, 0.9);
        const int Replicates = 400;
        for (int r = 0; r < Replicates; r++)
        {
            double[] values = Independent(400, 100 + r);
            for (int i = 0; i < 400; i++)
                values[i] = i % 100 == 0 ? values[i] : 0.5 * values[i - 1] + Math.Sqrt(0.75) * values[i];
            QuantityDiagnostics got = diagnostics.Assess(values);
            (double at, double error) = diagnostics.QuantileWithError(values, 0.9);
            mean += Math.Pow(got.Mean / got.MeanError, 2) / Replicates;
            spread += Math.Pow((got.StandardDeviation - 1) / got.StandardDeviationError, 2) / Replicates;
            quantile += Math.Pow((at - truth) / error, 2) / Replicates;
        }

        Assert.InRange(mean, 0.8, 1.25);
        Assert.InRange(spread, 0.75, 1.4);
        Assert.InRange(quantile, 0.75, 1.4);
    }

    [Fact]
    public void An_odd_middle_draw_is_left_out_of_the_halves()
    {
        double[] odd = Independent(2 * 101, 8);
        double[] even = [.. odd.Where((_, i) => i % 101 != 50)];
        Assert.Equal(new ConvergenceDiagnostics(2, 100).Assess(even).RHat, new ConvergenceDiagnostics(2, 101).Assess(odd).RHat);
    }

    [Fact]
    public void All_figures_of_a_quantity_cost_no_more_than_a_few_sorts()
    {
        // A ratio of the same work on the same machine; measured 0.5 to 1, about 0.07 ms a quantity on an idle core.
        double[][] values = [.. Enumerable.Range(0, 60).Select(i => Independent(2000, i))];
        double best = double.PositiveInfinity, sorting = double.PositiveInfinity;
        for (int round = 0; round < 4; round++)
        {
            Stopwatch watch = Stopwatch.StartNew();
            ConvergenceDiagnostics diagnostics = new(4, 500);
            foreach (double[] quantity in values)
                diagnostics.Assess(quantity);
            best = Math.Min(best, watch.Elapsed.TotalMilliseconds);
            watch.Restart();
            foreach (double[] quantity in values)
                Array.Sort((double[])quantity.Clone(), new int[2000]);
            sorting = Math.Min(sorting, watch.Elapsed.TotalMilliseconds);
        }

        TestContext.Current.TestOutputHelper?.WriteLine($"60 quantities of 4 × 500 draws: {best:f1} ms; sorting each once {sorting:f1} ms");
        Assert.True(best < 5 * sorting, $"{best} ms against {sorting} ms");
    }

    static double[] Independent(int count, int seed)
    {
        double[] values = new double[count];
        new RandomStream(seed).FillNormal(values);
        return values;
    }

    static void AssertNoFigures(QuantityDiagnostics got)
    {
        Assert.True(double.IsNaN(got.RHat));
        Assert.True(double.IsNaN(got.BulkSampleSize));
        Assert.True(double.IsNaN(got.TailSampleSize));
        Assert.True(double.IsNaN(got.MeanSampleSize));
        Assert.True(double.IsNaN(got.MeanError));
        Assert.True(double.IsNaN(got.StandardDeviationError));
    }
}
