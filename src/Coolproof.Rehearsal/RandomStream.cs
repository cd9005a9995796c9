namespace Coolproof.Rehearsal;

/// <summary>
/// A seeded stream of chance for one purpose: xoshiro256** (Blackman and Vigna 2021) started by SplitMix64. Its own copy, because the
/// generator of days is frozen: its bytes may not move when another room betters its streams. Streams of different purposes are
/// independent, so that more runs a day, say, leave the gun's luck as it was.
/// </summary>
internal sealed class RandomStream
{
    ulong _a, _b, _c, _d;
    double _spareNormal = double.NaN;

    /// <summary>The stream for one purpose under one seed.</summary>
    /// <param name="seed">The day's seed.</param>
    /// <param name="purpose">What the chance is for.</param>
    /// <param name="index">Tells apart several of one purpose, such as runs.</param>
    internal RandomStream(long seed, string purpose, int index = 0)
    {
        // FNV-1a over the purpose: string.GetHashCode differs from process to process.
        ulong hash = 14695981039346656037;
        foreach (char letter in purpose)
            hash = (hash ^ letter) * 1099511628211;
        ulong state = unchecked((ulong)seed * 0x9E3779B97F4A7C15 ^ hash ^ ((ulong)(uint)index << 32));
        _a = Split(ref state);
        _b = Split(ref state);
        _c = Split(ref state);
        _d = Split(ref state);
    }

    /// <summary>The stream from a state of its own, for checks against published numbers.</summary>
    internal RandomStream(ulong a, ulong b, ulong c, ulong d) => (_a, _b, _c, _d) = (a, b, c, d);

    /// <summary>Uniform on [0, 1).</summary>
    internal double Unit() => (Next() >> 11) * (1.0 / (1UL << 53));

    /// <summary>Uniform within a range.</summary>
    internal double In(Between range) => range.Low + (range.High - range.Low) * Unit();

    /// <summary>True with a given probability.</summary>
    internal bool Chance(double probability) => Unit() < probability;

    /// <summary>One of the numbers 0 to <paramref name="count"/> - 1.</summary>
    internal int Pick(int count) => (int)(Unit() * count);

    /// <summary>Normal with mean 0.</summary>
    internal double Normal(double sd)
    {
        if (!double.IsNaN(_spareNormal))
        {
            double spare = _spareNormal;
            _spareNormal = double.NaN;
            return sd * spare;
        }
        double radius = Math.Sqrt(-2 * Math.Log(1 - Unit())), angle = 2 * Math.PI * Unit();
        _spareNormal = radius * Math.Sin(angle);
        return sd * radius * Math.Cos(angle);
    }

    /// <summary>Lognormal about a median.</summary>
    internal double About(double median, double logSd) => median * Math.Exp(Normal(logSd));

    /// <summary>Exponential with a given mean.</summary>
    internal double Exponential(double mean) => -mean * Math.Log(1 - Unit());

    /// <summary>Gamma with a given mean and standard deviation (Marsaglia and Tsang 2000; shape of at least 1).</summary>
    internal double Gamma(double mean, double sd)
    {
        double shape = mean * mean / (sd * sd), d = shape - 1.0 / 3, c = 1 / Math.Sqrt(9 * d);
        while (true)
        {
            double x = Normal(1), v = 1 + c * x;
            if (v <= 0)
                continue;
            v = v * v * v;
            if (Math.Log(1 - Unit()) < 0.5 * x * x + d - d * v + d * Math.Log(v))
                return d * v * mean / shape;
        }
    }

    /// <summary>Beta with both shapes equal.</summary>
    internal double SymmetricBeta(double shape)
    {
        double sd = Math.Sqrt(shape);
        double x = Gamma(shape, sd), y = Gamma(shape, sd);
        return x / (x + y);
    }

    /// <summary>Puts a list into random order (Fisher and Yates).</summary>
    internal void Shuffle<T>(IList<T> list)
    {
        for (int i = list.Count - 1; i > 0; i--)
        {
            int j = Pick(i + 1);
            (list[i], list[j]) = (list[j], list[i]);
        }
    }

    /// <summary>The next 64 bits.</summary>
    internal ulong Next()
    {
        ulong result = ulong.RotateLeft(_b * 5, 7) * 9;
        ulong t = _b << 17;
        _c ^= _a;
        _d ^= _b;
        _b ^= _c;
        _a ^= _d;
        _c ^= t;
        _d = ulong.RotateLeft(_d, 45);
        return result;
    }

    static ulong Split(ref ulong state)
    {
        ulong z = state += 0x9E3779B97F4A7C15;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
        return z ^ (z >> 31);
    }
}
