using System.Runtime.CompilerServices;

namespace Coolproof.Sampling.Diagnostics;

/// <summary>Sorts numbers by radix, keeping where each came from: several times faster than comparing at a few thousand draws. Buffers are kept.</summary>
sealed class RankOrder(int count)
{
    const int DigitBits = 11, Digits = 6, Buckets = 1 << DigitBits;
    ulong[] keys = new ulong[count], otherKeys = new ulong[count];
    int[] places = new int[count], otherPlaces = new int[count];
    readonly int[] starts = new int[Digits * Buckets];

    /// <summary>Indices of the values in rising order; valid until the next call. No NaN among the values.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public ReadOnlySpan<int> Sort(ReadOnlySpan<double> values)
    {
        Array.Clear(starts);
        for (int i = 0; i < count; i++)
        {
            ulong key = Key(values[i]);
            keys[i] = key;
            places[i] = i;
            for (int digit = 0; digit < Digits; digit++)
                starts[digit * Buckets + Digit(key, digit)]++;
        }

        for (int digit = 0; digit < Digits; digit++)
        {
            Span<int> start = starts.AsSpan(digit * Buckets, Buckets);
            if (start[Digit(keys[0], digit)] == count)
                continue;
            int sum = 0;
            for (int b = 0; b < Buckets; b++)
                (start[b], sum) = (sum, sum + start[b]);
            for (int i = 0; i < count; i++)
            {
                int to = start[Digit(keys[i], digit)]++;
                otherKeys[to] = keys[i];
                otherPlaces[to] = places[i];
            }

            (keys, otherKeys) = (otherKeys, keys);
            (places, otherPlaces) = (otherPlaces, places);
        }

        return places;
    }

    static int Digit(ulong key, int digit) => (int)(key >> (digit * DigitBits)) & (Buckets - 1);

    /// <summary>A whole number in the order of the doubles: sign flipped, negatives reversed; −0 counts as 0.</summary>
    static ulong Key(double value)
    {
        long bits = BitConverter.DoubleToInt64Bits(value + 0.0);
        return (ulong)(bits ^ ((bits >> 63) | long.MinValue));
    }
}
