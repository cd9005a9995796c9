using System.Numerics;

namespace Coolproof.Sampling;

/// <summary>
/// A repeatable source of chance: one seed gives as many independent streams as there are stream numbers, so that each chain or replicate
/// draws from its own and nothing depends on which thread ran first. Not thread-safe: one user at a time.
/// </summary>
/// <remarks>xoshiro256** (Blackman and Vigna 2021, ACM TOMS 47:36), its state filled by SplitMix64; normals by a 256-layer ziggurat.</remarks>
public sealed class RandomStream
{
    ulong s0, s1, s2, s3;

    /// <summary>Opens stream <paramref name="stream"/> of <paramref name="seed"/>.</summary>
    /// <param name="seed">Any number; the same seed gives the same numbers on every machine.</param>
    /// <param name="stream">Which of the seed's streams.</param>
    public RandomStream(long seed, long stream = 0)
    {
        // Two rounds of mixing between seed and stream: neighbouring pairs share no state word.
        ulong counter = SplitMix.Mix(unchecked((ulong)seed) + SplitMix.Golden) ^ SplitMix.Mix(unchecked((ulong)stream * SplitMix.Stride + SplitMix.Golden));
        s0 = SplitMix.Next(ref counter);
        s1 = SplitMix.Next(ref counter);
        s2 = SplitMix.Next(ref counter);
        s3 = SplitMix.Next(ref counter);
    }

    RandomStream(ulong s0, ulong s1, ulong s2, ulong s3) => (this.s0, this.s1, this.s2, this.s3) = (s0, s1, s2, s3);

    /// <summary>A generator with the given four state words, for comparison with other implementations of the same algorithm.</summary>
    internal static RandomStream FromState(ulong s0, ulong s1, ulong s2, ulong s3) => new(s0, s1, s2, s3);

    /// <summary>A second stream at the same place: both will give the same numbers from here.</summary>
    public RandomStream Copy() => new(s0, s1, s2, s3);

    /// <summary>The next 64 random bits.</summary>
    public ulong NextBits()
    {
        ulong result = BitOperations.RotateLeft(s1 * 5, 7) * 9;
        ulong t = s1 << 17;
        s2 ^= s0;
        s3 ^= s1;
        s1 ^= s2;
        s0 ^= s3;
        s2 ^= t;
        s3 = BitOperations.RotateLeft(s3, 45);
        return result;
    }

    /// <summary>A uniform number in [0, 1), a multiple of 2⁻⁵³.</summary>
    public double NextUniform() => (NextBits() >> 11) * (1.0 / (1UL << 53));

    /// <summary>A uniform whole number in [0, <paramref name="count"/>), without bias.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="count"/> is not positive.</exception>
    public int NextIndex(int count)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(count);
        // Multiply-shift with rejection (Lemire 2019): the rejected strip is shorter than count in 2^64.
        ulong high = Math.BigMul(NextBits(), (ulong)count, out ulong low);
        if (low < (ulong)count)
        {
            ulong threshold = (0UL - (ulong)count) % (ulong)count;
            while (low < threshold)
                high = Math.BigMul(NextBits(), (ulong)count, out low);
        }

        return (int)high;
    }

    /// <summary>A standard normal number.</summary>
    public double NextNormal() => Ziggurat.Next(this);

    /// <summary>Fills <paramref name="destination"/> with independent standard normal numbers.</summary>
    public void FillNormal(Span<double> destination)
    {
        for (int i = 0; i < destination.Length; i++)
            destination[i] = Ziggurat.Next(this);
    }
}
