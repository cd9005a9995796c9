using System.Collections.Immutable;

namespace Coolproof.Notebook.Journal.Folding;

/// <summary>Folded things by type and UUID, and the lines that they were folded of.</summary>
/// <param name="Things">By type.</param>
/// <param name="Lines">By thing.</param>
/// <param name="Groups">Runs declared the same, by each UUID; the smallest first.</param>
/// <param name="Decided">Pairs of runs that were decided on.</param>
internal sealed record Shelves(
    ImmutableArray<Shelf<NotedThing>> Things, Shelf<Line[]> Lines,
    IReadOnlyDictionary<Guid, Guid[]> Groups, IReadOnlyDictionary<(Guid, Guid), bool> Decided)
{
    /// <summary>Nothing yet.</summary>
    public static Shelves Empty { get; } = new(
        [.. Enumerable.Repeat(Shelf<NotedThing>.Empty, Subject.Types)], Shelf<Line[]>.Empty, new Dictionary<Guid, Guid[]>(), new Dictionary<(Guid, Guid), bool>());

    /// <summary>Things of a type.</summary>
    public Shelf<NotedThing> Of(ThingType type) => Things[(int)type];
}
