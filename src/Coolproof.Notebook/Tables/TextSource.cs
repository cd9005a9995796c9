using System.Text;

namespace Coolproof.Notebook.Tables;

/// <summary>Turns bytes into text: finds the encoding, refuses what is no text, and never reads more than the limit.</summary>
internal sealed class TextSource
{
    private const int FirstBlock = 4096;
    private readonly BoundedStream _bytes;
    private readonly LegacyLetters? _legacy;

    private TextSource(BoundedStream bytes, Encoding encoding, LegacyLetters? legacy)
    {
        _bytes = bytes;
        _legacy = legacy;
        Reader = new StreamReader(bytes, encoding, detectEncodingFromByteOrderMarks: false, bufferSize: 32_768);
    }

    /// <summary>The text, without a byte order mark.</summary>
    public TextReader Reader { get; }

    /// <summary>Whether the file went on past <see cref="ReadingsTableLimits.Bytes"/>.</summary>
    public bool TooLong => _bytes.Exceeded;

    /// <summary>Whether some letters were no UTF-8 and were read as Windows-1252.</summary>
    public bool HadLegacyLetters => _legacy?.Used ?? false;

    /// <summary>Opens a stream; null, with the problem noted, when it holds no text.</summary>
    public static TextSource? Open(Stream stream, ProblemLog log)
    {
        byte[] block = new byte[FirstBlock];
        int count = stream.ReadAtLeast(block, FirstBlock, throwOnEndOfStream: false);
        ReadOnlyMemory<byte> first = block.AsMemory(0, count);
        if (count == 0)
        {
            log.Problem(1, -1, "", "an empty file", "a header row and at least one reading");
            return null;
        }

        (Encoding? encoding, int mark) = UnicodeOf(first.Span);
        LegacyLetters? legacy = null;
        if (encoding is null)
        {
            if (KindOfBinary(first.Span[mark..]) is { } kind)
            {
                log.Problem(1, -1, "", kind, "a table as text: CSV in UTF-8 with a header row (in a spreadsheet: save as CSV)");
                return null;
            }

            legacy = new LegacyLetters();
            encoding = Encoding.GetEncoding("utf-8", EncoderFallback.ExceptionFallback, legacy);
        }

        return new TextSource(new BoundedStream(first[mark..], stream, ReadingsTableLimits.Bytes), encoding, legacy);
    }

    // Byte order marks by the Unicode standard, section 23.8; UTF-16 without one shows by its zero bytes, since a header is ASCII.
    private static (Encoding? Encoding, int Mark) UnicodeOf(ReadOnlySpan<byte> first)
    {
        if (first.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xFE, 0, 0])) return (null, 0);
        if (first.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xFE])) return (Encoding.Unicode, 2);
        if (first.StartsWith((ReadOnlySpan<byte>)[0xFE, 0xFF])) return (Encoding.BigEndianUnicode, 2);
        if (first.StartsWith((ReadOnlySpan<byte>)[0xEF, 0xBB, 0xBF])) return (null, 3);
        int even = 0, odd = 0;
        for (int i = 0; i < first.Length; i++)
        {
            if (first[i] != 0) continue;
            if (i % 2 == 0) even++;
            else odd++;
        }

        int pairs = first.Length / 2;
        if (pairs >= 4 && even == 0 && odd > 0.8 * pairs) return (Encoding.Unicode, 0);
        return pairs >= 4 && odd == 0 && even > 0.8 * pairs ? (Encoding.BigEndianUnicode, 0) : (null, 0);
    }

    private static string? KindOfBinary(ReadOnlySpan<byte> first)
    {
        if (first.StartsWith("PK\u0003\u0004"u8)) return "a zip file or a spreadsheet workbook";
        if (first.StartsWith("%PDF"u8)) return "a PDF file";
        if (first.StartsWith((ReadOnlySpan<byte>)[0x1F, 0x8B])) return "a compressed file";
        if (first.StartsWith((ReadOnlySpan<byte>)[0xD0, 0xCF, 0x11, 0xE0])) return "an old spreadsheet workbook";
        int strange = 0;
        foreach (byte b in first)
        {
            if (b < 0x20 && b is not ((byte)'\t' or (byte)'\r' or (byte)'\n')) strange++;
        }

        // Text has none; a single stray one is named with its line and column by the splitter. Random bytes have one in nine.
        return strange > Math.Max(2, first.Length / 50) ? "bytes that are no text" : null;
    }
}
