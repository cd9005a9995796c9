using CsCheck;
using MathNet.Numerics;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Random;

namespace Coolproof.Sampling.Tests;

public sealed class RandomStreamTests
{
    [Fact]
    public void The_bits_are_those_of_the_published_generator()
    {
        // State 1, 2, 3, 4: outputs worked out in exact integer arithmetic from the recurrence of Blackman and Vigna (2021).
        RandomStream random = RandomStream.FromState(1, 2, 3, 4);
        Assert.Equal(11520UL, random.NextBits());
        Assert.Equal(0UL, random.NextBits());
        Assert.Equal(1509978240UL, random.NextBits());
        Assert.Equal(1215971899390074240UL, random.NextBits());
    }

    [Fact]
    public void Uniforms_agree_with_another_implementation_seeded_alike()
    {
        // MathNet fills the same state by SplitMix64 from a 32-bit seed.
        ulong counter = 12345;
        RandomStream random = RandomStream.FromState(SplitMix.Next(ref counter), SplitMix.Next(ref counter), SplitMix.Next(ref counter), SplitMix.Next(ref counter));
        double[] theirs = new Xoshiro256StarStar(12345, false).NextDoubles(100);
        foreach (double wanted in theirs)
            Assert.Equal(wanted, random.NextUniform(), 1e-15);
    }

    [Fact]
    public void Normals_follow_the_normal_distribution_out_to_five_sigma()
    {
        // 4 million draws: Kolmogorov distance and the share beyond each of several bounds, tails and layer edges included.
        const int Count = 4_000_000;
        double[] draws = new double[Count];
        new RandomStream(1).FillNormal(draws);
        foreach (double bound in new[] { -4.5, -3.6541528853610088, -3, -2, -1, -0.5, -0.1, 0, 0.1, 0.5, 1, 2, 3, 3.6541528853610088, 4.5 })
        {
            double p = Normal.CDF(0, 1, bound);
            Assert.Equal(p, draws.Count(x => x <= bound) / (double)Count, 4.5 * Math.Sqrt(p * (1 - p) / Count));
        }

        Array.Sort(draws);
        double distance = 0;
        for (int i = 0; i < Count; i += 97)
            distance = Math.Max(distance, Math.Abs(0.5 * SpecialFunctions.Erfc(-draws[i] / Constants.Sqrt2) - (i + 0.5) / Count));
        // Kolmogorov: exceeded with probability 2·exp(−2·n·d²) ≈ 2e-4.
        Assert.InRange(distance, 0, 2.15 / Math.Sqrt(Count));
        Assert.InRange(draws[^1], 4.6, 6.6);
    }

    [Fact]
    public void Neighbouring_streams_and_seeds_are_uncorrelated()
    {
        double[][] streams = [.. new[] { (1L, 0L), (1L, 1L), (1L, 2L), (2L, 0L), (2L, 1L), (0L, 1L), (-1L, 0L) }.Select(pair =>
        {
            double[] draws = new double[20000];
            new RandomStream(pair.Item1, pair.Item2).FillNormal(draws);
            return draws;
        })];
        for (int a = 0; a < streams.Length; a++)
        {
            for (int b = 0; b < a; b++)
                Assert.InRange(streams[a].Zip(streams[b], (x, y) => x * y).Average() * Math.Sqrt(20000), -4, 4);
        }
    }

    [Fact]
    public void Whole_numbers_are_uniform()
    {
        RandomStream random = new(4);
        int[] counts = new int[7];
        for (int i = 0; i < 70_000; i++)
            counts[random.NextIndex(7)]++;
        // Chi-square with 6 degrees of freedom, 0.9999 quantile 27.9.
        Assert.InRange(counts.Sum(c => (c - 10_000.0) * (c - 10_000.0) / 10_000), 0, 27.9);
        Assert.Throws<ArgumentOutOfRangeException>(() => random.NextIndex(0));
    }

    [Fact]
    public void A_copy_goes_on_alike_and_a_seed_repeats() =>
        Gen.Select(Gen.Long, Gen.Long[0, 1000]).Sample((seed, stream) =>
        {
            RandomStream one = new(seed, stream), other = new(seed, stream);
            _ = one.NextNormal();
            _ = other.NextNormal();
            RandomStream copy = one.Copy();
            ulong next = one.NextBits();
            return next == other.NextBits() && next == copy.NextBits();
        });
}
