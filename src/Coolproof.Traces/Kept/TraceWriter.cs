using System.Security.Cryptography;
using System.Text.Json;
using Coolproof.Traces.Import;

namespace Coolproof.Traces.Kept;

/// <summary>
/// Writes a trace whole into a file of columns that is named for its own SHA-256 (docs/formats/kept-trace.md): blocks of 65,536 rows, then the smallest and greatest value of each 256
/// rows, by which it is drawn, then what it is. The same rows give the same bytes. Memory stays flat but for the pairs (12 bytes a channel and 256 rows).
/// </summary>
public sealed class TraceWriter : IDisposable
{
    /// <summary>Rows of a block.</summary>
    public const int BlockRows = 65_536;
    /// <summary>Rows of which the smallest and greatest value are kept together.</summary>
    public const int PairRows = 256;
    /// <summary>Ending of the files' names.</summary>
    public const string Ending = ".trace";

    internal static ReadOnlySpan<byte> Magic => "cooltrc1"u8;

    readonly string _folder, _part;
    readonly FileStream _file;
    readonly IncrementalHash _hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
    readonly TraceLayout _layout;
    readonly long[] _times = new long[BlockRows];
    readonly double[][] _values;
    readonly int[] _decimals;
    readonly List<BlockPlace> _blocks = [];
    readonly PairsWriter _pairs;
    readonly ByteBox _box = new();
    long _at;
    int _rows;
    bool _done;

    /// <summary>Begins a file.</summary>
    /// <param name="folder">Where it is to lie; made where it is missing.</param>
    /// <param name="layout">The channels.</param>
    public TraceWriter(string folder, TraceLayout layout)
    {
        ArgumentNullException.ThrowIfNull(layout);
        _layout = layout;
        _folder = folder;
        _values = [.. layout.Channels.Select(_ => new double[BlockRows])];
        _decimals = new int[layout.Channels.Count];
        _pairs = new PairsWriter(layout.Channels.Count);
        Directory.CreateDirectory(folder);
        _part = Path.Combine(folder, $"{Guid.NewGuid():N}.part");
        _file = new FileStream(_part, FileMode.CreateNew, FileAccess.Write, FileShare.None, 1 << 16);
        Put(Magic);
    }

    /// <summary>Appends rows.</summary>
    public void Take(TraceRows rows)
    {
        ArgumentNullException.ThrowIfNull(rows);
        int from = 0;
        while (from < rows.Count)
        {
            int count = Math.Min(BlockRows - _rows, rows.Count - from);
            rows.AtUs.Slice(from, count).CopyTo(_times.AsSpan(_rows));
            for (int c = 0; c < _values.Length; c++)
            {
                rows.Values(c).Slice(from, count).CopyTo(_values[c].AsSpan(_rows));
                int decimals = rows.Decimals(c);
                _decimals[c] = decimals < 0 ? 99 : Math.Max(_decimals[c], decimals);
            }
            _rows += count;
            from += count;
            if (_rows == BlockRows) Block();
        }
    }

    /// <summary>Ends the file and gives it its name. A file of that name that is there is the same, and stays.</summary>
    /// <returns>SHA-256 of the file, lower-case hexadecimal.</returns>
    /// <exception cref="InvalidOperationException">No row was taken.</exception>
    public string Done()
    {
        if (_rows > 0) Block();
        if (_blocks.Count == 0) throw new InvalidOperationException("A trace without a row can't be kept.");
        long end = _at;
        _box.Clear();
        _pairs.Write(_box);
        Put(_box.Written);
        long blocks = _at;
        _box.Clear();
        _box.Unsigned((ulong)_blocks.Count);
        foreach (BlockPlace block in _blocks)
        {
            _box.Unsigned((ulong)block.Bytes);
            _box.Unsigned((ulong)block.Rows);
            _box.Signed(block.FirstUs);
            _box.Signed(block.LastUs);
        }
        Put(_box.Written);
        long about = _at;
        KeptAbout says = new(1, _layout.Clock, _blocks.Sum(block => (long)block.Rows), _blocks[0].FirstUs, _blocks[^1].LastUs,
            [.. _layout.Channels.Select(channel => new KeptChannel(channel.Name, channel.Unit.Name, channel.Unit.Measures, channel.Unit.Scale, channel.Unit.Shift))]);
        Put(JsonSerializer.SerializeToUtf8Bytes(says, KeptJson.Default.KeptAbout));
        long last = _at;
        _box.Clear();
        foreach (long place in (long[])[end, blocks, about, last]) _box.Eight((ulong)place);
        Put(_box.Written);
        string sha = Convert.ToHexStringLower(_hash.GetHashAndReset());
        _file.Flush(flushToDisk: true);
        _file.Dispose();
        _done = true;
        string name = Path.Combine(_folder, sha + Ending);
        if (File.Exists(name)) File.Delete(_part);
        else File.Move(_part, name);
        return sha;
    }

    /// <summary>Lets go; a file that is not done is deleted.</summary>
    public void Dispose()
    {
        _hash.Dispose();
        _file.Dispose();
        if (!_done) File.Delete(_part);
    }

    void Block()
    {
        ReadOnlySpan<long> times = _times.AsSpan(0, _rows);
        _box.Clear();
        ColumnCoding.WriteTimes(times, _box);
        for (int c = 0; c < _values.Length; c++) ColumnCoding.WriteValues(_values[c].AsSpan(0, _rows), _decimals[c], _box);
        _pairs.Add(times, _values);
        _blocks.Add(new BlockPlace(_at, _box.Written.Length, _rows, times[0], times[^1]));
        Put(_box.Written);
        _rows = 0;
        Array.Clear(_decimals);
    }

    void Put(ReadOnlySpan<byte> bytes)
    {
        _file.Write(bytes);
        _hash.AppendData(bytes);
        _at += bytes.Length;
    }
}

/// <summary>Smallest and greatest value of each 256 rows, gathered while a trace is written.</summary>
sealed class PairsWriter(int channels)
{
    readonly List<long> _begins = [];
    readonly List<float>[] _pairs = [.. Enumerable.Range(0, channels).Select(_ => new List<float>())];

    /// <summary>Adds a block; blocks but the last are whole multiples of 256 rows.</summary>
    public void Add(ReadOnlySpan<long> times, double[][] values)
    {
        for (int from = 0; from < times.Length; from += TraceWriter.PairRows)
        {
            int count = Math.Min(TraceWriter.PairRows, times.Length - from);
            _begins.Add(times[from]);
            for (int c = 0; c < values.Length; c++)
            {
                (double least, double most) = Extremes.Of(values[c].AsSpan(from, count));
                // Rounded outwards, so that no peak is drawn too low.
                _pairs[c].Add(Down(least));
                _pairs[c].Add(Up(most));
            }
        }
    }

    public void Write(ByteBox into)
    {
        into.Unsigned((ulong)_begins.Count);
        long last = 0;
        foreach (long begin in _begins)
        {
            into.Signed(begin - last);
            last = begin;
        }
        foreach (List<float> channel in _pairs)
            for (int i = 0; i < channel.Count; i += 2) into.Eight(BitConverter.SingleToUInt32Bits(channel[i]) | ((ulong)BitConverter.SingleToUInt32Bits(channel[i + 1]) << 32));
    }

    static float Down(double value) => (float)value is var near && near > value ? MathF.BitDecrement(near) : (float)value;

    static float Up(double value) => (float)value is var near && near < value ? MathF.BitIncrement(near) : (float)value;
}
