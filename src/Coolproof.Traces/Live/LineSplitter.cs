using System.Text;

namespace Coolproof.Traces.Live;

/// <summary>Lines out of bytes that come in pieces. A line ends with a line feed, a carriage return or both; empty ones are left out.</summary>
/// <param name="skipFirst">Whether to leave out what comes before the first end of a line: who begins to listen in the middle of one would misread it.</param>
public sealed class LineSplitter(bool skipFirst)
{
    static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    readonly List<byte> held = new(LiveLineReader.LongestLine);
    bool skipping = skipFirst;
    bool tooLong;

    /// <summary>Adds bytes.</summary>
    /// <returns>The lines that they end.</returns>
    public IReadOnlyList<string> Add(ReadOnlySpan<byte> bytes)
    {
        var lines = new List<string>();
        foreach (var one in bytes)
        {
            if (one is (byte)'\n' or (byte)'\r')
            {
                if (!skipping && held.Count > 0) lines.Add(Take());
                held.Clear();
                (skipping, tooLong) = (false, false);
            }
            else if (held.Count <= LiveLineReader.LongestLine) held.Add(one);
            else tooLong = true; // the rest of it is let go; the reader says that it is too long
        }
        return lines;
    }

    /// <summary>The last line where nothing more will come; null when there is none.</summary>
    public string? End()
    {
        var last = !skipping && held.Count > 0 ? Take() : null;
        held.Clear();
        return last;
    }

    /// <summary>All lines of a whole text, also its empty ones, so that they can be counted.</summary>
    public static IReadOnlyList<string> All(ReadOnlySpan<byte> bytes)
    {
        var lines = new List<string>();
        if (bytes.StartsWith(Encoding.UTF8.Preamble)) bytes = bytes[3..];
        while (!bytes.IsEmpty)
        {
            var end = bytes.IndexOfAny((byte)'\n', (byte)'\r');
            lines.Add(Text(end < 0 ? bytes : bytes[..end]));
            if (end < 0) break;
            var both = bytes[end] == '\r' && end + 1 < bytes.Length && bytes[end + 1] == '\n';
            bytes = bytes[(end + (both ? 2 : 1))..];
        }
        return lines;
    }

    string Take()
    {
        var bytes = System.Runtime.InteropServices.CollectionsMarshal.AsSpan(held);
        if (bytes.StartsWith(Encoding.UTF8.Preamble)) bytes = bytes[3..];
        return tooLong ? Encoding.Latin1.GetString(bytes) + "…" : Text(bytes);
    }

    // Small senders write ° as the one byte B0 (ISO 8859-1); in UTF-8 it can't stand alone.
    static string Text(ReadOnlySpan<byte> bytes)
    {
        try
        {
            return Strict.GetString(bytes);
        }
        catch (DecoderFallbackException)
        {
            return Encoding.Latin1.GetString(bytes);
        }
    }
}
