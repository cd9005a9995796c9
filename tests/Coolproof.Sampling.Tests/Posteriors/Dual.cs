using System.Runtime.Intrinsics;

namespace Coolproof.Sampling.Tests.Posteriors;

/// <summary>A number with its derivatives towards up to eight others: forward differentiation.</summary>
readonly struct Dual(double value, Vector256<double> low, Vector256<double> high)
{
    public readonly double Value = value;
    readonly Vector256<double> low = low, high = high;

    public static Dual Variable(double value, int index) =>
        index < 4
            ? new(value, Vector256<double>.Zero.WithElement(index, 1), Vector256<double>.Zero)
            : new(value, Vector256<double>.Zero, Vector256<double>.Zero.WithElement(index - 4, 1));

    public double Slope(int index) => index < 4 ? low[index] : high[index - 4];

    public static implicit operator Dual(double value) => new(value, Vector256<double>.Zero, Vector256<double>.Zero);

    public static Dual operator +(Dual a, Dual b) => new(a.Value + b.Value, a.low + b.low, a.high + b.high);

    public static Dual operator -(Dual a, Dual b) => new(a.Value - b.Value, a.low - b.low, a.high - b.high);

    public static Dual operator -(Dual a) => new(-a.Value, -a.low, -a.high);

    public static Dual operator *(Dual a, Dual b) => new(a.Value * b.Value, a.low * b.Value + b.low * a.Value, a.high * b.Value + b.high * a.Value);

    public static Dual operator *(double a, Dual b) => new(a * b.Value, b.low * a, b.high * a);

    public static Dual operator /(Dual a, Dual b)
    {
        double ratio = a.Value / b.Value, inverse = 1 / b.Value;
        return new(ratio, (a.low - b.low * ratio) * inverse, (a.high - b.high * ratio) * inverse);
    }

    public static Dual Exp(Dual a) => Chain(a, Math.Exp(a.Value), Math.Exp(a.Value));

    public static Dual Log(Dual a) => Chain(a, Math.Log(a.Value), 1 / a.Value);

    public static Dual Sqrt(Dual a) => Chain(a, Math.Sqrt(a.Value), 0.5 / Math.Sqrt(a.Value));

    static Dual Chain(Dual a, double value, double slope) => new(value, a.low * slope, a.high * slope);
}
