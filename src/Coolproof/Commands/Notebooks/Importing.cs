using Coolproof.Board;
using Coolproof.Json;
using Coolproof.Notebook;
using Coolproof.Notebook.Journal;
using Coolproof.Screen;
using Coolproof.Store;
using Coolproof.Web;
using Coolproof.Words;
using NodaTime;

namespace Coolproof.Commands.Notebooks;

/// <summary>What `coolproof import` was asked.</summary>
/// <param name="File">Path of the readings table; "-" for standard input.</param>
/// <param name="DriveS">Seconds of driving where no run notes any.</param>
/// <param name="There">What becomes of runs that are there already: a word of <see cref="BroughtTable"/>.</param>
/// <param name="DryRun">Whether to keep nothing.</param>
/// <param name="Store">The notebook's place; null: in the data folder.</param>
/// <param name="Json">Whether to print JSON.</param>
internal sealed record ImportRequest(string File, double? DriveS, string There, bool DryRun, string? Store, bool Json);

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
            return Tell(request, table, 0, TableImport.Of(table, PitNotebook.Empty, Source(request)), null, place);
        await using var store = await JournalStore.OpenAsync(place, TimeProvider.System, cancel);
        var held = new List<StoredEntry>();
        await foreach (var entry in store.ReadAllAsync(0, cancel)) held.Add(entry);
        var notebook = PitNotebook.Of(held);
        var there = RunsThere.Of(table, notebook);
        var entries = BroughtTable.Entries(table, notebook, Source(request), there, request.There, SystemClock.Instance.GetCurrentInstant());
        if (request.DryRun) return Tell(request, table, there.Runs.Count, entries, entries.Select(entry => entry.Id).Except(held.Select(entry => entry.Id)).Count(), store.Says);
        var kept = await store.AppendAsync(MachineDevice.Of(DataFolder.Of(Environment.GetEnvironmentVariable)), entries, cancel);
        return Tell(request, table, there.Runs.Count, entries, kept.New, store.Says);
    }

    static string? Source(ImportRequest request) => request.File == TableFile.StandardInput ? null : Path.GetFileName(request.File);

    static string Runs(int count) => count == 1 ? "1 of these runs was" : $"{count} of these runs were";

    int Tell(ImportRequest request, ReadingsTable table, int there, IReadOnlyList<Entry> entries, int? news, string store)
    {
        var fresh = news ?? entries.Count;
        var said = new ImportJson(
            NotebookJson.CurrentVersion, request.File, store, request.DryRun, table.Runs.Select(run => run.Day).Distinct(StringComparer.OrdinalIgnoreCase).Count(), table.Options.Count,
            table.Runs.Count, table.Runs.Sum(run => run.Readings.Count), entries.Count, fresh, there, [.. table.Questions.Select(TableQuestions.Sentence)]);
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
            var again = (there, fresh, request.There) switch
            {
                (0, _, _) or (_, 0, _) => "",
                (_, _, BroughtTable.Leave) => $"{Runs(there)} there already and stayed as before; --there replace takes the table's instead, --there both keeps both.\n",
                (_, _, BroughtTable.Replace) => $"{Runs(there)} there already and replaced; history keeps the old ones.\n",
                _ => $"{Runs(there)} there already too, and now stand there twice, as asked.\n",
            };
            terminal.Out.Write($"{line}\n{again}The notebook: {Cells.Clean(store)}\n");
            foreach (var question in said.Questions) terminal.Out.Write($"  to look at: {question}\n");
        }
        terminal.Out.Flush();
        return Exit.Done;
    }
}
