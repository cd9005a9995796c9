namespace Coolproof.Traces.Kept;

/// <summary>Smallest and greatest of values, those that are none left out.</summary>
static class Extremes
{
    /// <summary>Both; NaN where there is no value.</summary>
    public static (double Least, double Most) Of(ReadOnlySpan<double> values)
    {
        double least = double.PositiveInfinity, most = double.NegativeInfinity;
        foreach (double value in values)
        {
            // A NaN is neither.
            if (value < least) least = value;
            if (value > most) most = value;
        }
        return most >= least ? (least, most) : (double.NaN, double.NaN);
    }
}
