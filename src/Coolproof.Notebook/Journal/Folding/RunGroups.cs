namespace Coolproof.Notebook.Journal.Folding;

/// <summary>Which runs were declared the same.</summary>
internal sealed class RunGroups
{
    private readonly Dictionary<Guid, Line[]> _said = [];
    private Dictionary<Guid, Guid[]> _groups = [];
    private Dictionary<(Guid, Guid), bool> _decided = [];

    /// <summary>UUIDs that a run goes by, the smallest first.</summary>
    public Guid[] Of(Guid run) => _groups.TryGetValue(run, out Guid[]? group) ? group : [run];

    /// <summary>Pairs that were decided on, the smaller first; true: the same.</summary>
    public IReadOnlyDictionary<(Guid, Guid), bool> Decided => _decided;

    /// <summary>Groups of more than one UUID, by each of them.</summary>
    public IReadOnlyDictionary<Guid, Guid[]> All => _groups;

    /// <summary>Takes what a thing's lines say of pairs; returns runs whose group may have changed.</summary>
    public IEnumerable<Guid> Take(IEnumerable<(Guid Thing, Line[] Lines)> folded)
    {
        bool changed = false;
        foreach ((Guid thing, Line[] lines) in folded)
        {
            Line[] said = Array.FindAll(lines, line => line.Live && line.Kind is EntryKind.RunSame or EntryKind.RunTwo);
            if (said.Length > 0) _said[thing] = said;
            else if (!_said.Remove(thing)) continue;
            changed = true;
        }

        if (!changed) return [];
        Dictionary<Guid, Guid[]> before = _groups;
        Decide();
        return before.Keys.Union(_groups.Keys);
    }

    private void Decide()
    {
        _decided = [];
        foreach (Line line in _said.Values.SelectMany(lines => lines).Order(Line.InOrder))
        {
            if (line.Body.Id("other") is { } other && other != line.Stored.Entry.About) _decided[Pair(line.Stored.Entry.About, other)] = line.Kind == EntryKind.RunSame;
        }

        Dictionary<Guid, Guid> root = [];
        Guid Root(Guid id)
        {
            while (root.TryGetValue(id, out Guid next) && next != id) id = next;
            return id;
        }

        foreach (((Guid a, Guid b), bool same) in _decided)
        {
            if (!same) continue;
            root.TryAdd(a, a);
            root.TryAdd(b, b);
            (Guid x, Guid y) = (Root(a), Root(b));
            if (x.CompareTo(y) < 0) root[y] = x;
            else root[x] = y;
        }

        _groups = root.Keys.GroupBy(Root).SelectMany(group =>
        {
            Guid[] ids = [.. group.Order()];
            return ids.Select(id => KeyValuePair.Create(id, ids));
        }).ToDictionary();
    }

    /// <summary>A pair, the smaller first.</summary>
    public static (Guid, Guid) Pair(Guid a, Guid b) => a.CompareTo(b) < 0 ? (a, b) : (b, a);
}
