using Coolproof.Notebook.Journal;

namespace Coolproof.Store;

/// <summary>Entries after a cursor.</summary>
/// <param name="Entries">Entries in the order of seq.</param>
/// <param name="Cursor">Where to read on: the seq of the last entry, or the cursor that was asked for when there are none.</param>
/// <param name="More">Whether there are more.</param>
public sealed record JournalPage(IReadOnlyList<StoredEntry> Entries, long Cursor, bool More);
