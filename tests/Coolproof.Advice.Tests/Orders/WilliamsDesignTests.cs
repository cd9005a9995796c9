using Coolproof.Advice.Orders;

namespace Coolproof.Advice.Tests.Orders;

public class WilliamsDesignTests
{
    // Data/williams-designs.csv: designs for 2 to 6 treatments with their balance counts (crossdes 1.1-2; the designs are facts of mathematics).
    public static TheoryData<int> Treatments => new(Published().Select(r => r.Treatments).Distinct());

    [Theory]
    [MemberData(nameof(Treatments))]
    public void Balance_counts_are_those_of_published_designs(int treatments)
    {
        (int Treatments, int[] Periods, int Pairs, int PerPeriod)[] rows = [.. Published().Where(r => r.Treatments == treatments)];
        int[][] own = WilliamsDesign.Sequences(treatments);
        Assert.Equal(rows.Length, own.Length);
        foreach (Balance balance in new[] { Balance.Of(own, treatments), Balance.Of([.. rows.Select(r => r.Periods)], treatments) })
        {
            Assert.Equal(0, balance.CarryOverSpread);
            for (int a = 0; a < treatments; a++)
            {
                for (int b = 0; b < treatments; b++)
                {
                    if (a != b)
                        Assert.Equal(rows[0].Pairs, balance.After[a, b]);
                    Assert.Equal(rows[0].PerPeriod, balance.AtPlace[a, b]);
                }
            }
        }
    }

    [Theory]
    [InlineData(7)]
    [InlineData(8)]
    [InlineData(11)]
    [InlineData(12)]
    public void Larger_designs_are_balanced_too(int options)
    {
        Balance balance = Balance.Of(WilliamsDesign.Sequences(options), options);
        Assert.Equal(0, balance.CarryOverSpread);
        Assert.Equal(options % 2 == 0 ? 1 : 2, balance.After[0, 1]);
    }

    [Fact]
    public void One_option_has_no_design() => Assert.Throws<ArgumentOutOfRangeException>(() => WilliamsDesign.Sequences(1));

    private static IEnumerable<(int Treatments, int[] Periods, int Pairs, int PerPeriod)> Published() =>
        File.ReadLines(Path.Combine(AppContext.BaseDirectory, "Data", "williams-designs.csv")).Skip(1).Select(line => line.Split(',')).Select(c =>
            (int.Parse(c[0]), c[2].Trim('"').Split(' ').Select(p => int.Parse(p) - 1).ToArray(), int.Parse(c[3]), int.Parse(c[4])));
}
