using System.Buffers.Binary;
using System.Text;

namespace Coolproof.Photos;

/// <summary>A PNG file (W3C PNG, section 11) with only the chunks that draw it.</summary>
internal static class PngParts
{
    const int SignatureLength = 8;
    static readonly HashSet<string> Drawing = ["IHDR", "PLTE", "IDAT", "IEND", "tRNS", "gAMA", "cHRM", "sRGB", "iCCP", "sBIT", "bKGD", "pHYs", "cICP"];

    /// <summary>The file without texts, times and Exif; null when it is cut off.</summary>
    public static byte[]? Stripped(ReadOnlySpan<byte> file)
    {
        using var kept = new MemoryStream(file.Length);
        kept.Write(file[..SignatureLength]);
        for (var at = SignatureLength; at + 12 <= file.Length;)
        {
            var length = BinaryPrimitives.ReadUInt32BigEndian(file[at..]);
            if (length > file.Length - at - 12) return null;
            var chunk = file.Slice(at, 12 + (int)length);
            var type = Encoding.ASCII.GetString(chunk[4..8]);
            if (Drawing.Contains(type)) kept.Write(chunk);
            if (type == "IEND") return kept.ToArray();
            at += chunk.Length;
        }
        return null;
    }
}
