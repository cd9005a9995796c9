using System.Numerics;
using Coolproof.Traces.Import;

namespace Coolproof.Traces.Kept;

/// <summary>
/// Columns of numbers as few bytes, without loss: times as differences of differences, values as differences of whole multiples of a power of ten where each value is exactly such a
/// multiple, as eight bytes each otherwise; all whole numbers in bytes of seven bits (as in LEB128, DWARF 5, 7.6), signs folded in.
/// </summary>
static class ColumnCoding
{
    const byte Plain = 0, Decimal = 1;
    const int MostDecimals = 9;

    static readonly double[] Tens = [1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9];

    /// <summary>Appends times.</summary>
    public static void WriteTimes(ReadOnlySpan<long> times, ByteBox into)
    {
        long last = 0, step = 0;
        foreach (long time in times)
        {
            long next = time - last;
            into.Signed(next - step);
            (last, step) = (time, next);
        }
    }

    /// <summary>Reads times.</summary>
    public static void ReadTimes(ref ByteWalk from, Span<long> times)
    {
        long last = 0, step = 0;
        for (int i = 0; i < times.Length; i++)
        {
            step += from.Signed();
            last += step;
            times[i] = last;
        }
    }

    /// <summary>Appends values.</summary>
    /// <param name="values">The values; NaN of <see cref="TraceRows"/> where there is none.</param>
    /// <param name="decimals">Digits behind the decimal mark at most; anything else where that isn't known.</param>
    /// <param name="into">Where to.</param>
    public static void WriteValues(ReadOnlySpan<double> values, int decimals, ByteBox into)
    {
        if (decimals is < 0 or > MostDecimals || !AreMultiples(values, Tens[decimals]))
        {
            into.Byte(Plain);
            foreach (double value in values) into.Eight(BitConverter.DoubleToUInt64Bits(value));
            return;
        }
        into.Byte(Decimal);
        into.Byte((byte)decimals);
        WriteMissing(values, into);
        double ten = Tens[decimals];
        long last = 0;
        foreach (double value in values)
        {
            long whole = double.IsNaN(value) ? last : (long)Math.Round(value * ten);
            into.Signed(whole - last);
            last = whole;
        }
    }

    /// <summary>Reads values.</summary>
    /// <exception cref="InvalidDataException">The bytes are none that were written so.</exception>
    public static void ReadValues(ref ByteWalk from, Span<double> values)
    {
        byte coding = from.Byte();
        if (coding == Plain)
        {
            for (int i = 0; i < values.Length; i++) values[i] = BitConverter.UInt64BitsToDouble(from.Eight());
            return;
        }
        int decimals = coding == Decimal ? from.Byte() : -1;
        if (decimals is < 0 or > MostDecimals) throw new InvalidDataException("A column of a kept trace is written in a way that is not known.");
        List<(int Begin, int Count, double What)> missing = ReadMissing(ref from, values.Length);
        double ten = Tens[decimals];
        long last = 0;
        for (int i = 0; i < values.Length; i++)
        {
            last += from.Signed();
            values[i] = last / ten;
        }
        foreach ((int begin, int count, double what) in missing) values.Slice(begin, count).Fill(what);
    }

    static bool AreMultiples(ReadOnlySpan<double> values, double ten)
    {
        foreach (double value in values)
        {
            if (double.IsNaN(value)) continue;
            double whole = Math.Round(value * ten);
            if (whole / ten != value || Math.Abs(whole) > 1L << 53) return false;
        }
        return true;
    }

    static void WriteMissing(ReadOnlySpan<double> values, ByteBox into)
    {
        List<(int Begin, int Count, SampleMark Mark)> runs = [];
        for (int i = 0; i < values.Length; i++)
        {
            if (!double.IsNaN(values[i])) continue;
            SampleMark mark = TraceRows.MarkOf(values[i]);
            if (runs.Count > 0 && runs[^1] is var (begin, count, same) && begin + count == i && same == mark) runs[^1] = (begin, count + 1, mark);
            else runs.Add((i, 1, mark));
        }
        into.Unsigned((ulong)runs.Count);
        foreach ((int begin, int count, SampleMark mark) in runs)
        {
            into.Unsigned((ulong)begin);
            into.Unsigned((ulong)count);
            into.Byte((byte)mark);
        }
    }

    static List<(int Begin, int Count, double What)> ReadMissing(ref ByteWalk from, int rows)
    {
        ulong runs = from.Unsigned();
        List<(int, int, double)> missing = [];
        for (ulong r = 0; r < runs; r++)
        {
            ulong begin = from.Unsigned(), count = from.Unsigned();
            byte mark = from.Byte();
            if (begin > (ulong)rows || count > (ulong)rows - begin) throw new InvalidDataException("A column of a kept trace has more rows than its block.");
            missing.Add(((int)begin, (int)count, mark == (byte)SampleMark.Nonsense ? TraceRows.Nonsense : TraceRows.Gap));
        }
        return missing;
    }
}

/// <summary>Bytes that grow.</summary>
sealed class ByteBox
{
    byte[] _bytes = new byte[1 << 16];
    int _count;

    public ReadOnlySpan<byte> Written => _bytes.AsSpan(0, _count);

    public void Clear() => _count = 0;

    public void Byte(byte value)
    {
        Room(1);
        _bytes[_count++] = value;
    }

    public void Eight(ulong value)
    {
        Room(8);
        System.Buffers.Binary.BinaryPrimitives.WriteUInt64LittleEndian(_bytes.AsSpan(_count), value);
        _count += 8;
    }

    /// <summary>Seven bits a byte, the lowest first; the eighth says that more follow.</summary>
    public void Unsigned(ulong value)
    {
        Room(10);
        while (value >= 0x80)
        {
            _bytes[_count++] = (byte)(value | 0x80);
            value >>= 7;
        }
        _bytes[_count++] = (byte)value;
    }

    /// <summary>Small numbers of either sign become small ones without: 0, −1, 1, −2, …</summary>
    public void Signed(long value) => Unsigned((ulong)((value << 1) ^ (value >> 63)));

    void Room(int more)
    {
        if (_count + more > _bytes.Length) Array.Resize(ref _bytes, (int)BitOperations.RoundUpToPowerOf2((uint)(_count + more)));
    }
}

/// <summary>A walk along bytes that <see cref="ByteBox"/> wrote.</summary>
ref struct ByteWalk(ReadOnlySpan<byte> bytes)
{
    readonly ReadOnlySpan<byte> _bytes = bytes;
    int _at;

    public byte Byte() => _at < _bytes.Length ? _bytes[_at++] : throw Ended();

    public ulong Eight()
    {
        if (_at + 8 > _bytes.Length) throw Ended();
        ulong value = System.Buffers.Binary.BinaryPrimitives.ReadUInt64LittleEndian(_bytes[_at..]);
        _at += 8;
        return value;
    }

    public ulong Unsigned()
    {
        ulong value = 0;
        for (int shift = 0; shift < 64; shift += 7)
        {
            byte next = Byte();
            value |= (ulong)(next & 0x7F) << shift;
            if (next < 0x80) return value;
        }
        throw new InvalidDataException("A kept trace holds a number of more than 64 bits.");
    }

    /// <summary>How many things follow, of a byte each at least.</summary>
    public int Count() => Unsigned() is var count && count <= (ulong)(_bytes.Length - _at) ? (int)count : throw Ended();

    public long Signed()
    {
        ulong folded = Unsigned();
        return (long)(folded >> 1) ^ -(long)(folded & 1);
    }

    static InvalidDataException Ended() => new("A kept trace ends in the midst of a column.");
}
