using Coolproof.Notebook.Journal;

namespace Coolproof.Store;

/// <summary>An entry that is to be kept, and its author.</summary>
/// <param name="Device">The device that made it.</param>
/// <param name="Entry">The entry.</param>
public sealed record NewEntry(Guid Device, Entry Entry);
