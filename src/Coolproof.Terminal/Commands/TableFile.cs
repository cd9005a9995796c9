using Coolproof.Notebook;
using Coolproof.Screen;
using Coolproof.Words;

namespace Coolproof.Commands;

/// <summary>A readings table taken from a file or from standard input; what is wrong with it is said at once.</summary>
internal static class TableFile
{
    /// <summary>Standard input.</summary>
    public const string StandardInput = "-";

    /// <summary>The table; null when it can't be used, which has then been said.</summary>
    public static ReadingsTable? Read(string path, double? givenDriveS, Terminal terminal) => Read(path, givenDriveS, terminal, keep: null);

    /// <summary>The table with the bytes that it was read from, to be handed on as they are; null when it can't be used, which has then been said.</summary>
    public static (ReadingsTable Table, byte[] Bytes)? ReadWhole(string path, double? givenDriveS, Terminal terminal)
    {
        using var bytes = new MemoryStream();
        return Read(path, givenDriveS, terminal, bytes) is { } table ? (table, bytes.ToArray()) : null;
    }

    static ReadingsTable? Read(string path, double? givenDriveS, Terminal terminal, MemoryStream? keep)
    {
        try
        {
            using var stream = path == StandardInput ? terminal.In() : File.OpenRead(path);
            var read = ReadingsTableReader.Read(keep is null ? stream : Kept(stream, keep), givenDriveS);
            if (read.Understood) return read.Table;
            Tell(path, read, terminal);
        }
        catch (Exception cause) when (cause is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            terminal.Error.WriteLine($"coolproof: {Cells.Clean(path)} can't be read: {Why(cause, path)} Nothing was written.");
        }
        return null;
    }

    // One byte over the limit is enough for the reader to refuse it.
    static MemoryStream Kept(Stream stream, MemoryStream keep)
    {
        var buffer = new byte[81_920];
        while (keep.Length <= ReadingsTableLimits.Bytes && stream.Read(buffer) is > 0 and var got) keep.Write(buffer, 0, got);
        keep.Position = 0;
        return keep;
    }

    static void Tell(string path, TableRead read, Terminal terminal)
    {
        var count = read.Problems.Count + read.ProblemsNotListed;
        var name = path == StandardInput ? "the table on standard input" : Cells.Clean(path);
        terminal.Error.WriteLine($"coolproof: {name} can't be judged as it stands ({count} {(count == 1 ? "problem" : "problems")}). Nothing was written.");
        foreach (var problem in read.Problems) terminal.Error.WriteLine($"  {TableQuestions.Sentence(problem)}");
        if (read.ProblemsNotListed > 0) terminal.Error.WriteLine($"  and {read.ProblemsNotListed} more of the kind");
    }

    /// <summary>Why a file can't be read.</summary>
    internal static string Why(Exception cause, string path) => cause switch
    {
        FileNotFoundException or DirectoryNotFoundException => "there is no such file.",
        UnauthorizedAccessException when Directory.Exists(path) => "it is a folder.",
        UnauthorizedAccessException => "you may not read it.",
        _ => Cells.Clean(cause.Message),
    };
}
