namespace Coolproof.Thermal;

/// <summary>Error allowed in one step: absolute + relative × temperature, root mean square over the nodes.</summary>
/// <param name="Relative">Relative part.</param>
/// <param name="AbsoluteK">Absolute part, K.</param>
public readonly record struct Tolerance(double Relative, double AbsoluteK)
{
    /// <summary>1e-9 relative, 1e-9 K absolute: a whole run then keeps 1e-6 K.</summary>
    public static Tolerance Usual { get; } = new(1e-9, 1e-9);

    /// <summary>Size of an error against this tolerance; a step passes at 1 or less.</summary>
    internal double Size(ReadOnlySpan<double> error, ReadOnlySpan<double> before, ReadOnlySpan<double> after)
    {
        double sum = 0;
        for (int i = 0; i < error.Length; i++)
        {
            double share = error[i] / (AbsoluteK + Relative * Math.Max(Math.Abs(before[i]), Math.Abs(after[i])));
            sum += share * share;
        }
        return Math.Sqrt(sum / error.Length);
    }
}
