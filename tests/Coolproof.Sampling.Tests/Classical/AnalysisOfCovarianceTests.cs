using Coolproof.Sampling.Classical;

namespace Coolproof.Sampling.Tests.Classical;

/// <summary>Against R 4.2.2 (lm, anova) and lme4 1.1-31 on published and constructed designs.</summary>
public class AnalysisOfCovarianceTests
{
    [Fact]
    public void A_latin_square_of_orchard_sprays_is_analysed_as_published()
    {
        var table = AnalysisOfCovariance.Fit(PublishedExperiments.OrchardSprays,
            [Factor("row", 64, i => i % 8), Factor("column", 64, i => i / 8), Factor("spray", 64, i => PublishedExperiments.OrchardSpray[i])]).Table;
        Same(4767.484375, 1.788375987, 0.1151080929, table.Lines[0]);
        Same(2807.234375, 1.053048138, 0.4100371745, table.Lines[1]);
        Same(56159.98437, 21.06670092, 7.454921606e-12, table.Lines[2]);
        Same(15994.90625, table.ResidualSumOfSquares, 1e-9);
        Assert.Equal([7, 7, 7], table.Lines.Select(line => line.DegreesOfFreedom));
    }

    [Fact]
    public void Warp_breaks_and_their_interaction_are_analysed_as_published()
    {
        var (wool, tension) = (Factor("wool", 54, i => i / 27), Factor("tension", 54, i => i / 9 % 3));
        var table = AnalysisOfCovariance.Fit(PublishedExperiments.Warpbreaks, [wool, tension, DesignTerm.Interaction(wool, tension)]).Table;
        Same(450.6666667, 3.765288361, 0.05821297596, table.Lines[0]);
        Same(2034.259259, 8.498046648, 0.0006926209367, table.Lines[1]);
        Same(1002.777778, 4.189068967, 0.02104419073, table.Lines[2]);
        Same(5745.111111, table.ResidualSumOfSquares, 1e-9);
    }

    [Fact]
    public void A_williams_design_gives_direct_and_carry_over_effects()
    {
        var fit = AnalysisOfCovariance.Fit(PublishedExperiments.Williams, [Subject, Period, Treatment, CarryOver]);
        Same(0.3662421785, fit.Model.ResidualSd, 1e-8);
        Assert.Equal(15, fit.Model.DegreesOfFreedom);
        foreach (var (level, direct, carried) in new[] { ("2", -1.9875, -0.6), ("3", -3.42, -1.23), ("4", -1.1775, -0.41) })
        {
            Same(direct, 0.1920590187, fit.Difference("treatment", level, "1"));
            Same(carried, 0.2316318919, fit.Difference("carry-over", level, "1"));
        }
        var line = fit.Table.Lines[3];
        Assert.Equal(3, line.DegreesOfFreedom);
        Same(9.773856859, line.F, 1e-8);
        Same(0.0008030, line.P, 1e-3);
        var without = AnalysisOfCovariance.Fit(PublishedExperiments.Williams, [Subject, Period, Treatment]);
        Same(-3.1125, 0.2873489942, without.Difference("treatment", "3", "1"));
        Same(0.5746979883, without.Model.ResidualSd, 1e-8);
    }

    [Fact]
    public void A_williams_design_with_random_subjects_gives_the_published_effects()
    {
        var subject = RandomTerm.Intercept("subject", [.. Enumerable.Range(0, 32).Select(i => $"{i / 4}")]);
        var fit = TreatmentComparison.Fit(PublishedExperiments.Williams, Treatment, [Period, CarryOver], [subject]);
        Same(1.427406081, fit.Model.Components[0].Covariance[0, 0], 1e-4);
        Same(0.1341394176, fit.Model.ResidualSd * fit.Model.ResidualSd, 1e-4);
        foreach (var (level, direct) in new[] { ("2", -1.987242356), ("3", -3.418694602), ("4", -1.17302844) })
        {
            var difference = fit.Difference(level, "1");
            Same(direct, difference.Estimate, 1e-6);
            Same(0.1920433799, difference.StandardError, 1e-5);
            // Between 15, were subjects fixed, and 22, were there none.
            Assert.InRange(difference.DegreesOfFreedom, 15, 22);
        }
    }

    [Fact]
    public void Interblock_information_in_a_balanced_crossover_leaves_treatment_differences_at_the_fixed_subject_answer()
    {
        var subject = RandomTerm.Intercept("subject", [.. Enumerable.Range(0, 32).Select(i => $"{i / 4}")]);
        var mixed = TreatmentComparison.Fit(PublishedExperiments.Williams, Treatment, [Period], [subject]).Difference("3", "1");
        var fixedSubjects = AnalysisOfCovariance.Fit(PublishedExperiments.Williams, [Subject, Period, Treatment]).Difference("treatment", "3", "1");
        // Each subject has each treatment once (W. G. Cochran and G. M. Cox, Experimental Designs, 1957, on complete blocks).
        Same(fixedSubjects.Estimate, mixed.Estimate, 1e-9);
        Same(fixedSubjects.StandardError, mixed.StandardError, 1e-7);
        Same(fixedSubjects.DegreesOfFreedom, mixed.DegreesOfFreedom, 1e-4);
    }

    [Fact]
    public void A_covariate_that_follows_the_treatment_is_called_confounded()
    {
        var treatment = DesignTerm.Factor("option", ["a", "a", "b", "b"]);
        var fit = AnalysisOfCovariance.Fit([1, 2, 4, 6], [treatment, DesignTerm.Covariate("charge", [1, 1, 0.7, 0.7])]);
        Assert.Equal(ContrastCaveat.Confounded, fit.Difference("option", "b", "a").Caveat);
        Assert.True(double.IsNaN(fit.Difference("option", "b", "a").Estimate));
        Assert.Equal(ContrastCaveat.Confounded, fit.Slope("charge").Caveat);
        var error = Assert.Throws<ArgumentException>(() => fit.Difference("option", "c", "a"));
        Assert.Contains("has no level c", error.Message);
    }

    [Fact]
    public void A_covariate_is_taken_off_before_treatments_are_compared()
    {
        // y = 10 + 3 [b] + 2 x, exactly, but for a fixed disturbance orthogonal to all columns.
        double[] x = [0, 1, 2, 3, 1, 2, 3, 4];
        double[] disturbance = [1, -1, -1, 1, 1, -1, -1, 1];
        var y = x.Select((v, i) => 10 + (i < 4 ? 0 : 3) + 2 * v + 0.1 * disturbance[i]).ToArray();
        var fit = AnalysisOfCovariance.Fit(y, [Factor("option", 8, i => i / 4), DesignTerm.Covariate("x", x)]);
        Same(3, fit.Difference("option", "1", "0").Estimate, 1e-12);
        Same(2, fit.Slope("x").Estimate, 1e-12);
        Same(0.1 * Math.Sqrt(8 / 5.0), fit.Model.ResidualSd, 1e-12);
        // Textbook form: s √(1/4 + 1/4 + (x̄b − x̄a)² / Σ within (x − x̄)²).
        Same(fit.Model.ResidualSd * Math.Sqrt(0.5 + 1.0 / 10), fit.Difference("option", "1", "0").StandardError, 1e-12);
    }

    static DesignTerm Subject => Factor("subject", 32, i => i / 4);

    static DesignTerm Period => Factor("period", 32, i => i % 4);

    static DesignTerm Treatment => Factor("treatment", 32, i => PublishedExperiments.WilliamsTreatment[i]);

    static DesignTerm CarryOver => Factor("carry-over", 32, i => i % 4 == 0 ? "none" : PublishedExperiments.WilliamsTreatment[i - 1]);

    static DesignTerm Factor(string name, int n, Func<int, object> level) =>
        DesignTerm.Factor(name, [.. Enumerable.Range(0, n).Select(i => $"{level(i)}")]);

    static void Same(double squares, double f, double p, AnovaLine line)
    {
        Same(squares, line.SumOfSquares, 1e-9);
        Same(f, line.F, 1e-8);
        Same(p, line.P, 1e-8);
    }

    static void Same(double estimate, double error, ContrastEstimate contrast)
    {
        Same(estimate, contrast.Estimate, 1e-8);
        Same(error, contrast.StandardError, 1e-8);
    }

    static void Same(double expected, double actual, double relative) =>
        Assert.True(Math.Abs(actual - expected) <= relative * Math.Abs(expected), $"expected {expected:R}, got {actual:R}");
}
