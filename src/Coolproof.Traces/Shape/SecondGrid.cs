using Coolproof.Traces.Import;
using Coolproof.Traces.Kept;

namespace Coolproof.Traces.Shape;

/// <summary>A kept trace second by second: means of each channel, by which go and stop are looked for. Of a day and a half at most.</summary>
public sealed class SecondGrid
{
    /// <summary>Seconds at most.</summary>
    public const int Longest = 130_000;

    SecondGrid(double firstS, IReadOnlyList<KeptChannel> channels, double[][] means)
    {
        (FirstS, Channels, Means) = (firstS, channels, means);
    }

    /// <summary>Time of its first second by the trace's own clock, s.</summary>
    public double FirstS { get; }
    /// <summary>The channels.</summary>
    public IReadOnlyList<KeptChannel> Channels { get; }
    /// <summary>Mean own value of each channel and second; NaN where there is none.</summary>
    public IReadOnlyList<double[]> Means { get; }
    /// <summary>How many seconds.</summary>
    public int Seconds => Means.Count == 0 ? 0 : Means[0].Length;

    /// <summary>Reads it off a trace.</summary>
    public static SecondGrid Of(KeptTrace trace)
    {
        ArgumentNullException.ThrowIfNull(trace);
        long first = trace.About.FirstUs / 1_000_000;
        int seconds = (int)Math.Min(Longest, (trace.About.LastUs / 1_000_000) - first + 1);
        int channels = trace.About.Channels.Count;
        double[][] sums = [.. Enumerable.Range(0, channels).Select(_ => new double[seconds])];
        int[][] counts = [.. Enumerable.Range(0, channels).Select(_ => new int[seconds])];
        foreach (KeptRows rows in trace.Rows(trace.About.FirstUs, trace.About.LastUs, [.. Enumerable.Range(0, channels)]))
            for (int c = 0; c < channels; c++)
                for (int i = 0; i < rows.AtUs.Length; i++)
                {
                    long second = (rows.AtUs[i] / 1_000_000) - first;
                    double value = rows.Values[c][i];
                    if (double.IsNaN(value) || second < 0 || second >= seconds) continue;
                    // Turning and current go both ways; what matters is how much.
                    sums[c][second] += trace.About.Channels[c].Measures == Measured.Temperature ? value : Math.Abs(value);
                    counts[c][second]++;
                }
        for (int c = 0; c < channels; c++)
        {
            KeptChannel about = trace.About.Channels[c];
            bool temperature = about.Measures == Measured.Temperature;
            for (int s = 0; s < seconds; s++)
                sums[c][s] = counts[c][s] == 0 ? double.NaN : (sums[c][s] / counts[c][s] * about.Scale) + (temperature ? about.Shift : 0);
        }
        return new SecondGrid(first, trace.About.Channels, sums);
    }

    /// <summary>A grid of one's own, for tests and for live traces.</summary>
    public static SecondGrid Of(double firstS, IReadOnlyList<KeptChannel> channels, IReadOnlyList<double[]> means) => new(firstS, channels, [.. means]);
}
