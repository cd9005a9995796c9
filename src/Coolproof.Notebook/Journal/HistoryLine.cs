using NodaTime;

namespace Coolproof.Notebook.Journal;

/// <summary>One line of a thing's history.</summary>
/// <param name="Stored">The entry: what was said, by which device, and when it was kept.</param>
/// <param name="Said">When it was said, by the corrected clock.</param>
/// <param name="At">When what it speaks of was: seconds ago and nudges included.</param>
/// <param name="Stands">Whether it stands: not taken back, and no other entry stands in for it.</param>
/// <param name="Corrected">The entry that it corrects, takes back or moves; null for none.</param>
/// <param name="Before">For a `*.set`: what the fields that it names held before it; empty else.</param>
public sealed record HistoryLine(StoredEntry Stored, Instant Said, Instant At, bool Stands, Guid? Corrected, EntryBody Before);
