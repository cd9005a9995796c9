using Coolproof.Json;
using Coolproof.Notebook;
using Coolproof.Notebook.Journal;
using Coolproof.Screen;
using Coolproof.Store;
using Coolproof.Words;

namespace Coolproof.Commands.Notebooks;

/// <summary>What `coolproof export` was asked.</summary>
/// <param name="Day">Name, date or UUID of a day; null: all.</param>
/// <param name="Out">Where to; null: standard output.</param>
/// <param name="Units">Unit of the table's temperatures.</param>
/// <param name="Store">The notebook's place; null: in the data folder.</param>
/// <param name="Json">Whether to print JSON about what was written.</param>
internal sealed record ExportRequest(string? Day, string? Out, TemperatureUnitChoice Units, string? Store, bool Json);

/// <summary>`coolproof export` from the notebook to the file.</summary>
internal sealed class Exporting(Terminal terminal)
{
    /// <summary>Reads the notebook and writes its table.</summary>
    public async Task<int> RunAsync(ExportRequest request, CancellationToken cancel)
    {
        var place = StoreOption.Place(request.Store);
        if (StoreOption.IsFile(place) && !File.Exists(place))
        {
            terminal.Error.WriteLine($"coolproof: there is no notebook {Cells.Clean(place)}. Name one with --store.");
            return Exit.BadInput;
        }
        await using var store = await JournalStore.OpenAsync(place, TimeProvider.System, cancel);
        var held = new List<StoredEntry>();
        await foreach (var entry in store.ReadAllAsync(0, cancel)) held.Add(entry);
        var notebook = PitNotebook.Of(held);
        Guid? day = null;
        if (request.Day is { } asked)
        {
            if (DayNamed.Of(notebook, asked, terminal) is not { } named) return Exit.BadInput;
            day = named.Id;
        }
        return Write(NotebookTable.Of(notebook, day: day).Table, request, store.Says);
    }

    int Write(ReadingsTable table, ExportRequest request, string store)
    {
        if (request.Out is not { } path)
        {
            ReadingsTableWriter.Write(table, terminal.Out, request.Units);
            terminal.Out.Flush();
        }
        else
        {
            if (File.Exists(path) || Directory.Exists(path))
            {
                terminal.Error.WriteLine($"coolproof: {Cells.Clean(path)} is there already; name a new file. Nothing was written.");
                return Exit.BadInput;
            }
            WholeFile.Write(path, writer => ReadingsTableWriter.Write(table, writer, request.Units));
        }
        var said = new ExportJson(
            NotebookJson.CurrentVersion, request.Out ?? "-", store, table.Runs.Select(run => run.Day).Distinct(StringComparer.OrdinalIgnoreCase).Count(), table.Options.Count, table.Runs.Count,
            table.Runs.Sum(run => run.Readings.Count), [.. table.Questions.Select(TableQuestions.Sentence)]);
        if (request.Json) terminal.Out.Write(NotebookJson.Text(said));
        else
        {
            if (request.Out is not null) terminal.Out.Write($"Written: {said.Runs} runs, {said.Readings} readings of {said.Options} cooling options in {Cells.Clean(request.Out)}\n");
            foreach (var question in said.LeftOut) terminal.Error.WriteLine($"coolproof: {question}");
        }
        terminal.Out.Flush();
        return Exit.Done;
    }
}
