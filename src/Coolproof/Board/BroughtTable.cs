using Coolproof.Notebook;
using Coolproof.Notebook.Journal;
using Coolproof.Pages.Forms;
using NodaTime;

namespace Coolproof.Board;

/// <summary>What a readings table brings into a notebook that may hold some of its runs already, be it brought on a page or from the command line.</summary>
internal static class BroughtTable
{
    /// <summary>The runs that are there stay as they are, the others come in.</summary>
    public const string Leave = "leave";

    /// <summary>The table's runs come in, those that are there are taken out; history keeps them.</summary>
    public const string Replace = "replace";

    /// <summary>All of the table's runs come in: they are others.</summary>
    public const string Both = "both";

    /// <summary>Entries to keep.</summary>
    /// <param name="table">A table that was understood.</param>
    /// <param name="notebook">Where it is brought to.</param>
    /// <param name="source">Name of its file, if any.</param>
    /// <param name="there">Its runs that are there already.</param>
    /// <param name="choice">What becomes of them: one of the words above.</param>
    /// <param name="now">The clock, for what is taken out.</param>
    /// <param name="into">Days that the table's days are known to be, by name: those of a run sheet; null: none.</param>
    public static IReadOnlyList<Entry> Entries(
        ReadingsTable table, PitNotebook notebook, string? source, RunsThere there, string choice, Instant now, IReadOnlyDictionary<string, Guid>? into = null)
    {
        var plain = TableImport.Of(table, notebook, source, into);
        // The same table again is the same entries, of which the notebook keeps none twice.
        if (choice == Both || there.Runs.Count == 0 || IsThere(plain, notebook)) return plain;
        if (choice == Leave) return there.Rest(table) is { Runs.Count: > 0 } rest ? TableImport.Of(rest, notebook, source, there.Days) : [];
        return [.. TableImport.Of(table, notebook, source, there.Days), .. there.Runs.Select(pair => new Said(EntryKind.Remove, pair.There.Id, EntryBody.Empty).At(now))];
    }

    /// <summary>Whether this very table was brought before.</summary>
    public static bool IsThere(IReadOnlyList<Entry> entries, PitNotebook notebook) => entries is [var first, ..] && notebook.Find<NotedImport>(first.About) is not null;
}
