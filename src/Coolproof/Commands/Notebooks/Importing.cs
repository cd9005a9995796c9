using Coolproof.Json;
using Coolproof.Notebook;
using Coolproof.Notebook.Journal;
using Coolproof.Screen;
using Coolproof.Store;
using Coolproof.Web;

namespace Coolproof.Commands.Notebooks;

/// <summary>What `coolproof import` was asked.</summary>
/// <param name="File">Path of the readings table; "-" for standard input.</param>
/// <param name="DriveS">Seconds of driving where no run notes any.</param>
/// <param name="DryRun">Whether to keep nothing.</param>
/// <param name="Store">The notebook's place; null: in the data folder.</param>
/// <param name="Json">Whether to print JSON.</param>
internal sealed record ImportRequest(string File, double? DriveS, bool DryRun, string? Store, bool Json);

/// <summary>`coolproof import` from the file to the exit code.</summary>
internal sealed class Importing(Terminal terminal)
{
    /// <summary>Reads the table, keeps its entries all or none, says what it kept.</summary>
    public async Task<int> RunAsync(ImportRequest request, CancellationToken cancel)
    {
        if (TableFile.Read(request.File, request.DriveS, terminal) is not { } table) return Exit.BadInput;
        var place = StoreOption.Place(request.Store);
        // Where nothing is kept, no notebook is made either.
        if (request.DryRun && StoreOption.IsFile(place) && !File.Exists(place))
            return Tell(request, table, Entries(table, PitNotebook.Empty, request), null, place);
        await using var store = await JournalStore.OpenAsync(place, TimeProvider.System, cancel);
        var held = new List<StoredEntry>();
        await foreach (var entry in store.ReadAllAsync(0, cancel)) held.Add(entry);
        var entries = Entries(table, PitNotebook.Of(held), request);
        if (request.DryRun) return Tell(request, table, entries, entries.Select(entry => entry.Id).Except(held.Select(entry => entry.Id)).Count(), store.Says);
        var kept = await store.AppendAsync(MachineDevice.Of(DataFolder.Of(Environment.GetEnvironmentVariable)), entries, cancel);
        return Tell(request, table, entries, kept.New, store.Says);
    }

    static IReadOnlyList<Entry> Entries(ReadingsTable table, PitNotebook into, ImportRequest request) =>
        TableImport.Of(table, into, request.File == TableFile.StandardInput ? null : Path.GetFileName(request.File));

    int Tell(ImportRequest request, ReadingsTable table, IReadOnlyList<Entry> entries, int? news, string store)
    {
        var fresh = news ?? entries.Count;
        var said = new ImportJson(
            NotebookJson.CurrentVersion, request.File, store, request.DryRun, table.Runs.Select(run => run.Day).Distinct(StringComparer.OrdinalIgnoreCase).Count(), table.Options.Count,
            table.Runs.Count, table.Runs.Sum(run => run.Readings.Count), entries.Count, fresh, [.. table.Questions.Select(TableFile.Sentence)]);
        if (request.Json) terminal.Out.Write(NotebookJson.Text(said));
        else
        {
            var what = $"{said.Days} {(said.Days == 1 ? "day" : "days")}, {said.Options} cooling options, {said.Runs} runs, {said.Readings} readings";
            var line = (request.DryRun, fresh) switch
            {
                (_, 0) => $"All of it is in the notebook already: {what}.",
                (true, _) => $"Would be kept: {what}. Nothing was written.",
                _ => $"Kept: {what}.",
            };
            terminal.Out.Write($"{line}\nThe notebook: {Cells.Clean(store)}\n");
            foreach (var question in said.Questions) terminal.Out.Write($"  to look at: {question}\n");
        }
        terminal.Out.Flush();
        return Exit.Done;
    }
}
