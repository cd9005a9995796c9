using Coolproof.Notebook.Tables;

namespace Coolproof.Notebook;

/// <summary>
/// Reads the readings table (docs/formats/readings-table.md). Nothing is thrown for bad input: the answer is the table, or all its problems.
/// </summary>
/// <remarks>
/// Memory is bounded by <see cref="ReadingsTableLimits"/> whatever the input; a larger file is refused with a message.
/// </remarks>
public static class ReadingsTableReader
{
    private const int HeadCharacters = 65_536;

    /// <summary>Reads a file.</summary>
    /// <param name="path">Path of the file.</param>
    /// <param name="givenDriveS">Seconds of hard driving where no run of the table notes any; null when not given.</param>
    public static TableRead Read(string path, double? givenDriveS = null)
    {
        ArgumentNullException.ThrowIfNull(path);
        try
        {
            if (Directory.Exists(path)) return Refused(path, "a folder; a file is needed");
            if (!File.Exists(path)) return Refused(path, "no such file");
            using FileStream stream = new(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
            return Read(stream, givenDriveS);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return Refused(path, "a file that cannot be opened: " + e.Message);
        }
    }

    /// <summary>Reads a stream from where it stands; the stream is left open.</summary>
    /// <param name="stream">Bytes of the table.</param>
    /// <param name="givenDriveS">Seconds of hard driving where no run of the table notes any; null when not given.</param>
    public static TableRead Read(Stream stream, double? givenDriveS = null)
    {
        ArgumentNullException.ThrowIfNull(stream);
        if (givenDriveS is <= 0 or > 7200 or double.NaN)
        {
            return Refused(new TableProblem(0, "", $"a given drive of {CellWords.Number(givenDriveS.Value)} s", ColumnRules.Of(Field.Drive).Rule));
        }

        ProblemLog log = new();
        try
        {
            if (stream.CanSeek && stream.Length - stream.Position > ReadingsTableLimits.Bytes)
            {
                return Refused(TooLong(stream.Length - stream.Position));
            }

            TextSource? source = TextSource.Open(stream, log);
            ReadingsTable? table = source is null ? null : Table(source, givenDriveS, log);
            return table is null || log.HasProblems ? TableRead.Refused(log.Problems(), log.ProblemsNotListed) : TableRead.Of(table);
        }
        catch (IOException e)
        {
            return Refused(new TableProblem(0, "", "a file that cannot be read to its end: " + e.Message, "a file that can be read"));
        }
    }

    private static ReadingsTable? Table(TextSource source, double? givenDriveS, ProblemLog log)
    {
        char[] block = new char[HeadCharacters];
        string head = new(block, 0, source.Reader.ReadBlock(block, 0, block.Length));
        (char separator, bool declared) = SeparatorChoice.For(head);
        RowSplitter splitter = new(new ReplayReader(head, source.Reader), separator);
        RowCollection rows = new(splitter, log);
        if (declared) splitter.Next();
        if (rows.ReadHeader() is not { } header) return null;
        rows.ReadRows(header);
        if (source.TooLong)
        {
            log.Problem(0, -1, "", TooLong(null).Found, TooLong(null).Expected);
            return null;
        }

        if (source.HadLegacyLetters) log.Question(header.Line, -1, "", "letters that are not UTF-8, read as Windows-1252", "a file saved as UTF-8; look whether names and signs are right");
        return rows.IsWhole ? new TableAssembly(header, log).Assemble(rows.Rows, givenDriveS) : null;
    }

    private static TableProblem TooLong(long? bytes) => new(
        0, "", bytes is { } count ? $"a file of {count / 1_000_000} MB" : "a file without an end in sight",
        $"at most {ReadingsTableLimits.Bytes / 1_000_000} MB: a readings table is typed by hand; the trace of a logger is another thing");

    private static TableRead Refused(string path, string found) => Refused(new TableProblem(0, "", $"{path}: {found}", "a readings table as a CSV file"));

    private static TableRead Refused(TableProblem problem) => TableRead.Refused([problem], 0);
}
