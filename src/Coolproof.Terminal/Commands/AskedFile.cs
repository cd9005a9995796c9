using Coolproof.Notebook;
using Coolproof.Screen;

namespace Coolproof.Commands;

/// <summary>A question written in JSON, taken from a file or from standard input; what is wrong with it is said at once.</summary>
internal static class AskedFile
{
    const int MostBytes = 1 << 20, MostListed = 40;

    /// <summary>What it asks; null when it can't be used, which has then been said.</summary>
    /// <param name="command">The command, for what is said.</param>
    /// <param name="path">The file; "-" for standard input.</param>
    /// <param name="read">Understands its text.</param>
    /// <param name="terminal">Where it is said.</param>
    public static T? Read<T>(string command, string path, Func<string, AskedRead<T>> read, Terminal terminal) where T : class
    {
        if (Text(command, path, terminal) is not { } text) return null;
        var (asked, problems) = read(text);
        if (asked is not null) return asked;
        Tell(command, path, problems, terminal);
        return null;
    }

    /// <summary>Says all that is wrong with an asked file.</summary>
    public static void Tell(string command, string path, IReadOnlyList<AskedProblem> problems, Terminal terminal)
    {
        var name = path == TableFile.StandardInput ? "what came on standard input" : Cells.Clean(path);
        terminal.Error.WriteLine($"coolproof {command}: {name} can't be used as it stands ({problems.Count} {(problems.Count == 1 ? "problem" : "problems")}). Nothing was written.");
        foreach (var problem in problems.Take(MostListed)) terminal.Error.WriteLine($"  {Cells.Clean(problem.ToString())}");
        if (problems.Count > MostListed) terminal.Error.WriteLine($"  and {problems.Count - MostListed} more");
    }

    static string? Text(string command, string path, Terminal terminal)
    {
        try
        {
            using var stream = path == TableFile.StandardInput ? terminal.In() : File.OpenRead(path);
            using var bytes = new MemoryStream();
            var buffer = new byte[81_920];
            while (bytes.Length <= MostBytes && stream.Read(buffer) is > 0 and var got) bytes.Write(buffer, 0, got);
            if (bytes.Length <= MostBytes)
            {
                bytes.Position = 0;
                using var reader = new StreamReader(bytes);
                return reader.ReadToEnd();
            }
            terminal.Error.WriteLine($"coolproof {command}: {Cells.Clean(path)} is larger than 1 MB; such a question is a few lines of JSON. Nothing was written.");
        }
        catch (Exception cause) when (cause is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            terminal.Error.WriteLine($"coolproof {command}: {Cells.Clean(path)} can't be read: {TableFile.Why(cause, path)} Nothing was written.");
        }
        return null;
    }
}
