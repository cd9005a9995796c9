using Coolproof.Sampling.Uncertainty;

namespace Coolproof.Sampling.Tests.Uncertainty;

public class PropagationTests
{
    [Theory]
    [InlineData(InputShape.Normal, double.PositiveInfinity, 1)]
    [InlineData(InputShape.Rectangular, double.PositiveInfinity, 1)]
    [InlineData(InputShape.Arcsine, double.PositiveInfinity, 1)]
    [InlineData(InputShape.StudentT, 8, 1.1547005)] // √(8/6): JCGM 101, 6.4.9.4
    public void Draws_of_each_shape_have_their_mean_and_their_spread(InputShape shape, double dof, double sd)
    {
        MonteCarlo chance = MonteCarlo.Of([new("x", 3, 2, shape, dof)], 1, (x, y) => y[0] = x[0], 100_000, new RandomStream(1));
        Assert.Equal(3, chance.Means[0], 0.03);
        Assert.Equal(2 * sd, chance.StandardUncertainty(), 0.03);
    }

    [Fact]
    public void Inputs_that_follow_one_another_wholly_cancel_in_a_difference_by_both_ways()
    {
        double[,] one = { { 1, 1 }, { 1, 1 } };
        Input[] inputs = [new("a", 5, 0.4), new("b", 3, 0.4)];
        Assert.Equal(0, LawOfPropagation.Of(inputs, 1, (x, y) => y[0] = x[0] - x[1], one).StandardUncertainty(), 9);
        Assert.Equal(0, MonteCarlo.Of(inputs, 1, (x, y) => y[0] = x[0] - x[1], 1000, new RandomStream(1), one).StandardUncertainty(), 6);
    }

    [Fact]
    public void The_same_seed_gives_the_same_interval() =>
        Assert.Equal(Interval(7), Interval(7));

    static (double, double) Interval(long seed) => MonteCarlo.Of([new("x", 0, 1)], 1, (x, y) => y[0] = x[0] * x[0], 5000, new RandomStream(seed)).Shortest(0.9);

    [Fact]
    public void What_can_t_be_is_refused_with_its_name()
    {
        Assert.Contains("offset", Assert.Throws<ArgumentException>(() => LawOfPropagation.Of([new("offset", 0, -1)], 1, (x, y) => y[0] = x[0])).Message);
        Assert.Throws<ArgumentException>(() => LawOfPropagation.Of([], 1, (x, y) => y[0] = 0));
        Input[] two = [new("a", 0, 1), new("b", 0, 1, InputShape.Rectangular)];
        Assert.Contains("b", Assert.Throws<ArgumentException>(() => MonteCarlo.Of(two, 1, (x, y) => y[0] = x[0], 1000, new RandomStream(1), new double[,] { { 1, 0.5 }, { 0.5, 1 } })).Message);
        Assert.Throws<ArgumentException>(() => LawOfPropagation.Of(two, 1, (x, y) => y[0] = x[0], new double[,] { { 1, 0.5 }, { 0.4, 1 } }));
        Assert.Throws<ArgumentException>(() => CalibrationLine.Fit([1, 1], [2, 3], []));
        Assert.Throws<ArgumentException>(() => CalibrationLine.Fit([1, 2], [2], []));
        Assert.Throws<ArgumentOutOfRangeException>(() => MonteCarlo.Of([new("x", 0, 1)], 1, (x, y) => y[0] = x[0], 1000, new RandomStream(1)).Symmetric(1));
    }

    [Fact]
    public void A_line_through_two_points_is_exact_and_its_covariance_is_what_propagation_gives()
    {
        double[] x = [0.2, 97], u = [0.3, 0.6];
        Input[] inputs = [new("a", 1.1, u[0]), new("b", 95, u[1])];
        LawOfPropagation law = LawOfPropagation.Of(inputs, 2, (y, o) =>
        {
            CalibrationLine fit = CalibrationLine.Fit(x, y, u, 60);
            (o[0], o[1]) = (fit.Intercept, fit.Slope);
        });
        CalibrationLine line = CalibrationLine.Fit(x, [1.1, 95], u, 60);
        Assert.Equal(0, line.ChiSquare, 12);
        Assert.Equal(line.InterceptVariance, law.Covariance[0, 0], 1e-9);
        Assert.Equal(line.SlopeVariance, law.Covariance[1, 1], 1e-12);
        Assert.Equal(line.Covariance, law.Covariance[0, 1], 1e-10);
    }
}
