using System.Globalization;

namespace Coolproof.Pictures.Drawing;

/// <summary>A straight scale from values to pixels, with round ticks.</summary>
internal sealed record Scale(double Low, double High, double From, double To)
{
    public double At(double value) => From + (value - Low) / (High - Low) * (To - From);

    /// <summary>Steps of 1, 2, 2.5 or 5 times a power of ten, no closer than so many pixels.</summary>
    public IReadOnlyList<double> Ticks(double spacingPx)
    {
        double rough = (High - Low) * spacingPx / Math.Abs(To - From);
        double power = Math.Pow(10, Math.Floor(Math.Log10(rough)));
        double step = new[] { 1, 2, 2.5, 5, 10 }.Select(m => m * power).First(s => s >= rough * (1 - 1e-9));
        long first = (long)Math.Ceiling(Low / step - 1e-9), last = (long)Math.Floor(High / step + 1e-9);
        return [.. Enumerable.Range(0, (int)(last - first + 1)).Select(i => Math.Round((first + i) * step, 9))];
    }

    /// <summary>A scale that holds all values with some air about them, and never less than a given span.</summary>
    public static Scale Holding(IEnumerable<double> values, double from, double to, double leastSpan, double air = 0.04)
    {
        double[] all = [.. values];
        double low = all.Min(), high = all.Max();
        double lack = Math.Max(0, leastSpan - (high - low)) / 2 + Math.Max(leastSpan, high - low) * air;
        return new(low - lack, high + lack, from, to);
    }

    public static string Label(double tick) => tick.ToString("0.###", CultureInfo.InvariantCulture).Replace('-', '−');
}
