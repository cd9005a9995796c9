namespace Coolproof.Notebook.Journal;

/// <summary>What is wrong with an entry, and what to do about it.</summary>
/// <param name="Entry">Id of the entry; its index in the batch, from 0, where it has no valid id; null when the whole batch is meant.</param>
/// <param name="Field">The field, such as "at" or "body.seconds"; empty when the whole entry is meant.</param>
/// <param name="Reason">What was found, in plain words.</param>
/// <param name="Remedy">What would be right.</param>
public sealed record EntryFault(string? Entry, string Field, string Reason, string Remedy);
