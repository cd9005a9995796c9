namespace Coolproof.Sampling.Tests;

public class ResamplingTests
{
    [Fact]
    public void Each_place_is_taken_as_often_as_its_share_has_it()
    {
        Assert.Equal([0, 0, 1, 3, 3, 3, 3, 3], Resampling.Systematic([2, 1, 0, 5], 8));
        RandomStream chance = new(5);
        double[] weights = [.. Enumerable.Range(0, 500).Select(_ => Math.Exp(2 * chance.NextNormal()))];
        int[] taken = Resampling.Systematic(weights, 1000);
        Assert.Equal(taken.Order(), taken);
        for (int place = 0; place < weights.Length; place++)
            Assert.InRange(taken.Count(t => t == place), 1000 * weights[place] / weights.Sum() - 1, 1000 * weights[place] / weights.Sum() + 1);
    }

    [Fact]
    public void Weights_that_are_none_are_refused()
    {
        Assert.Throws<ArgumentException>(() => Resampling.Systematic([0, 0], 3));
        Assert.Throws<ArgumentException>(() => Resampling.Systematic([1, double.NaN], 3));
        Assert.Throws<ArgumentException>(() => Resampling.Systematic([2, -1], 3));
    }
}
