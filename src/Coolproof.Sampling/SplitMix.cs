namespace Coolproof.Sampling;

/// <summary>SplitMix64 (Steele, Lea and Flood 2014), used only to spread a seed over a larger state.</summary>
static class SplitMix
{
    public const ulong Golden = 0x9E3779B97F4A7C15;
    public const ulong Stride = 0xD1342543DE82EF95;

    public static ulong Next(ref ulong counter) => Mix(counter += Golden);

    public static ulong Mix(ulong z)
    {
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
        return z ^ (z >> 31);
    }
}
