using NodaTime;

namespace Coolproof.Store;

/// <summary>What the store holds after a commit.</summary>
/// <param name="Ids">Ids of the batch, all of them held now: those that were new and those that were there already.</param>
/// <param name="New">How many were new.</param>
/// <param name="Cursor">The largest seq of the store at that commit.</param>
/// <param name="At">The server's clock at that commit.</param>
public sealed record Kept(IReadOnlyList<Guid> Ids, int New, long Cursor, Instant At);
