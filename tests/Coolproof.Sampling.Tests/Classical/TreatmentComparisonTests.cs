using Coolproof.Sampling.Classical;
using CsCheck;

namespace Coolproof.Sampling.Tests.Classical;

public class TreatmentComparisonTests
{
    [Fact]
    public void One_treatment_alone_has_nothing_to_be_compared_with_but_can_be_fitted()
    {
        var fit = Compare([61, 62.5, 60.2], ["a", "a", "a"], ["1", "1", "2"]);
        var difference = fit.Difference("a", "a");
        Assert.Equal(0, difference.Estimate);
        Assert.Equal(61.2, fit.Model.FixedEffects[0], 0.5);
    }

    [Fact]
    public void One_reading_a_treatment_gives_differences_without_standard_error_and_says_so()
    {
        var fit = Compare([61, 58, 55], ["a", "b", "c"], ["1", "1", "1"]);
        var difference = fit.Difference("c", "a");
        Assert.Equal(-6, difference.Estimate, 1e-12);
        Assert.True(double.IsNaN(difference.StandardError));
        Assert.True(double.IsNaN(difference.HalfWidth(0.9)));
        Assert.Equal(ContrastCaveat.NoResidualDegreesOfFreedom, difference.Caveat);
    }

    [Fact]
    public void One_reading_in_all_is_fitted_without_complaint()
    {
        var fit = Compare([61], ["a"], ["1"]);
        Assert.Equal(61, fit.Model.FixedEffects[0]);
        Assert.Equal(["day"], fit.LeftOut);
    }

    [Fact]
    public void Readings_that_are_all_equal_leave_no_scatter_rather_than_certainty()
    {
        var difference = Compare([60, 60, 60, 60], ["a", "b", "a", "b"], ["1", "1", "2", "2"]).Difference("b", "a");
        Assert.Equal(0, difference.Estimate, 1e-12);
        Assert.True(double.IsNaN(difference.StandardError));
        Assert.Equal(ContrastCaveat.NoScatter, difference.Caveat);
    }

    [Fact]
    public void Days_with_one_reading_each_are_left_out_and_named()
    {
        var fit = Compare([60, 62, 61, 59], ["a", "b", "a", "b"], ["1", "2", "3", "4"]);
        Assert.Equal(["day"], fit.LeftOut);
        Assert.Empty(fit.Model.Components);
        // Two groups of two: the pooled two-sample t test (Student), 2 degrees of freedom.
        var difference = fit.Difference("b", "a");
        Assert.Equal(0, difference.Estimate, 1e-12);
        Assert.Equal(Math.Sqrt((0.5 + 4.5) / 2), difference.StandardError, 1e-9);
        Assert.Equal(2, difference.DegreesOfFreedom, 1e-6);
        // Two-sided 90 % point of Student's t with 2 degrees of freedom: 2.920 (printed tables).
        Assert.Equal(2.920 * difference.StandardError, difference.HalfWidth(0.90), 0.001);
    }

    [Fact]
    public void Days_without_variance_give_the_answer_of_ordinary_least_squares()
    {
        double[] y = [60, 63, 61, 62, 62, 61, 63, 60];
        string[] options = ["a", "b", "a", "b", "a", "b", "a", "b"];
        var mixed = Compare(y, options, ["1", "1", "2", "2", "3", "3", "4", "4"]);
        var ordinary = AnalysisOfCovariance.Fit(y, [DesignTerm.Factor("option", options)]).Difference("option", "b", "a");
        Assert.Equal(0, mixed.Model.Components[0].Covariance[0, 0]);
        var difference = mixed.Difference("b", "a");
        Assert.Equal(ordinary.StandardError, difference.StandardError, 1e-9);
        Assert.Equal(6, difference.DegreesOfFreedom, 1e-5);
    }

    [Fact]
    public void A_day_that_all_readings_share_changes_nothing()
    {
        double[] y = [60, 63, 61, 62.5];
        string[] options = ["a", "b", "a", "b"];
        var one = Compare(y, options, ["1", "1", "1", "1"]).Difference("b", "a");
        var ordinary = AnalysisOfCovariance.Fit(y, [DesignTerm.Factor("option", options)]).Difference("option", "b", "a");
        Assert.Equal(ordinary.Estimate, one.Estimate, 1e-9);
        Assert.Equal(ordinary.StandardError, one.StandardError, 1e-9);
    }

    [Fact]
    public void Two_treatments_compared_within_days_give_the_paired_t_test()
    {
        // W. S. Gosset ("Student"), Biometrika 6 (1908) 1-25, from Cushny and Peebles: extra hours of sleep of ten patients under two drugs;
        // mean difference 1.58, t = 4.06 with 9 degrees of freedom.
        double[] first = [0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0.0, 2.0];
        double[] second = [1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4];
        string[] patients = [.. Enumerable.Range(0, 20).Select(i => $"{i % 10}")];
        var difference = Compare([.. first, .. second], [.. Enumerable.Range(0, 20).Select(i => i < 10 ? "1" : "2")], patients).Difference("2", "1");
        Assert.Equal(1.58, difference.Estimate, 1e-9);
        Assert.Equal(4.06, difference.Estimate / difference.StandardError, 0.005);
        Assert.Equal(9, difference.DegreesOfFreedom, 1e-3);
    }

    [Fact]
    public void A_shift_of_all_readings_or_a_new_order_of_rows_changes_no_difference()
    {
        var gen = Gen.Select(Gen.Double[-3, 3].Array[12], Gen.Double[-500, 500], Gen.Int[0, int.MaxValue]);
        gen.Sample((noise, shift, seed) =>
        {
            string[] options = [.. Enumerable.Range(0, 12).Select(i => "abc"[i % 3].ToString())];
            string[] days = [.. Enumerable.Range(0, 12).Select(i => $"{i / 4}")];
            var y = noise.Select((v, i) => 60 + i % 3 + i / 4 + v).ToArray();
            var order = Enumerable.Range(0, 12).ToArray();
            new Random(seed).Shuffle(order);
            var plain = Compare(y, options, days).Difference("c", "a");
            var shifted = Compare([.. y.Select(v => v + shift)], options, days).Difference("c", "a");
            var shuffled = Compare([.. order.Select(i => y[i])], [.. order.Select(i => options[i])], [.. order.Select(i => days[i])])
                .Difference("c", "a");
            foreach (var other in new[] { shifted, shuffled })
            {
                Assert.Equal(plain.Estimate, other.Estimate, 1e-6);
                Assert.Equal(plain.StandardError, other.StandardError, 1e-6 * plain.StandardError);
                Assert.Equal(plain.DegreesOfFreedom, other.DegreesOfFreedom, 1e-3 * plain.DegreesOfFreedom);
            }
        }, iter: 200);
    }

    static TreatmentComparison Compare(double[] y, string[] options, string[] days) =>
        TreatmentComparison.Fit(y, DesignTerm.Factor("option", options), [], [RandomTerm.Intercept("day", days)]);
}
