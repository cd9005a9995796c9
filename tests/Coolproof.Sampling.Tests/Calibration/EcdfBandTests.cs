using Coolproof.Sampling.Calibration;

namespace Coolproof.Sampling.Tests.Calibration;

public sealed class EcdfBandTests
{
    [Theory]
    [InlineData(50, 20, 0.95)]
    [InlineData(200, 100, 0.9)]
    [InlineData(300, 64, 0.99)]
    public void Uniform_ranks_leave_the_band_as_often_as_stated(int replicates, int bins, double coverage)
    {
        EcdfBand band = EcdfBand.For(replicates, bins, coverage);
        Assert.InRange(band.Coverage, coverage, 1);
        RandomStream random = new(1);
        const int Trials = 4000;
        int inside = 0;
        int[] ranks = new int[replicates];
        for (int trial = 0; trial < Trials; trial++)
        {
            for (int i = 0; i < replicates; i++)
                ranks[i] = random.NextIndex(bins);
            inside += band.Leaves(ranks) is null ? 1 : 0;
        }

        // Four binomial standard errors about the exact coverage.
        Assert.Equal(band.Coverage, (double)inside / Trials, 4 * Math.Sqrt(band.Coverage * (1 - band.Coverage) / Trials));
    }

    [Fact]
    public void With_two_ranks_the_band_is_a_binomial_interval()
    {
        // 100 fair coins: 40 to 60 heads have probability 0.9648 (binomial sum), 41 to 59 have 0.9431.
        EcdfBand band = EcdfBand.For(100, 2, 0.95);
        Assert.Equal((40, 60), (band.Lower[0], band.Upper[0]));
        Assert.Equal(0.9648, band.Coverage, 1e-4);
    }

    [Fact]
    public void Ranks_heaped_at_one_end_or_both_leave_the_band()
    {
        EcdfBand band = EcdfBand.For(200, 50, 0.99);
        Assert.NotNull(band.Leaves([.. Enumerable.Range(0, 200).Select(i => i % 50 / 2)]));
        Assert.NotNull(band.Leaves([.. Enumerable.Range(0, 200).Select(i => i % 4 == 0 ? 0 : i % 4 == 1 ? 49 : i % 50)]));
        Assert.Null(band.Leaves([.. Enumerable.Range(0, 200).Select(i => i % 50)]));
    }

    [Fact]
    public void A_wrong_rank_is_named() =>
        Assert.Contains("50", Assert.Throws<ArgumentException>(() => EcdfBand.For(3, 50, 0.9).Leaves([0, 50, 1])).Message);
}
