using Coolproof.Json;
using Coolproof.Screen;
using Coolproof.Store;

namespace Coolproof.Commands.Notebooks;

/// <summary>`coolproof backup` and `coolproof restore`.</summary>
internal sealed class BackingUp(Terminal terminal)
{
    /// <summary>Copies a notebook into a file.</summary>
    public async Task<int> BackupAsync(string file, string? asked, bool json, CancellationToken cancel)
    {
        var place = StoreOption.Place(asked);
        if (StoreOption.IsFile(place) && !File.Exists(place)) return Refuse($"there is no notebook {place}. Name one with --store.");
        await using var store = await JournalStore.OpenAsync(place, TimeProvider.System, cancel);
        var entries = await store.BackupAsync(file, cancel);
        var said = new BackupJson(NotebookJson.CurrentVersion, file, store.Says, entries, new FileInfo(file).Length);
        return Tell(said, json, $"Backed up: {said.Entries} entries of {Cells.Clean(store.Says)} in {Cells.Clean(file)} ({said.Bytes / 1e6:0.0} MB)\n");
    }

    /// <summary>Brings a backup back.</summary>
    public async Task<int> RestoreAsync(string file, bool replace, string? asked, bool json, CancellationToken cancel)
    {
        if (!File.Exists(file)) return Refuse($"there is no backup {file}. Nothing was changed.");
        var place = StoreOption.Place(asked);
        await JournalStore.RestoreAsync(file, place, replace, cancel);
        await using var store = await JournalStore.OpenAsync(place, TimeProvider.System, cancel);
        var said = new BackupJson(NotebookJson.CurrentVersion, file, store.Says, await EntriesAsync(store, cancel), new FileInfo(file).Length);
        return Tell(said, json, $"Brought back: {said.Entries} entries of {Cells.Clean(file)} in {Cells.Clean(store.Says)}\n");
    }

    static async Task<int> EntriesAsync(JournalStore store, CancellationToken cancel)
    {
        var count = 0;
        await foreach (var _ in store.ReadAllAsync(0, cancel)) count++;
        return count;
    }

    int Refuse(string why)
    {
        terminal.Error.WriteLine($"coolproof: {Cells.Clean(why)}");
        return Exit.BadInput;
    }

    int Tell(BackupJson said, bool json, string words)
    {
        terminal.Out.Write(json ? NotebookJson.Text(said) : words);
        terminal.Out.Flush();
        return Exit.Done;
    }
}
