namespace Coolproof.Sampling.Tests.Classical;

/// <summary>A value with its derivative along one direction: exact Jacobians of models that are written once.</summary>
readonly record struct Dual(double Value, double Slope)
{
    public static implicit operator Dual(double value) => new(value, 0);

    public static Dual operator -(Dual a) => new(-a.Value, -a.Slope);

    public static Dual operator +(Dual a, Dual b) => new(a.Value + b.Value, a.Slope + b.Slope);

    public static Dual operator -(Dual a, Dual b) => new(a.Value - b.Value, a.Slope - b.Slope);

    public static Dual operator *(Dual a, Dual b) => new(a.Value * b.Value, a.Slope * b.Value + a.Value * b.Slope);

    public static Dual operator /(Dual a, Dual b)
    {
        var quotient = a.Value / b.Value;
        return new(quotient, (a.Slope - quotient * b.Slope) / b.Value);
    }

    public static Dual Exp(Dual a)
    {
        var value = Math.Exp(a.Value);
        return new(value, value * a.Slope);
    }

    public static Dual Cos(Dual a) => new(Math.Cos(a.Value), -Math.Sin(a.Value) * a.Slope);

    public static Dual Sin(Dual a) => new(Math.Sin(a.Value), Math.Cos(a.Value) * a.Slope);

    public static Dual Atan(Dual a) => new(Math.Atan(a.Value), a.Slope / (1 + a.Value * a.Value));

    /// <summary>Of a positive base.</summary>
    public static Dual Pow(Dual a, Dual b)
    {
        var value = Math.Pow(a.Value, b.Value);
        return new(value, value * (b.Slope * Math.Log(a.Value) + b.Value * a.Slope / a.Value));
    }
}
