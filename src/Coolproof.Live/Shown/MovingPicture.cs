using System.Globalization;
using System.Text;
using Coolproof.Traces;

namespace Coolproof.Live.Shown;

/// <summary>The last ten minutes of a channel as a small picture that moves: the same paths for the page and for what is pushed to it.</summary>
/// <param name="Line">SVG path of the values, in a field of <see cref="Width"/> by <see cref="Height"/>, the present at the right; empty where there are none.</param>
/// <param name="Gaps">SVG path of the stretches without values; empty where there are none.</param>
/// <param name="Low">Value at the lower edge; NaN where there are no values.</param>
/// <param name="High">Value at the upper edge.</param>
/// <param name="GapCount">How many stretches without values there are.</param>
public sealed record MovingPicture(string Line, string Gaps, double Low, double High, int GapCount)
{
    /// <summary>Columns of the picture.</summary>
    public const int Width = 240;

    /// <summary>Height of the picture, in its own units.</summary>
    public const int Height = 60;

    /// <summary>Time that it shows, ms.</summary>
    public const long WindowMs = 600_000;

    /// <summary>Draws it.</summary>
    /// <param name="samples">Samples in the order of time.</param>
    /// <param name="nowMs">The present, ms since 1970-01-01 UTC.</param>
    /// <param name="leastSpan">Least span of values that the height stands for, in the channel's unit: noise of a sensor must not look like a climb.</param>
    /// <param name="windowMs">Time that it shows, ms.</param>
    public static MovingPicture Of(IReadOnlyList<Sample> samples, long nowMs, double leastSpan, long windowMs = WindowMs)
    {
        ArgumentNullException.ThrowIfNull(samples);
        // Columns lie fast in time, so that the picture moves by whole ones and its shape stays.
        var columnMs = Math.Max(1, (windowMs + Width - 1) / Width);
        var first = (nowMs / columnMs) - Width + 1; // number of the column at the left
        var (low, high) = Span(samples, first, columnMs, leastSpan);
        var (line, gaps, count) = (new StringBuilder(), new StringBuilder(), 0);
        var (pen, broke, column, least, most) = (false, false, long.MinValue, 0.0, 0.0);
        long? broken = null; // instant of the last value before a mark
        long? last = null;

        void Put() // the column that is full
        {
            if (column == long.MinValue) return;
            var x = column - first;
            Point(line, pen ? 'L' : 'M', x, Y(least, low, high));
            if (most > least || !pen) Point(line, 'L', x, Y(most, low, high)); // a lone value is a dot, by its round ends
            (pen, column) = (true, long.MinValue);
        }

        foreach (var sample in samples)
        {
            if (sample.AtMs / columnMs < first || sample.AtMs > nowMs + columnMs) continue;
            if (sample.Mark != SampleMark.Good)
            {
                broke = true;
                if (sample.Mark == SampleMark.Gap) broken ??= last ?? sample.AtMs;
                continue;
            }
            if (broken is { } from)
            {
                Band(gaps, from, sample.AtMs, first, columnMs);
                (broken, count) = (null, count + 1);
            }
            var here = sample.AtMs / columnMs;
            if (here != column)
            {
                Put();
                pen &= !broke;
            }
            broke = false; // within one column a break can't be seen
            (least, most) = column == here ? (Math.Min(least, sample.Value), Math.Max(most, sample.Value)) : (sample.Value, sample.Value);
            (column, last) = (here, sample.AtMs);
        }
        Put();
        if (broken is { } open)
        {
            Band(gaps, open, nowMs, first, columnMs);
            count++;
        }
        return new MovingPicture(line.ToString(), gaps.ToString(), low, high, count);
    }

    static (double Low, double High) Span(IReadOnlyList<Sample> samples, long first, long columnMs, double leastSpan)
    {
        var (low, high) = (double.PositiveInfinity, double.NegativeInfinity);
        foreach (var sample in samples)
            if (sample.Mark == SampleMark.Good && sample.AtMs / columnMs >= first) (low, high) = (Math.Min(low, sample.Value), Math.Max(high, sample.Value));
        if (low > high) return (double.NaN, double.NaN);
        var missing = Math.Max(0, leastSpan - (high - low)) / 2;
        return (low - missing, high + missing);
    }

    // Two units of margin, so that the line's own width stays inside.
    static double Y(double value, double low, double high) => high > low ? Height - 2 - ((Height - 4) * (value - low) / (high - low)) : Height / 2.0;

    static void Point(StringBuilder path, char how, long x, double y) => path.Append(how).Append(x.ToString(CultureInfo.InvariantCulture)).Append(' ').Append(y.ToString("0.#", CultureInfo.InvariantCulture));

    static void Band(StringBuilder path, long fromMs, long toMs, long first, long columnMs)
    {
        double X(long ms) => Math.Clamp(((double)ms / columnMs) - first, 0, Width);
        var (left, right) = (X(fromMs), X(toMs));
        path.Append(CultureInfo.InvariantCulture, $"M{left:0.#} 0H{Math.Max(right, left + 0.5):0.#}V{Height}H{left:0.#}z");
    }
}
