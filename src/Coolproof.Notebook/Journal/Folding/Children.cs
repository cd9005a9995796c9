namespace Coolproof.Notebook.Journal.Folding;

/// <summary>Which things hang on which: shots and coolings on runs, parts on options, checks on instruments.</summary>
internal sealed class Children
{
    private readonly Dictionary<(Guid Parent, ThingType Type), HashSet<Guid>> _of = [];

    /// <summary>The thing that a thing hangs on.</summary>
    public static Guid? ParentOf(NotedThing? thing) => thing switch
    {
        NotedShot shot => shot.Run,
        NotedCoolDown cooling => cooling.Run,
        NotedPart part => part.Option,
        NotedGunCheck check => check.Instrument,
        _ => null,
    };

    /// <summary>Things of a type that hang on a thing.</summary>
    public IEnumerable<Guid> Of(Guid parent, ThingType type) => _of.TryGetValue((parent, type), out HashSet<Guid>? children) ? children : [];

    /// <summary>Hangs a thing elsewhere; both parents are to be folded again.</summary>
    public void Move(Guid child, ThingType type, Guid? before, Guid? after, HashSet<Guid> parents)
    {
        if (before is { } old)
        {
            parents.Add(old);
            if (before != after) _of[(old, type)].Remove(child);
        }

        if (after is not { } next) return;
        parents.Add(next);
        if (!_of.TryGetValue((next, type), out HashSet<Guid>? children)) _of[(next, type)] = children = [];
        children.Add(child);
    }
}
