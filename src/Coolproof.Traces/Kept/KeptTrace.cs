using System.Security.Cryptography;
using System.Text.Json;

namespace Coolproof.Traces.Kept;

/// <summary>A trace that <see cref="TraceWriter"/> wrote. May be read by several threads.</summary>
public sealed class KeptTrace : IDisposable
{
    const int PlacesBytes = 32;
    readonly Microsoft.Win32.SafeHandles.SafeFileHandle _file;
    readonly BlockPlace[] _blocks;
    readonly long[] _pairBegins;
    readonly float[][] _pairs;

    KeptTrace(Microsoft.Win32.SafeHandles.SafeFileHandle file, string path)
    {
        _file = file;
        long length = RandomAccess.GetLength(file);
        if (length < TraceWriter.Magic.Length + PlacesBytes || !Bytes(0, TraceWriter.Magic.Length).AsSpan().SequenceEqual(TraceWriter.Magic)) throw Broken(path);
        ByteWalk places = new(Bytes(length - PlacesBytes, PlacesBytes));
        long pairs = (long)places.Eight(), blocks = (long)places.Eight(), about = (long)places.Eight(), end = (long)places.Eight();
        if (!(pairs >= TraceWriter.Magic.Length && pairs <= blocks && blocks <= about && about <= end && end == length - PlacesBytes && end - pairs < int.MaxValue)) throw Broken(path);
        try
        {
            About = JsonSerializer.Deserialize(Bytes(about, end - about), KeptJson.Default.KeptAbout) ?? throw Broken(path);
        }
        catch (JsonException)
        {
            throw Broken(path);
        }
        if (About.Channels is null || About.Channels.Any(channel => channel?.Name is null || channel.Unit is null)) throw Broken(path);
        if (About.Version != 1) throw new InvalidDataException($"{path} is a kept trace of version {About.Version}; this program reads version 1. Use a newer Coolproof.");
        _blocks = Blocks(new ByteWalk(Bytes(blocks, about - blocks)), pairs);
        (_pairBegins, _pairs) = Pairs(new ByteWalk(Bytes(pairs, blocks - pairs)), About.Channels.Count);
    }

    /// <summary>What it is.</summary>
    public KeptAbout About { get; }

    /// <summary>Opens a kept trace.</summary>
    /// <exception cref="InvalidDataException">It is none, or damaged.</exception>
    /// <exception cref="IOException">It can't be read.</exception>
    public static KeptTrace Open(string path)
    {
        Microsoft.Win32.SafeHandles.SafeFileHandle file = File.OpenHandle(path, FileMode.Open, FileAccess.Read, FileShare.Read);
        try
        {
            return new KeptTrace(file, path);
        }
        catch
        {
            file.Dispose();
            throw;
        }
    }

    /// <summary>Whether a file is what its name says.</summary>
    public static bool IsWhole(string path)
    {
        using FileStream file = File.OpenRead(path);
        return string.Equals(Convert.ToHexStringLower(SHA256.HashData(file)), Path.GetFileNameWithoutExtension(path), StringComparison.Ordinal);
    }

    /// <summary>All rows of a span of time, block by block.</summary>
    /// <param name="fromUs">From, µs of the trace's own clock.</param>
    /// <param name="toUs">To, that row too.</param>
    /// <param name="channels">Which channels.</param>
    public IEnumerable<KeptRows> Rows(long fromUs, long toUs, params IReadOnlyList<int> channels)
    {
        ArgumentNullException.ThrowIfNull(channels);
        for (int b = 0; b < _blocks.Length; b++)
        {
            if (_blocks[b].LastUs < fromUs || _blocks[b].FirstUs > toUs) continue;
            KeptRows whole = Block(b, channels);
            int from = SortedTimes.FirstFrom(whole.AtUs, fromUs), to = SortedTimes.FirstFrom(whole.AtUs, toUs + 1);
            if (to > from) yield return new KeptRows(whole.AtUs[from..to], [.. whole.Values.Select(values => values[from..to])]);
        }
    }

    /// <summary>Samples of a channel in its own unit.</summary>
    /// <param name="channel">Which.</param>
    /// <param name="fromUs">From, µs of the trace's own clock.</param>
    /// <param name="toUs">To, that row too.</param>
    /// <param name="aheadMs">By how much its clock is ahead of the server's, ms: taken off.</param>
    public IEnumerable<Sample> Samples(int channel, long fromUs, long toUs, double aheadMs = 0)
    {
        foreach (KeptRows rows in Rows(fromUs, toUs, channel))
            for (int i = 0; i < rows.AtUs.Length; i++)
            {
                double value = rows.Values[0][i];
                yield return new Sample((long)Math.Round((rows.AtUs[i] / 1e3) - aheadMs), Own(channel, value), Import.TraceRows.MarkOf(value));
            }
    }

    /// <summary>A channel as it is drawn: smallest and greatest own value of equal steps of time.</summary>
    /// <param name="channel">Which.</param>
    /// <param name="fromUs">From, µs of the trace's own clock.</param>
    /// <param name="toUs">To.</param>
    /// <param name="steps">How many steps.</param>
    public Envelope Drawn(int channel, long fromUs, long toUs, int steps)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(steps, 1);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(toUs, fromUs);
        Envelope drawn = new(fromUs, toUs, steps);
        int from = Math.Max(0, SortedTimes.FirstFrom(_pairBegins, fromUs) - 1), to = SortedTimes.FirstFrom(_pairBegins, toUs);
        if (to - from >= 4 * steps)
        {
            // Pairs stand where they begin; at a quarter of a step each at most, that can't be seen.
            for (int p = from; p < to; p++)
            {
                drawn.Take(_pairBegins[p], Own(channel, _pairs[channel][2 * p]));
                drawn.Take(_pairBegins[p], Own(channel, _pairs[channel][(2 * p) + 1]));
            }
            return drawn;
        }
        foreach (KeptRows rows in Rows(fromUs, toUs, channel))
            for (int i = 0; i < rows.AtUs.Length; i++) drawn.Take(rows.AtUs[i], Own(channel, rows.Values[0][i]));
        return drawn;
    }

    /// <summary>Lets go of the file.</summary>
    public void Dispose() => _file.Dispose();

    double Own(int channel, double written) => (written * About.Channels[channel].Scale) + About.Channels[channel].Shift;

    KeptRows Block(int block, IReadOnlyList<int> channels)
    {
        BlockPlace place = _blocks[block];
        ByteWalk walk = new(Bytes(place.Offset, place.Bytes));
        long[] times = new long[place.Rows];
        ColumnCoding.ReadTimes(ref walk, times);
        double[][] all = new double[About.Channels.Count][];
        double[] unwanted = [];
        for (int c = 0; c < all.Length; c++)
        {
            all[c] = channels.Contains(c) || unwanted.Length == 0 ? new double[place.Rows] : unwanted;
            if (!channels.Contains(c)) unwanted = all[c];
            ColumnCoding.ReadValues(ref walk, all[c]);
        }
        return new KeptRows(times, [.. channels.Select(c => all[c])]);
    }

    static BlockPlace[] Blocks(ByteWalk walk, long end)
    {
        BlockPlace[] blocks = new BlockPlace[walk.Count()];
        long offset = TraceWriter.Magic.Length;
        for (int b = 0; b < blocks.Length; b++)
        {
            blocks[b] = new BlockPlace(offset, checked((int)walk.Unsigned()), checked((int)walk.Unsigned()), walk.Signed(), walk.Signed());
            if (blocks[b].Rows is < 1 or > TraceWriter.BlockRows || blocks[b].Bytes > end - offset) throw new InvalidDataException("A kept trace has a block that can't be.");
            offset += blocks[b].Bytes;
        }
        return blocks;
    }

    static (long[] Begins, float[][] Pairs) Pairs(ByteWalk walk, int channels)
    {
        long[] begins = new long[walk.Count()];
        if (begins.Length == 0) throw new InvalidDataException("A kept trace has no rows.");
        long last = 0;
        for (int p = 0; p < begins.Length; p++) begins[p] = last += walk.Signed();
        float[][] pairs = new float[channels][];
        for (int c = 0; c < channels; c++)
        {
            pairs[c] = new float[2 * begins.Length];
            for (int i = 0; i < pairs[c].Length; i += 2)
            {
                ulong both = walk.Eight();
                (pairs[c][i], pairs[c][i + 1]) = (BitConverter.UInt32BitsToSingle((uint)both), BitConverter.UInt32BitsToSingle((uint)(both >> 32)));
            }
        }
        return (begins, pairs);
    }

    byte[] Bytes(long offset, long count)
    {
        byte[] bytes = new byte[count];
        for (int at = 0; at < bytes.Length;)
        {
            int read = RandomAccess.Read(_file, bytes.AsSpan(at), offset + at);
            if (read == 0) throw new InvalidDataException("A kept trace ends too early.");
            at += read;
        }
        return bytes;
    }

    static InvalidDataException Broken(string path) => new($"{path} is no kept trace, or it is damaged. Bring the logger's file in again.");
}

/// <summary>Rows of a kept trace.</summary>
/// <param name="AtUs">Times, µs of its own clock.</param>
/// <param name="Values">For each channel that was asked for: values as written.</param>
public sealed record KeptRows(long[] AtUs, IReadOnlyList<double[]> Values);
