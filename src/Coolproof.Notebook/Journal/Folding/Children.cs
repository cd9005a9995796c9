namespace Coolproof.Notebook.Journal.Folding;

/// <summary>Which things hang on which: shots and coolings on runs, parts on options, checks on instruments.</summary>
internal sealed class Children
{
    private readonly Dictionary<Guid, List<Guid>>[] _of = [.. Enumerable.Range(0, Subject.Types).Select(_ => new Dictionary<Guid, List<Guid>>())];

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
    public IReadOnlyList<Guid> Of(Guid parent, ThingType type) => _of[(int)type].TryGetValue(parent, out List<Guid>? children) ? children : [];

    /// <summary>Hangs a thing elsewhere; both parents are to be folded again.</summary>
    public void Move(Guid child, ThingType type, Guid? before, Guid? after, HashSet<Guid> parents)
    {
        if (before is { } old) parents.Add(old);
        if (after is { } next) parents.Add(next);
        if (before == after) return;
        Dictionary<Guid, List<Guid>> of = _of[(int)type];
        if (before is { } left) of[left].Remove(child);
        if (after is not { } taken) return;
        if (!of.TryGetValue(taken, out List<Guid>? children)) of[taken] = children = new List<Guid>(4);
        children.Add(child);
    }
}
