namespace Coolproof.Traces.Thinning;

/// <summary>A reading that stands for a piece of a trace after the halt.</summary>
/// <param name="AfterHaltS">From halt to its middle, s.</param>
/// <param name="Value">Mean of the piece, in the channel's own unit.</param>
/// <param name="Samples">How many samples it is the mean of.</param>
public readonly record struct StopReading(double AfterHaltS, double Value, int Samples);

/// <summary>
/// A temperature trace after the halt as a few readings: as far apart as its noise goes with itself, closest where the can moves fastest. More of them would say nothing new, and make the
/// judge surer than the model of the motor is right (measured: docs/traces.md).
/// </summary>
public static class StopReadings
{
    /// <summary>At most so many, from so many seconds after the halt on, each so much later than the one before, at least.</summary>
    public const int Most = 6;

    const double FirstS = 3, Ratio = 1.6, LeastApartS = 4, HalfWindowS = 1.5;
    // Residuals are taken from straight lines over so many seconds to each side: short against the can's minute, long against a logger's second.
    const double DetrendS = 8;
    // Samples are independent enough when this many autocorrelation times lie between them.
    const double Times = 2;

    /// <summary>The readings.</summary>
    /// <param name="afterHaltS">Times of good samples from the halt, s, rising.</param>
    /// <param name="values">Their values.</param>
    /// <param name="untilS">Up to where the trace counts: power or fan off, the car touched, at most some minutes.</param>
    public static IReadOnlyList<StopReading> Of(ReadOnlySpan<double> afterHaltS, ReadOnlySpan<double> values, double untilS)
    {
        int from = SortedTimes.FirstFrom(afterHaltS, 0), to = SortedTimes.FirstFrom(afterHaltS, untilS);
        ReadOnlySpan<double> at = afterHaltS[from..to], value = values[from..to];
        List<StopReading> readings = [];
        if (at.Length == 0) return readings;
        double apart = Math.Max(LeastApartS, Times * CorrelatedS(at, value));
        for (double middle = FirstS; middle <= untilS && readings.Count < Most; middle = Math.Max(middle * Ratio, middle + apart))
        {
            int first = SortedTimes.FirstFrom(at, middle - HalfWindowS), end = SortedTimes.FirstFrom(at, Math.Min(middle + HalfWindowS, untilS));
            // A slow logger has nothing within the window: then its next sample, which the window goes on to.
            if (end == first)
            {
                if (first == at.Length) break;
                (middle, end) = (at[first], first + 1);
            }
            double time = 0, mean = 0;
            for (int i = first; i < end; i++) (time, mean) = (time + (at[i] / (end - first)), mean + (value[i] / (end - first)));
            readings.Add(new StopReading(time, mean, end - first));
        }
        return readings;
    }

    /// <summary>For how long a trace's noise goes with itself, s: its integrated autocorrelation time about straight lines over some seconds. 0 where there are too few samples.</summary>
    public static double CorrelatedS(ReadOnlySpan<double> atS, ReadOnlySpan<double> values)
    {
        if (atS.Length < 16) return 0;
        double step = (atS[^1] - atS[0]) / (atS.Length - 1);
        int half = Math.Max(2, (int)Math.Round(DetrendS / step));
        if (!(step > 0) || atS.Length < (2 * half) + 4) return 0;
        double[] residuals = new double[atS.Length - (2 * half)];
        for (int i = half; i < atS.Length - half; i++) residuals[i - half] = values[i] - LineAt(atS.Slice(i - half, (2 * half) + 1), values.Slice(i - half, (2 * half) + 1), atS[i]);
        return step * Autocorrelation.TimeOf(residuals);
    }

    static double LineAt(ReadOnlySpan<double> x, ReadOnlySpan<double> y, double at)
    {
        double mx = 0, my = 0, xx = 0, xy = 0;
        for (int i = 0; i < x.Length; i++) (mx, my) = (mx + (x[i] / x.Length), my + (y[i] / x.Length));
        for (int i = 0; i < x.Length; i++) (xx, xy) = (xx + ((x[i] - mx) * (x[i] - mx)), xy + ((x[i] - mx) * (y[i] - my)));
        return my + (xx > 0 ? xy / xx * (at - mx) : 0);
    }
}
