namespace Coolproof.Traces.Import;

/// <summary>Rows of a trace, column by column: a piece of a file, in order. Its arrays are used again for later rows; take from them what is to stay.</summary>
public sealed class TraceRows
{
    internal TraceRows(int channels) => Columns = [.. Enumerable.Range(0, channels).Select(_ => Array.Empty<double>())];

    /// <summary>How many rows there are.</summary>
    public int Count { get; internal set; }

    /// <summary>Their times, µs from what the layout's clock counts from; never going back.</summary>
    public ReadOnlySpan<long> AtUs => Times.AsSpan(0, Count);

    /// <summary>Values of a channel as written; where there is none, a NaN that <see cref="MarkOf"/> tells.</summary>
    public ReadOnlySpan<double> Values(int channel) => Columns[channel].AsSpan(0, Count);

    /// <summary>Digits behind the decimal mark, at most, of a channel's values; −1 where some had an exponent.</summary>
    public int Decimals(int channel) => MostDecimals[channel];

    internal long[] Times { get; private set; } = [];
    internal double[][] Columns { get; }
    internal int[] MostDecimals => _decimals ??= new int[Columns.Length];
    int[]? _decimals;

    /// <summary>What stands for a cell that says nothing.</summary>
    public static double Gap { get; } = BitConverter.UInt64BitsToDouble(0x7FF8_0000_0000_0000);

    /// <summary>What stands for a cell that can't be right.</summary>
    public static double Nonsense { get; } = BitConverter.UInt64BitsToDouble(0x7FF8_0000_0000_0001);

    /// <summary>What a value of these columns is worth.</summary>
    public static SampleMark MarkOf(double value) =>
        !double.IsNaN(value) ? SampleMark.Good : (BitConverter.DoubleToUInt64Bits(value) & 1) == 1 ? SampleMark.Nonsense : SampleMark.Gap;

    internal void MakeRoom(int rows)
    {
        if (Times.Length >= rows) return;
        int size = Math.Max(rows, 2 * Times.Length);
        long[] times = new long[size];
        Times.AsSpan(0, Count).CopyTo(times);
        Times = times;
        for (int c = 0; c < Columns.Length; c++)
        {
            double[] values = new double[size];
            Columns[c].AsSpan(0, Count).CopyTo(values);
            Columns[c] = values;
        }
    }
}
