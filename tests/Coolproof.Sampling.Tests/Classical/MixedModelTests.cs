using Coolproof.Sampling.Classical;

namespace Coolproof.Sampling.Tests.Classical;

/// <summary>Variance components within 1e-4, fixed effects, standard errors and deviances within 1e-6 of lme4 1.1-31.</summary>
public class MixedModelTests(ITestOutputHelper output)
{
    [Theory]
    [InlineData(MixedModelCriterion.Reml, 1764.049949, 2451.250011, 19.38341194, 319.6542768)]
    [InlineData(MixedModelCriterion.MaximumLikelihood, 1388.333396, 2451.249981, 17.69455374, 327.3270599)]
    public void Batches_of_dyestuff_vary_as_published(MixedModelCriterion criterion, double batch, double residual, double error, double deviance)
    {
        var fit = MixedModel.Fit(Ones(30), PublishedExperiments.Dyestuff, [RandomTerm.Intercept("batch", Blocks(30, 5))], criterion);
        Same(batch, fit.Components[0].Covariance[0, 0], 1e-4);
        Same(residual, fit.ResidualSd * fit.ResidualSd, 1e-4);
        Same(1527.5, fit.FixedEffects[0], 1e-6);
        Same(error, fit.StandardErrors[0], 1e-6);
        Same(deviance, fit.Deviance, 1e-6);
    }

    [Fact]
    public void Variance_components_of_a_balanced_one_way_layout_are_those_of_its_mean_squares()
    {
        // S. R. Searle, G. Casella, C. E. McCulloch, Variance Components (1992): REML equals the ANOVA estimators when they are not negative.
        var y = PublishedExperiments.Dyestuff;
        var fit = MixedModel.Fit(Ones(30), y, [RandomTerm.Intercept("batch", Blocks(30, 5))]);
        var table = OneWayAnova.Of([.. y.Chunk(5)]);
        var (between, within) = (table.Lines[0].SumOfSquares / 5, table.ResidualSumOfSquares / 24);
        Same((between - within) / 5, fit.Components[0].Covariance[0, 0], 1e-7);
        Same(within, fit.ResidualSd * fit.ResidualSd, 1e-7);
        var mean = fit.Contrast([1]);
        Same(Math.Sqrt(between / 30), mean.StandardError, 1e-7);
        Same(5, mean.DegreesOfFreedom, 1e-4);
    }

    [Theory]
    [InlineData(MixedModelCriterion.Reml, 13.80630963, 0.6783880312, 161.8282778)]
    [InlineData(MixedModelCriterion.MaximumLikelihood, 13.34609931, 0.6669857396, 162.8730367)]
    public void A_variance_of_zero_is_found_exactly(MixedModelCriterion criterion, double residual, double error, double deviance)
    {
        var fit = MixedModel.Fit(Ones(30), PublishedExperiments.Dyestuff2, [RandomTerm.Intercept("batch", Blocks(30, 5))], criterion);
        Assert.Equal(0, fit.Components[0].Covariance[0, 0]);
        Same(residual, fit.ResidualSd * fit.ResidualSd, 1e-6);
        Same(5.6656, fit.FixedEffects[0], 1e-6);
        Same(error, fit.StandardErrors[0], 1e-6);
        Same(deviance, fit.Deviance, 1e-6);
    }

    [Fact]
    public void Plates_crossed_with_samples_of_penicillin_vary_as_published()
    {
        var plate = RandomTerm.Intercept("plate", Blocks(144, 6));
        var sample = RandomTerm.Intercept("sample", [.. Enumerable.Range(0, 144).Select(i => $"{i % 6}")]);
        var fit = MixedModel.Fit(Ones(144), PublishedExperiments.Penicillin, [sample, plate]);
        Same(3.730919014, fit.Components[0].Covariance[0, 0], 1e-4);
        Same(0.7169083402, fit.Components[1].Covariance[0, 0], 1e-4);
        Same(0.3024154451, fit.ResidualSd * fit.ResidualSd, 1e-4);
        Same(22.97222222, fit.FixedEffects[0], 1e-6);
        Same(0.8085735117, fit.StandardErrors[0], 1e-6);
        Same(330.860589, fit.Deviance, 1e-6);
    }

    [Fact]
    public void Casks_nested_in_batches_of_paste_vary_as_published()
    {
        var fit = MixedModel.Fit(Ones(60), PublishedExperiments.Pastes,
            [RandomTerm.Intercept("batch", Blocks(60, 6)), RandomTerm.Intercept("cask", Blocks(60, 2))]);
        Same(1.65730913, fit.Components[0].Covariance[0, 0], 1e-4);
        Same(8.433666581, fit.Components[1].Covariance[0, 0], 1e-4);
        Same(0.6779999845, fit.ResidualSd * fit.ResidualSd, 1e-4);
        Same(60.05333333, fit.FixedEffects[0], 1e-6);
        Same(0.6768700998, fit.StandardErrors[0], 1e-6);
        Same(246.9907459, fit.Deviance, 1e-6);
    }

    [Fact]
    public void Machines_differ_as_published_and_with_the_degrees_of_freedom_of_their_balanced_layout()
    {
        var workers = Enumerable.Range(0, 54).Select(i => $"{i / 3 % 6}").ToArray();
        var fit = MixedModel.Fit(Dummies(54, 3, i => i / 18), PublishedExperiments.Machines,
            [RandomTerm.Intercept("worker on machine", Blocks(54, 3)), RandomTerm.Intercept("worker", workers)]);
        Same(13.90945752, fit.Components[0].Covariance[0, 0], 1e-4);
        Same(22.85844608, fit.Components[1].Covariance[0, 0], 1e-4);
        Same(0.9246296079, fit.ResidualSd * fit.ResidualSd, 1e-4);
        Same([52.35555556, 7.966666667, 13.91666667], fit.FixedEffects, 1e-6);
        Same([2.485830293, 2.176975531, 2.176975531], fit.StandardErrors, 1e-6);
        Same(215.687568, fit.Deviance, 1e-6);
        // A balanced two-way layout with random workers: machines are compared with (3 − 1)(6 − 1) degrees of freedom.
        Same(10, fit.Contrast([0, 1, 0]).DegreesOfFreedom, 1e-4);
        Same(10, fit.Contrast([0, 1, -1]).DegreesOfFreedom, 1e-4);
    }

    [Fact]
    public void Random_slopes_of_sleep_restriction_come_out_as_published_with_correlation()
    {
        var fit = MixedModel.Fit(Days(), PublishedExperiments.Sleep, [RandomTerm.InterceptAndSlope("subject", Blocks(180, 10), Day)]);
        var covariance = fit.Components[0].Covariance;
        Same(612.0897483, covariance[0, 0], 1e-4);
        Same(35.07166234, covariance[1, 1], 1e-4);
        Same(9.604335475, covariance[0, 1], 1e-4);
        Same(covariance[1, 0], covariance[0, 1], 1e-15);
        Same(654.9410407, fit.ResidualSd * fit.ResidualSd, 1e-4);
        Same([251.4051048, 10.46728596], fit.FixedEffects, 1e-6);
        Same([6.824555776, 1.545788932], fit.StandardErrors, 2e-6);
        Same(1743.628272, fit.Deviance, 1e-6);
        // Balanced, 18 subjects: 17 degrees of freedom.
        Same(17, fit.Contrast([0, 1]).DegreesOfFreedom, 1e-4);
    }

    [Fact]
    public void Random_slopes_of_sleep_restriction_come_out_as_published_without_correlation()
    {
        var fit = MixedModel.Fit(Days(), PublishedExperiments.Sleep,
            [RandomTerm.Intercept("subject", Blocks(180, 10)), RandomTerm.Slope("day in subject", Blocks(180, 10), Day)]);
        Same(627.5691169, fit.Components[0].Covariance[0, 0], 1e-4);
        Same(35.85820181, fit.Components[1].Covariance[0, 0], 1e-4);
        Same(653.5838049, fit.ResidualSd * fit.ResidualSd, 1e-4);
        Same([251.4051048, 10.46728596], fit.FixedEffects, 1e-6);
        Same([6.885381508, 1.559565996], fit.StandardErrors, 2e-6);
        Same(1743.669294, fit.Deviance, 1e-6);
    }

    [Fact]
    public void A_term_with_a_level_for_each_reading_is_refused_by_name()
    {
        var error = Assert.Throws<ArgumentException>(() => MixedModel.Fit(Ones(4), [1, 2, 3, 5], [RandomTerm.Intercept("run", Blocks(4, 1))]));
        Assert.Contains("run", error.Message);
    }

    [Fact]
    public void Groups_that_explain_every_reading_leave_no_scatter_and_no_standard_error()
    {
        var fit = MixedModel.Fit(Ones(6), [1, 1, 2, 2, 5, 5], [RandomTerm.Intercept("day", Blocks(6, 2))]);
        Assert.Equal(ContrastCaveat.NoScatter, fit.Caveat);
        Assert.True(double.IsNaN(fit.Contrast([1]).StandardError));
        Same(16.0 / 6, fit.FixedEffects[0], 1e-12);
    }

    [Fact]
    public void Three_hundred_days_of_ten_runs_are_fitted_in_a_few_seconds_and_the_truth_is_found()
    {
        // Made up: six options 2 K apart, days sd 3 K, readings sd 1 K.
        var random = new Random(20261125);
        double Normal() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        var days = Enumerable.Range(0, 300).Select(_ => 3 * Normal()).ToArray();
        var options = Enumerable.Range(0, 3000).Select(i => random.Next(6)).ToArray();
        var y = options.Select((option, i) => 60 - 2 * option + days[i / 10] + Normal()).ToArray();
        var watch = System.Diagnostics.Stopwatch.StartNew();
        var fit = TreatmentComparison.Fit(y, DesignTerm.Factor("option", [.. options.Select(o => $"{o}")]), [],
            [RandomTerm.Intercept("day", Blocks(3000, 10))]);
        var difference = fit.Difference("5", "0");
        output.WriteLine($"3000 runs, 300 days, 6 options: {watch.ElapsedMilliseconds} ms");
        Assert.InRange(difference.Estimate, -10 - 4 * difference.StandardError, -10 + 4 * difference.StandardError);
        Assert.InRange(Math.Sqrt(fit.Model.Components[0].Covariance[0, 0]), 2.5, 3.5);
        Assert.InRange(fit.Model.ResidualSd, 0.95, 1.05);
        // Treatments are all but within days: close to 3000 − 300 − 5 degrees of freedom.
        Assert.InRange(difference.DegreesOfFreedom, 2650, 2750);
        Assert.True(watch.Elapsed < TimeSpan.FromSeconds(10));
    }

    static double[] Day => [.. Enumerable.Range(0, 180).Select(i => (double)(i % 10))];

    static double[,] Days()
    {
        var design = new double[180, 2];
        for (var i = 0; i < 180; i++) (design[i, 0], design[i, 1]) = (1, i % 10);
        return design;
    }

    static double[,] Ones(int n) => Dummies(n, 1, _ => 0);

    static double[,] Dummies(int n, int levels, Func<int, int> level)
    {
        var design = new double[n, levels];
        for (var i = 0; i < n; i++)
        {
            design[i, 0] = 1;
            design[i, level(i)] = 1;
        }
        return design;
    }

    static string[] Blocks(int n, int size) => [.. Enumerable.Range(0, n).Select(i => $"{i / size}")];

    static void Same(double expected, double actual, double relative) =>
        Assert.True(Math.Abs(actual - expected) <= relative * Math.Abs(expected), $"expected {expected:R}, got {actual:R}");

    static void Same(double[] expected, IReadOnlyList<double> actual, double relative)
    {
        Assert.Equal(expected.Length, actual.Count);
        for (var i = 0; i < expected.Length; i++) Same(expected[i], actual[i], relative);
    }
}
