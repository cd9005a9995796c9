using System.Collections.Concurrent;
using Coolproof.Traces.Import;
using Coolproof.Traces.Kept;
using Coolproof.Traces.Shape;

namespace Coolproof.Loggers;

/// <summary>The folder beside a notebook in which loggers' traces are kept whole, each in a file that is named for its SHA-256.</summary>
/// <param name="folder">The folder; it is made when something is kept.</param>
internal sealed class LoggerFiles(string folder)
{
    const int MostGrids = 16, MostTold = 64;

    // A grid is a second of each channel: some hundred kilobytes a trace, and reading it anew takes a second for ten million rows.
    readonly ConcurrentDictionary<string, SecondGrid> grids = new();

    readonly ConcurrentDictionary<Guid, LogRead> told = new();

    /// <summary>The folder.</summary>
    public string Folder => folder;

    /// <summary>Opens a kept trace; null where its file isn't here, or is damaged.</summary>
    /// <param name="sha256">Its hash as noted.</param>
    public KeptTrace? Open(string? sha256)
    {
        // What a notebook says is not trusted with paths.
        if (sha256 is not { Length: 64 } || !sha256.All(char.IsAsciiHexDigitLower)) return null;
        try
        {
            return KeptTrace.Open(Path.Combine(folder, sha256 + TraceWriter.Ending));
        }
        catch (Exception cause) when (cause is IOException or UnauthorizedAccessException or InvalidDataException)
        {
            return null;
        }
    }

    /// <summary>Remembers what was odd about a file for the page that is shown next; after a restart of the server only the number of problems is known.</summary>
    public void Told(Guid trace, LogRead read)
    {
        if (told.Count >= MostTold) told.Clear();
        told[trace] = read;
    }

    /// <summary>What was odd about a file; null where that isn't known any more.</summary>
    public LogRead? ToldOf(Guid trace) => told.GetValueOrDefault(trace);

    /// <summary>A kept trace second by second.</summary>
    public SecondGrid GridOf(string sha256, KeptTrace trace)
    {
        if (grids.TryGetValue(sha256, out var known)) return known;
        if (grids.Count >= MostGrids) grids.Clear();
        return grids[sha256] = SecondGrid.Of(trace);
    }
}
