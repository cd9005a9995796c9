using NodaTime;

namespace Coolproof.Notebook.Journal;

/// <summary>An entry beside what the keeper of the journal adds to it.</summary>
/// <param name="Entry">The entry as made.</param>
/// <param name="Device">The device that made it: its author.</param>
/// <param name="Seq">Its place in this store, from 1, rising in the order of commits; another store that holds the same entry gives it another.</param>
/// <param name="Kept">The server's clock when it was committed.</param>
public sealed record StoredEntry(Entry Entry, Guid Device, long Seq, Instant Kept)
{
    /// <summary>The entry's id.</summary>
    public Guid Id => Entry.Id;
}
