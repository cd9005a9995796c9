using Coolproof.Sampling;

namespace Coolproof.Evidence.Tests.Calibration;

/// <summary>That the yardsticks themselves measure what they say.</summary>
public class FiguresTests
{
    [Fact]
    public void The_binomial_test_agrees_with_sums_of_binomial_terms()
    {
        // P(X ≥ 2), n = 3, p = 1/2: 4/8. P(X ≥ 1), n = 10, p = 0.1: 1 − 0.9^10. By hand.
        Assert.Equal(0.5, BinomialTest.AtLeast(2, 3, 0.5), 1e-12);
        Assert.Equal(1 - Math.Pow(0.9, 10), BinomialTest.AtLeast(1, 10, 0.1), 1e-12);
        Assert.Equal(1, BinomialTest.AtLeast(0, 10, 0.1));
        Assert.Equal(Math.Pow(0.1, 10), BinomialTest.AtLeast(10, 10, 0.1), 1e-18);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(0.6)]
    [InlineData(1.5)]
    public void The_logistic_slope_finds_by_how_much_log_odds_are_stretched(double truth)
    {
        RandomStream chance = new(4);
        List<(double, bool)> points = [];
        for (int i = 0; i < 20_000; i++)
        {
            double x = 2 * chance.NextNormal();
            points.Add((x, chance.NextUniform() < 1 / (1 + Math.Exp(-(0.2 + truth * x)))));
        }
        (double slope, double intercept) = LogisticSlope.Fit(points);
        Assert.Equal(truth, slope, 0.05);
        Assert.Equal(0.2, intercept, 0.07);
    }

    [Fact]
    public void The_logistic_slope_gives_none_where_all_is_separated() => Assert.Equal(double.NaN, LogisticSlope.Fit([(-1, false), (1, true), (2, true), (-2, false)]).Slope);

    [Fact]
    public void The_bootstrap_gives_a_mean_its_standard_error_and_clusters_theirs()
    {
        RandomStream chance = new(8);
        double[] values = [.. Enumerable.Range(0, 400).Select(_ => chance.NextNormal())];
        double Error(int copies) => DayBootstrap.OfSums([.. values.Select(v => new[] { copies * v, copies })], s => s[0] / s[1], 3).Error;
        Assert.Equal(1 / Math.Sqrt(400.0), Error(1), 0.006);
        // Ten pairs of one day that say all the same are one piece of evidence, not ten.
        Assert.Equal(Error(1), Error(10), 1e-12);
    }

    [Fact]
    public void Every_property_of_a_day_splits_the_days_without_remainder()
    {
        Rehearsal.Stratum[] days = [.. Enumerable.Range(1, 50).Select(i => Rehearsal.DayGenerator.Day(i).Stratum)];
        int memberships = days.Sum(d => Stratification.All.Count(s => s.Holds(d)));
        // All days, and one stratum each of load, hands, delays, fan, runs, order, charge, clock, start, rest and options.
        Assert.Equal(50 * 12, memberships);
    }
}
