using NodaTime;

namespace Coolproof.Notebook.Journal;

/// <summary>What a device sends at once: all of it is kept, or none.</summary>
/// <param name="Device">The device: author of the entries.</param>
/// <param name="SentAt">The device's clock when it sent them; null when it did not say.</param>
/// <param name="Entries">The entries, at most <see cref="EntryReader.LargestBatch"/>.</param>
public sealed record EntryBatch(Guid Device, Instant? SentAt, IReadOnlyList<Entry> Entries);

/// <summary>What came of reading a batch: the batch, or everything that is wrong with it.</summary>
/// <param name="Batch">The batch; null when there are faults.</param>
/// <param name="Faults">All faults in the order of entries, at most <see cref="EntryReader.ListedFaults"/>; empty when the batch was understood.</param>
public sealed record EntryBatchRead(EntryBatch? Batch, IReadOnlyList<EntryFault> Faults)
{
    /// <summary>Whether there is a batch.</summary>
    [System.Diagnostics.CodeAnalysis.MemberNotNullWhen(true, nameof(Batch))]
    public bool Understood => Batch is not null;
}
