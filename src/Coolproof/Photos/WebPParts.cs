using System.Buffers.Binary;
using System.Text;

namespace Coolproof.Photos;

/// <summary>A WebP file (RFC 9649, section 2) with only the chunks that draw it.</summary>
internal static class WebPParts
{
    const byte SaysExif = 0x08, SaysXmp = 0x04;
    static readonly HashSet<string> Drawing = ["VP8 ", "VP8L", "VP8X", "ALPH", "ICCP", "ANIM", "ANMF"];

    /// <summary>The file without Exif and XMP; null when it is cut off.</summary>
    public static byte[]? Stripped(ReadOnlySpan<byte> file)
    {
        var end = 8L + BinaryPrimitives.ReadUInt32LittleEndian(file[4..]);
        if (end > file.Length) return null;
        using var kept = new MemoryStream(file.Length);
        kept.Write(file[..12]);
        for (var at = 12; at + 8 <= end;)
        {
            long length = BinaryPrimitives.ReadUInt32LittleEndian(file[(at + 4)..]);
            var padded = 8 + length + (length & 1);
            if (at + 8 + length > end) return null;
            var chunk = file.Slice(at, (int)Math.Min(padded, end - at)).ToArray();
            var type = Encoding.ASCII.GetString(chunk, 0, 4);
            if (type == "VP8X" && length > 0) chunk[8] &= unchecked((byte)~(SaysExif | SaysXmp));
            if (Drawing.Contains(type)) kept.Write(chunk);
            at += chunk.Length;
        }
        var made = kept.ToArray();
        BinaryPrimitives.WriteUInt32LittleEndian(made.AsSpan(4), (uint)(made.Length - 8));
        return made;
    }
}
