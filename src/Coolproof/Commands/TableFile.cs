using Coolproof.Notebook;
using Coolproof.Screen;

namespace Coolproof.Commands;

/// <summary>A readings table taken from a file or from standard input; what is wrong with it is said at once.</summary>
internal static class TableFile
{
    /// <summary>Standard input.</summary>
    public const string StandardInput = "-";

    /// <summary>The table; null when it can't be used, which has then been said.</summary>
    public static ReadingsTable? Read(string path, double? givenDriveS, Terminal terminal)
    {
        try
        {
            using var stream = path == StandardInput ? terminal.In() : File.OpenRead(path);
            var read = ReadingsTableReader.Read(stream, givenDriveS);
            if (read.Understood) return read.Table;
            Tell(path, read, terminal);
        }
        catch (Exception cause) when (cause is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            terminal.Error.WriteLine($"coolproof: {Cells.Clean(path)} can't be read: {Why(cause, path)} Nothing was written.");
        }
        return null;
    }

    /// <summary>One line of a problem or a question.</summary>
    public static string Sentence(TableProblem problem)
    {
        List<string> place = [];
        if (problem.Line > 0) place.Add($"line {problem.Line}");
        if (problem.Column.Length > 0) place.Add(problem.Column);
        var said = $"found {problem.Found}; expected {problem.Expected}";
        return Cells.Clean(place.Count > 0 ? $"{string.Join(", ", place)}: {said}" : said);
    }

    static void Tell(string path, TableRead read, Terminal terminal)
    {
        var count = read.Problems.Count + read.ProblemsNotListed;
        var name = path == StandardInput ? "the table on standard input" : Cells.Clean(path);
        terminal.Error.WriteLine($"coolproof: {name} can't be judged as it stands ({count} {(count == 1 ? "problem" : "problems")}). Nothing was written.");
        foreach (var problem in read.Problems) terminal.Error.WriteLine($"  {Sentence(problem)}");
        if (read.ProblemsNotListed > 0) terminal.Error.WriteLine($"  and {read.ProblemsNotListed} more of the kind");
    }

    static string Why(Exception cause, string path) => cause switch
    {
        FileNotFoundException or DirectoryNotFoundException => "there is no such file.",
        UnauthorizedAccessException when Directory.Exists(path) => "it is a folder.",
        UnauthorizedAccessException => "you may not read it.",
        _ => Cells.Clean(cause.Message),
    };
}
