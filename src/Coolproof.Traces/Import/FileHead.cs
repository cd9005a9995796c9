using System.Text;

namespace Coolproof.Traces.Import;

/// <summary>The first lines of a file, by which its layout is guessed.</summary>
/// <param name="Lines">Whole lines without their ends, at most <see cref="Most"/>.</param>
public sealed record FileHead(IReadOnlyList<string> Lines)
{
    /// <summary>How many lines are looked at.</summary>
    public const int Most = 400;

    static readonly UTF8Encoding Strict = new(false, throwOnInvalidBytes: true);

    internal static FileHead Of(ReadOnlySpan<byte> bytes)
    {
        List<string> lines = [];
        while (bytes.Length > 0 && lines.Count < Most)
        {
            int end = bytes.IndexOf((byte)'\n');
            // The last line of the head may be cut off; of a short file it is whole.
            if (end < 0 && lines.Count > 8) break;
            ReadOnlySpan<byte> line = end < 0 ? bytes : bytes[..end];
            lines.Add(Text(line.TrimEnd((byte)'\r')));
            bytes = end < 0 ? [] : bytes[(end + 1)..];
        }
        return new FileHead(lines);
    }

    /// <summary>Cells of a line; quotes around a cell are taken off.</summary>
    public static IReadOnlyList<string> Cells(string line, char separator)
    {
        ArgumentNullException.ThrowIfNull(line);
        List<string> cells = [];
        StringBuilder cell = new();
        bool quoted = false;
        foreach (char c in line)
        {
            if (c == '"') quoted = !quoted;
            else if (c == separator && !quoted)
            {
                cells.Add(cell.ToString().Trim());
                cell.Clear();
            }
            else cell.Append(c);
        }
        cells.Add(cell.ToString().Trim());
        return cells;
    }

    // Letters above ASCII only stand in names; ° and ä of Windows-1252 lie where Latin-1 has them.
    static string Text(ReadOnlySpan<byte> line)
    {
        try
        {
            return Strict.GetString(line);
        }
        catch (DecoderFallbackException)
        {
            return Encoding.Latin1.GetString(line);
        }
    }
}
