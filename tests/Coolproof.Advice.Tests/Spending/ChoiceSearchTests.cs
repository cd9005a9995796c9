using System.Diagnostics;
using Coolproof.Advice.Spending;

namespace Coolproof.Advice.Tests.Spending;

public class ChoiceSearchTests(ITestOutputHelper output)
{
    // Every subset, by the definition alone.
    static IReadOnlyList<PartChoice> ByHand(PartChoices c, SpendLimits limits)
    {
        List<PartChoice> all = [];
        for (ulong s = 0; s < 1UL << c.Count; s++)
        {
            int[] parts = [.. Enumerable.Range(0, c.Count).Where(i => (s >> i & 1) != 0)];
            if ((s & c.Barred) != 0 || parts.Any(i => (c.Apart[i] & s) != 0 || (c.Needs[i] & ~s) != 0) || parts.Sum(i => c.Fans[i]) > limits.Fans) continue;
            long cents = parts.Sum(i => c.Cents[i]);
            double grams = parts.Sum(i => c.Grams[i]), counted = Math.Max(0, grams - limits.FreeGrams);
            if (cents <= limits.Cents && counted <= limits.Grams + 1e-9) all.Add(new(s, cents, grams, counted, c.WorthOf(s)));
        }
        return [.. all.Where(a => !all.Any(b => b.Cents <= a.Cents && b.CountedGrams <= a.CountedGrams + 1e-9 && b.Worth >= a.Worth - 1e-9 && (b.Cents < a.Cents || b.CountedGrams < a.CountedGrams - 1e-9 || b.Worth > a.Worth + 1e-9)))];
    }

    [Fact]
    public void It_gives_just_what_trying_every_combination_gives() => Tried(days: 250, most: 11, seed: 1);

    [Fact, Trait("Suite", "long")]
    public void It_gives_just_what_trying_every_combination_of_fifteen_parts_gives() => Tried(days: 60, most: 15, seed: 2, least: 15);

    static void Tried(int days, int most, int seed, int least = 1)
    {
        Random chance = new(seed);
        for (int day = 0; day < days; day++)
        {
            PartChoices choices = Some(chance, chance.Next(least, most + 1));
            SpendLimits limits = new(chance.Next(4) == 0 ? SpendLimits.None.Cents : 100 * chance.Next(5, 120), chance.Next(0, 120), chance.Next(3) == 0 ? double.PositiveInfinity : chance.Next(0, 80), chance.Next(2) == 0 ? int.MaxValue : chance.Next(0, 3));
            var expected = ByHand(choices, limits).Select(Seen).Distinct().Order().ToArray();
            IReadOnlyList<PartChoice> found = ChoiceSearch.Front(choices, limits);
            Assert.Equal(expected, found.Select(Seen).Order());
            Assert.All(found, f => Assert.Equal(choices.WorthOf(f.Parts), f.Worth, 9));
        }

        static (long, long, long) Seen(PartChoice c) => (c.Cents, (long)Math.Round(c.CountedGrams * 1000), (long)Math.Round(c.Worth * 1e6));
    }

    [Fact]
    public void A_combination_that_disappointed_is_not_counted_as_the_sum_of_its_parts()
    {
        PartChoices choices = new([1000, 1000, 500], [10, 10, 5], [0.3, 0.3, 0.1], [0, 0, 0], [0, 0, 0], [0, 0, 0], [(0b011, 0.35)]);
        PartChoice best = ChoiceSearch.Front(choices, SpendLimits.None).MaxBy(c => c.Worth);
        Assert.Equal(0.45, best.Worth, 9);
        Assert.Equal(0.4, choices.WorthOf(0b101), 9);
    }

    // The bar: 60 parts under a second. Timed on this machine, so three times that here; bench/Coolproof.Bench.Day prints the figure.
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Sixty_parts_are_a_matter_of_a_second(bool withPlaces)
    {
        Random chance = new(5);
        PartChoices choices = Some(chance, 60, withPlaces);
        SpendLimits limits = new(15_000, 40, 60, 3);
        ChoiceSearch.Front(Some(chance, 12), limits);
        long start = Stopwatch.GetTimestamp();
        IReadOnlyList<PartChoice> front = ChoiceSearch.Front(choices, limits);
        TimeSpan took = Stopwatch.GetElapsedTime(start);
        output.WriteLine($"60 parts, {(withPlaces ? "in places" : "hardly any rule")}: {took.TotalMilliseconds:0} ms, {front.Count} best choices");
        Assert.True(took < TimeSpan.FromSeconds(3), took.ToString());
    }

    static PartChoices Some(Random chance, int n, bool places = true)
    {
        int[] place = [.. Enumerable.Range(0, n).Select(_ => places ? chance.Next(Math.Max(2, n / 4)) : -1)];
        ulong[] apart = new ulong[n], needs = new ulong[n];
        for (int i = 0; i < n; i++)
            for (int j = 0; j < n; j++)
                if (i != j && (place[i] >= 0 && place[i] == place[j] || i < j && chance.Next(n * 5) == 0)) { apart[i] |= 1UL << j; apart[j] |= 1UL << i; }
        for (int i = 0; i < n; i++)
            if (chance.Next(6) == 0 && chance.Next(n) is var other && other != i && (apart[i] >> other & 1) == 0) needs[i] |= 1UL << other;
        double[] worth = [.. Enumerable.Range(0, n).Select(_ => Math.Round(0.4 * chance.NextDouble() - 0.04, 4))];
        List<(ulong, double)> known = [];
        for (int d = 0; d < Math.Min(6, n / 2); d++)
        {
            int[] parts = [.. Enumerable.Range(0, chance.Next(2, 4)).Select(_ => chance.Next(n)).Distinct()];
            if (parts.Length > 1) known.Add((parts.Aggregate(0UL, (s, i) => s | 1UL << i), Math.Round(parts.Sum(i => worth[i]) * (0.5 + chance.NextDouble()), 4)));
        }
        return new(
            [.. Enumerable.Range(0, n).Select(_ => 50L * chance.Next(0, 80))], [.. Enumerable.Range(0, n).Select(_ => (double)chance.Next(0, 50))], worth,
            [.. Enumerable.Range(0, n).Select(_ => chance.Next(3) == 0 ? 1 : 0)], apart, needs, [.. known.DistinctBy(k => k.Item1)])
        { Barred = chance.Next(3) == 0 ? 1UL << chance.Next(n) : 0 };
    }
}
