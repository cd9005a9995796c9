using Coolproof.Json;
using Coolproof.Loggers;
using Coolproof.Notebook.Journal;
using Coolproof.Pages.Shown;
using Coolproof.Screen;
using Coolproof.Store;
using Coolproof.Web;

namespace Coolproof.Commands.Notebooks;

/// <summary>`coolproof backup` and `coolproof restore`.</summary>
internal sealed class BackingUp(Terminal terminal)
{
    /// <summary>Copies a notebook and the traces beside it into a file.</summary>
    public async Task<int> BackupAsync(string file, string? asked, bool json, CancellationToken cancel)
    {
        var place = StoreOption.Place(asked);
        if (StoreOption.IsFile(place) && !File.Exists(place)) return Refuse($"there is no notebook {place}. Name one with --store.");
        var beside = Beside(place);
        await using var store = await JournalStore.OpenAsync(place, TimeProvider.System, cancel);
        var held = await store.BackupAsync(file, beside.All, cancel);
        var (_, missing) = await LookAsync(store, beside, cancel);
        var said = new BackupJson(NotebookJson.CurrentVersion, file, store.Says, held.Entries, held.Files, missing, new FileInfo(file).Length);
        return Tell(said, json, $"Backed up: {Holds(said)} of {Cells.Clean(store.Says)} in {Cells.Clean(file)} ({said.Bytes / 1e6:0.0} MB)\n", "Not in it, since their files are not on this machine");
    }

    /// <summary>Brings a backup back.</summary>
    public async Task<int> RestoreAsync(string file, bool replace, string? asked, bool json, CancellationToken cancel)
    {
        if (!File.Exists(file)) return Refuse($"there is no backup {file}. Nothing was changed.");
        var place = StoreOption.Place(asked);
        var beside = Beside(place);
        var files = await JournalStore.RestoreAsync(file, place, replace, beside.All, cancel);
        await using var store = await JournalStore.OpenAsync(place, TimeProvider.System, cancel);
        var (entries, missing) = await LookAsync(store, beside, cancel);
        var said = new BackupJson(NotebookJson.CurrentVersion, file, store.Says, entries, files, missing, new FileInfo(file).Length);
        return Tell(said, json, $"Brought back: {Holds(said)} of {Cells.Clean(file)} in {Cells.Clean(store.Says)}\n", "Noted, but their files came neither with the backup nor are they here");
    }

    static FoldersBeside Beside(string place) => FoldersBeside.Of(place, DataFolder.Of(Environment.GetEnvironmentVariable));

    /// <summary>How many entries a notebook has, and the names of its loggers' traces whose files can't be read here.</summary>
    static async Task<(int Entries, IReadOnlyList<string> Missing)> LookAsync(JournalStore store, FoldersBeside beside, CancellationToken cancel)
    {
        var held = new List<StoredEntry>();
        await foreach (var entry in store.ReadAllAsync(0, cancel)) held.Add(entry);
        var files = new LoggerFiles(beside.Loggers);
        var missing = new List<string>();
        foreach (var noted in PitNotebook.Of(held).Traces)
        {
            using var trace = files.Open(noted.Sha256);
            if (trace is null) missing.Add(noted.Name);
        }
        return (held.Count, missing);
    }

    static string Holds(BackupJson said) => $"{said.Entries} entries{(said.TraceFiles > 0 ? $" and {TimeWords.Count(said.TraceFiles, "file")} of traces" : "")}";

    int Refuse(string why)
    {
        terminal.Error.WriteLine($"coolproof: {Cells.Clean(why)}");
        return Exit.BadInput;
    }

    int Tell(BackupJson said, bool json, string words, string lacks)
    {
        terminal.Out.Write(json ? NotebookJson.Text(said) : words);
        if (!json && said.TracesMissing.Count > 0) terminal.Out.Write($"{lacks}: {Cells.Clean(string.Join(", ", said.TracesMissing))}. Bring the logger's file in again, or copy it here from the machine that has it.\n");
        terminal.Out.Flush();
        return Exit.Done;
    }
}
