using Coolproof.Evidence;

namespace Coolproof.Words;

/// <summary>Intervals drawn in text on one common axis: a thin line for nine tenths, a thick one for the middle half, a dot for the middle.</summary>
/// <param name="LowC">Left end, °C.</param>
/// <param name="HighC">Right end, °C.</param>
/// <param name="Cells">Cells wide.</param>
internal readonly record struct IntervalStrip(double LowC, double HighC, int Cells)
{
    /// <summary>An axis that holds every option shown.</summary>
    public static IntervalStrip Over(IEnumerable<Summary> summaries, int cells)
    {
        var (low, high) = (double.PositiveInfinity, double.NegativeInfinity);
        foreach (var summary in summaries) (low, high) = (Math.Min(low, summary.Q05), Math.Max(high, summary.Q95));
        var margin = Math.Max(0.5, (high - low) * 0.02);
        return new IntervalStrip(low - margin, high + margin, cells);
    }

    /// <summary>One option's interval.</summary>
    public string Draw(Summary summary)
    {
        var strip = new char[Cells];
        Array.Fill(strip, ' ');
        for (var i = At(summary.Q05); i <= At(summary.Q95); i++) strip[i] = '─';
        for (var i = At(summary.Q25); i <= At(summary.Q75); i++) strip[i] = '━';
        strip[At(summary.Q50)] = '●';
        return new string(strip).TrimEnd();
    }

    /// <summary>The ends of the axis as numbers.</summary>
    public string Axis(DegreeWords degrees)
    {
        var (left, right) = (DegreeWords.Number(degrees.Temperature(LowC)), DegreeWords.Number(degrees.Temperature(HighC)));
        var gap = Cells - left.Length - right.Length;
        return gap > 0 ? left + new string(' ', gap) + right : left;
    }

    int At(double celsius) => Math.Clamp((int)((celsius - LowC) / (HighC - LowC) * Cells), 0, Cells - 1);
}
