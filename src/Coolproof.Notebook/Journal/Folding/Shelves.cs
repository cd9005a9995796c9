using System.Collections.Immutable;

namespace Coolproof.Notebook.Journal.Folding;

/// <summary>Folded things by type and UUID, and the lines that they were folded of.</summary>
/// <param name="Things">By type.</param>
/// <param name="Lines">By thing.</param>
/// <param name="Groups">Runs declared the same, by each UUID; the smallest first.</param>
/// <param name="Decided">Pairs of runs that were decided on.</param>
internal sealed record Shelves(
    ImmutableArray<ImmutableDictionary<Guid, NotedThing>> Things, ImmutableDictionary<Guid, Line[]> Lines,
    IReadOnlyDictionary<Guid, Guid[]> Groups, IReadOnlyDictionary<(Guid, Guid), bool> Decided)
{
    /// <summary>Nothing yet.</summary>
    public static Shelves Empty { get; } = new(
        [.. Enumerable.Repeat(ImmutableDictionary<Guid, NotedThing>.Empty, Subject.Types)], ImmutableDictionary<Guid, Line[]>.Empty, new Dictionary<Guid, Guid[]>(), new Dictionary<(Guid, Guid), bool>());

    /// <summary>Things of a type.</summary>
    public ImmutableDictionary<Guid, NotedThing> Of(ThingType type) => Things[(int)type];
}
