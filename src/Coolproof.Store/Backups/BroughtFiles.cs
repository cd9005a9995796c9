using Microsoft.Data.Sqlite;

namespace Coolproof.Store.Backups;

/// <summary>Files of a backup that are brought back into the folders beside a notebook: all of them, or none.</summary>
internal sealed class BroughtFiles
{
    private readonly List<(string File, string? Aside)> _brought = [];

    private BroughtFiles()
    {
    }

    /// <summary>How many files of the folders the backup holds.</summary>
    public int Held { get; private set; }

    /// <summary>
    /// Brings them. One that is there and begins with the same bytes stays: it has only gone on since. Any other is put aside beside the one that comes back.
    /// </summary>
    /// <param name="source">The backup.</param>
    /// <param name="folders">Where to; files of a folder that isn't named stay in the backup.</param>
    /// <param name="cancel">Gives up; the folders are as they were.</param>
    public static BroughtFiles Of(SqliteConnection source, IReadOnlyList<FolderBeside> folders, CancellationToken cancel)
    {
        BroughtFiles brought = new();
        try
        {
            foreach (string name in BesideRows.Names(source))
            {
                string[] parts = name.Split('/');
                if (folders.FirstOrDefault(folder => folder.Name == parts[0] && name.EndsWith(folder.Ending, StringComparison.Ordinal)) is not { } folder) continue;
                brought.Held++;
                brought.Bring(source, name, Path.Combine([folder.Path, .. parts[1..]]), cancel);
            }

            return brought;
        }
        catch
        {
            brought.TakeBack();
            throw;
        }
    }

    /// <summary>Takes them away again, and puts back what was put aside.</summary>
    public void TakeBack()
    {
        foreach ((string file, string? aside) in _brought)
        {
            File.Delete(file);
            if (aside is not null) File.Move(aside, file);
        }

        _brought.Clear();
    }

    private void Bring(SqliteConnection source, string name, string file, CancellationToken cancel)
    {
        if (File.Exists(file) && BeginsWith(file, BesideRows.Parts(source, name))) return;
        string unfinished = file + ".unfinished";
        try
        {
            Write(unfinished, BesideRows.Parts(source, name), cancel);
            string? aside = File.Exists(file) ? Aside.Of(file) : null;
            if (aside is not null) File.Move(file, aside);
            File.Move(unfinished, file);
            _brought.Add((file, aside));
        }
        catch
        {
            if (File.Exists(unfinished)) File.Delete(unfinished); // its folder may not be there
            throw;
        }
    }

    private static bool BeginsWith(string file, IEnumerable<byte[]> parts)
    {
        using FileStream stream = new(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete, bufferSize: 0);
        foreach (byte[] part in parts)
        {
            byte[] there = new byte[part.Length];
            if (stream.ReadAtLeast(there, there.Length, throwOnEndOfStream: false) < part.Length || !there.AsSpan().SequenceEqual(part)) return false;
        }

        return true;
    }

    private static void Write(string file, IEnumerable<byte[]> parts, CancellationToken cancel)
    {
        string folder = Path.GetDirectoryName(file)!;
        FileStreamOptions options = new() { Mode = FileMode.Create, Access = FileAccess.Write, BufferSize = 0 };
        if (OperatingSystem.IsWindows())
        {
            Directory.CreateDirectory(folder);
        }
        else
        {
            Directory.CreateDirectory(folder, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
            options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        }

        using FileStream stream = new(file, options);
        foreach (byte[] part in parts)
        {
            cancel.ThrowIfCancellationRequested();
            stream.Write(part);
        }

        stream.Flush(flushToDisk: true);
    }
}
