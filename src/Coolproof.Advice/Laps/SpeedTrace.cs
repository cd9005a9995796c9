using Coolproof.Thermal;

namespace Coolproof.Advice.Laps;

/// <summary>Speed as it was logged over time, and the way that it makes. Where nothing good was logged for longer than a car can be guessed for, there is a gap.</summary>
public sealed class SpeedTrace
{
    /// <summary>Rarest values that show a corner, s: one of a scale car takes a second or two (common practice, no source).</summary>
    public const double LongestStepS = 0.34;

    // A logger's zero may be a little below nothing; a value far off both its neighbours is a slip of the sensor, faster than any tyre allows.
    private const double ZeroMS = 0.5, SlipMS = 4, GapS = 0.8, GapSteps = 4;
    private const double FastestMS = 40;
    private const int Fewest = 40;

    private SpeedTrace(double[] at, double[] speeds, double[] way, double gapS) => (AtS, SpeedMS, WayM, GapLongerS) = (at, speeds, way, gapS);

    /// <summary>Times of the good values, s from the trace's begin, rising.</summary>
    public IReadOnlyList<double> AtS { get; }

    /// <summary>Speeds then, m/s, 0 or above.</summary>
    public IReadOnlyList<double> SpeedMS { get; }

    /// <summary>Way made until then, m; across a gap the speeds at its ends are joined.</summary>
    public IReadOnlyList<double> WayM { get; }

    /// <summary>Times between values that are longer than this are gaps, s.</summary>
    public double GapLongerS { get; }

    /// <summary>From samples as they were logged.</summary>
    /// <param name="samples">Time (s, never going back) and speed (m/s); what is no number is left out.</param>
    /// <exception cref="LapException">Too few, too rare, below 0, or no driving; the message says where, and what would be right.</exception>
    public static SpeedTrace Of(IReadOnlyList<(double AtS, double SpeedMS)> samples)
    {
        List<double> at = [], speeds = [];
        foreach ((double time, double speed) in samples)
        {
            if (!double.IsFinite(speed))
                continue;
            if (speed < -ZeroMS)
                throw new LapException($"at {time:0.0#} s its speed is {speed:0.0} m/s, below 0: give the speed over the ground, which has no sign.");
            if (at.Count > 0 && time <= at[^1])
                continue;
            at.Add(time);
            speeds.Add(Math.Max(speed, 0));
        }
        if (at.Count < Fewest)
            throw new LapException($"it has {at.Count} speeds: a lap needs {Fewest} at least. Give the trace of a few laps.");
        DropSlips(at, speeds);
        double step = Middle([.. at.Zip(at.Skip(1), (a, b) => b - a)]);
        if (step > LongestStepS)
            throw new LapException($"it has a speed every {step:0.0#} s, which steps over corners: log at least three a second, better ten.");
        double[] way = new double[at.Count];
        for (int i = 1; i < way.Length; i++)
            way[i] = way[i - 1] + 0.5 * (speeds[i] + speeds[i - 1]) * (at[i] - at[i - 1]);
        if (Middle([.. speeds]) > FastestMS)
            throw new LapException($"half of its speeds are above {Middle([.. speeds]):0} m/s, which no scale car drives: look at the unit that its header names.");
        if (way[^1] < Track.ShortestM)
            throw new LapException($"the car goes {way[^1]:0.#} m in {at[^1] - at[0]:0} s: no lap. Give the trace of the drive, with the speed in the unit that its header names.");
        return new([.. at], [.. speeds], way, Math.Max(GapS, GapSteps * step));
    }

    /// <summary>The first gap between two times, its begin and length, s; null where there is none.</summary>
    public (double AtS, double Seconds)? Gap(double fromS, double toS)
    {
        for (int i = 1; i < AtS.Count; i++)
            if (AtS[i] > fromS && AtS[i - 1] < toS && AtS[i] - AtS[i - 1] > GapLongerS)
                return (AtS[i - 1], AtS[i] - AtS[i - 1]);
        return null;
    }

    /// <summary>When a way was made, s: between two values as if the speed changed evenly with the way.</summary>
    public double TimeAt(double wayM) => Between(WayM, AtS, wayM);

    /// <summary>Way made by a time, m.</summary>
    public double WayAt(double atS) => Between(AtS, WayM, atS);

    /// <summary>Speed at a time, m/s.</summary>
    public double SpeedAt(double atS) => Between(AtS, SpeedMS, atS);

    internal static double Middle(double[] values)
    {
        double[] sorted = [.. values.Order()];
        return sorted[sorted.Length / 2];
    }

    private static void DropSlips(List<double> at, List<double> speeds)
    {
        for (int i = speeds.Count - 2; i > 0; i--)
        {
            double before = speeds[i] - speeds[i - 1], after = speeds[i] - speeds[i + 1];
            if (before * after > 0 && Math.Min(Math.Abs(before), Math.Abs(after)) > SlipMS)
            {
                at.RemoveAt(i);
                speeds.RemoveAt(i);
            }
        }
    }

    private static double Between(IReadOnlyList<double> x, IReadOnlyList<double> y, double at)
    {
        int low = 0, high = x.Count - 1;
        while (high - low > 1)
        {
            int middle = (low + high) / 2;
            (low, high) = x[middle] <= at ? (middle, high) : (low, middle);
        }
        double width = x[high] - x[low];
        return width > 0 ? y[low] + Math.Clamp((at - x[low]) / width, 0, 1) * (y[high] - y[low]) : y[high];
    }
}
