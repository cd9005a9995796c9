using System.Buffers.Binary;
using System.Numerics;

namespace Coolproof.Traces.Live;

/// <summary>One record of a trace log: 21 bytes, the last four of which tell whether the others are whole.</summary>
/// <remarks>
/// Bytes 0 to 7: milliseconds since 1970-01-01 UTC; 8 to 15: the value (IEEE 754, 64 bits); 16: kind; 17 to 20: CRC-32C (RFC 3720) of bytes 0 to 16. All little-endian.
/// Kinds 0, 1, 2 are the marks of a sample; 16 more where the sample belongs to a batch that counts only once its closing record is there.
/// Kind 32 closes a batch: in place of the time the sender's session, in place of the value the number of the last line that was kept.
/// </remarks>
internal readonly record struct TraceRecord(long First, long Second, byte Kind)
{
    /// <summary>Bytes of a record.</summary>
    public const int Size = 21;

    const int Checked = 17;
    const byte InBatch = 16;
    const byte Closing = 32;

    /// <summary>A sample's record.</summary>
    public static TraceRecord Of(Sample sample, bool inBatch = false) =>
        new(sample.AtMs, BitConverter.DoubleToInt64Bits(sample.Value), (byte)((byte)sample.Mark | (inBatch ? InBatch : 0)));

    /// <summary>The record that closes a batch.</summary>
    public static TraceRecord Close(long session, long last) => new(session, last, Closing);

    /// <summary>Whether it closes a batch.</summary>
    public bool Closes => Kind == Closing;

    /// <summary>Whether it counts only with a closing record after it.</summary>
    public bool Waits => Kind is >= InBatch and < Closing;

    /// <summary>The sample; of a closing record there is none.</summary>
    public Sample Sample => new(First, BitConverter.Int64BitsToDouble(Second), (SampleMark)(Kind & 3));

    /// <summary>Writes it.</summary>
    public void Write(Span<byte> to)
    {
        BinaryPrimitives.WriteInt64LittleEndian(to, First);
        BinaryPrimitives.WriteInt64LittleEndian(to[8..], Second);
        to[16] = Kind;
        BinaryPrimitives.WriteUInt32LittleEndian(to[Checked..], Check(to[..Checked]));
    }

    /// <summary>Reads one.</summary>
    /// <returns>False where the bytes are torn or damaged.</returns>
    public static bool TryRead(ReadOnlySpan<byte> from, out TraceRecord record)
    {
        record = default;
        if (from.Length < Size || BinaryPrimitives.ReadUInt32LittleEndian(from[Checked..]) != Check(from[..Checked])) return false;
        record = new(BinaryPrimitives.ReadInt64LittleEndian(from), BinaryPrimitives.ReadInt64LittleEndian(from[8..]), from[16]);
        return record.Closes || (record.Kind & ~InBatch) <= (byte)SampleMark.Gap;
    }

    /// <summary>CRC-32C of bytes, by RFC 3720, appendix B.4.</summary>
    public static uint Check(ReadOnlySpan<byte> bytes)
    {
        var sum = uint.MaxValue;
        foreach (var one in bytes) sum = BitOperations.Crc32C(sum, one);
        return ~sum;
    }
}
