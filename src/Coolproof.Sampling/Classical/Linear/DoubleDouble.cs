namespace Coolproof.Sampling.Classical;

/// <summary>
/// A number carried as the unevaluated sum of two doubles, about 32 significant digits. Error-free transformations after T. J. Dekker,
/// Numerische Mathematik 18 (1971), and D. E. Knuth, The Art of Computer Programming 2, 4.2.2; the product uses the fused multiply-add.
/// </summary>
internal readonly record struct DoubleDouble(double Hi, double Lo)
{
    public static readonly DoubleDouble Zero = new(0, 0);

    public static implicit operator DoubleDouble(double value) => new(value, 0);

    public static explicit operator double(DoubleDouble value) => value.Hi + value.Lo;

    public static DoubleDouble operator -(DoubleDouble a) => new(-a.Hi, -a.Lo);

    public static DoubleDouble operator +(DoubleDouble a, DoubleDouble b)
    {
        var (s, e) = TwoSum(a.Hi, b.Hi);
        var (t, f) = TwoSum(a.Lo, b.Lo);
        (s, e) = QuickTwoSum(s, e + t);
        (s, e) = QuickTwoSum(s, e + f);
        return new(s, e);
    }

    public static DoubleDouble operator -(DoubleDouble a, DoubleDouble b) => a + (-b);

    public static DoubleDouble operator *(DoubleDouble a, DoubleDouble b)
    {
        var p = a.Hi * b.Hi;
        var e = Math.FusedMultiplyAdd(a.Hi, b.Hi, -p) + (a.Hi * b.Lo + a.Lo * b.Hi);
        var (hi, lo) = QuickTwoSum(p, e);
        return new(hi, lo);
    }

    public static DoubleDouble operator /(DoubleDouble a, DoubleDouble b)
    {
        var q1 = a.Hi / b.Hi;
        var rest = a - q1 * b;
        var q2 = rest.Hi / b.Hi;
        rest -= q2 * b;
        var (hi, lo) = QuickTwoSum(q1, q2);
        return new DoubleDouble(hi, lo) + rest.Hi / b.Hi;
    }

    /// <summary>Square root; of zero and of less than zero (which only rounding can bring about) it is zero.</summary>
    public static DoubleDouble Sqrt(DoubleDouble a)
    {
        if (a.Hi <= 0) return Zero;
        var x = 1 / Math.Sqrt(a.Hi);
        DoubleDouble first = a.Hi * x;
        return first + (a - first * first).Hi * (x / 2);
    }

    /// <summary>Σ aᵢ bᵢ from index <paramref name="from"/> on.</summary>
    public static DoubleDouble Dot(DoubleDouble[] a, DoubleDouble[] b, int from)
    {
        var sum = Zero;
        for (var i = from; i < a.Length; i++) sum += a[i] * b[i];
        return sum;
    }

    public static DoubleDouble Sum(ReadOnlySpan<double> values)
    {
        var sum = Zero;
        foreach (var value in values) sum += value;
        return sum;
    }

    static (double Sum, double Error) TwoSum(double a, double b)
    {
        var s = a + b;
        var v = s - a;
        return (s, (a - (s - v)) + (b - v));
    }

    static (double Sum, double Error) QuickTwoSum(double a, double b)
    {
        var s = a + b;
        return (s, b - (s - a));
    }
}
