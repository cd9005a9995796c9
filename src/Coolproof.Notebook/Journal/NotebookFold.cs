using Coolproof.Notebook.Journal.Folding;

namespace Coolproof.Notebook.Journal;

/// <summary>
/// Keeps a notebook up to date while entries arrive, folding again only the things that they touch. One thread at a time may add; the notebooks it hands out never
/// change and may be read anywhere.
/// </summary>
public sealed class NotebookFold
{
    private static readonly ThingType[] Leaves = [.. Enum.GetValues<ThingType>().Where(type => type is not (ThingType.Run or ThingType.Option or ThingType.Instrument))];

    private readonly EntryIndex _index = new();
    private readonly Clocks _clocks = new();
    private readonly RunGroups _groups = new();
    private readonly Children _children = new();
    private readonly FillingShelf<NotedThing>[] _things = [.. Enumerable.Range(0, Subject.Types).Select(_ => new FillingShelf<NotedThing>())];
    private readonly Dictionary<Guid, uint> _types = [];
    private readonly FillingShelf<Line[]> _lines = new();

    /// <summary>What all entries so far add up to.</summary>
    public PitNotebook Notebook { get; private set; } = PitNotebook.Empty;

    /// <summary>Adds entries, in any order; those that are there already change nothing.</summary>
    /// <param name="entries">Entries.</param>
    /// <returns>The notebook with them.</returns>
    public PitNotebook Add(IEnumerable<StoredEntry> entries)
    {
        ArgumentNullException.ThrowIfNull(entries);
        HashSet<Guid> touched = [];
        long cursor = Notebook.Cursor;
        foreach (StoredEntry stored in entries)
        {
            cursor = Math.Max(cursor, stored.Seq);
            _index.Add(stored, touched);
        }

        if (touched.Count > 0) Fold(touched);
        if (touched.Count == 0 && cursor == Notebook.Cursor && _index.Count == Notebook.Entries) return Notebook;
        Shelves shelves = new([.. _things.Select(shelf => shelf.Snapshot())], _lines.Snapshot(), _groups.All, _groups.Decided);
        return Notebook = new PitNotebook(shelves, _index.Count, cursor);
    }

    private void Fold(HashSet<Guid> touched)
    {
        foreach (FillingShelf<NotedThing> shelf in _things) shelf.Expect(touched.Count);
        _lines.Expect(touched.Count);
        Lines lines = new(_index, _clocks);
        MoveClocks(touched, lines);
        Dictionary<Guid, Line[]> folded = new(touched.Count);
        foreach (Guid thing in touched) folded[thing] = lines.Of(thing);
        HashSet<Guid> parents = [];
        bool roles = false;
        foreach ((Guid thing, Line[] its) in folded)
        {
            if (its.Length > 0) _lines[thing] = its;
            else _lines.Remove(thing);
            // Nearly every thing is of one type, and stays it.
            uint types = Types(its), before = _types.GetValueOrDefault(thing);
            _types[thing] = types;
            foreach (ThingType type in Leaves)
            {
                if (((types | before) >> (int)type & 1) != 0) roles |= FoldLeaf(type, thing, its, parents);
            }
        }

        parents.UnionWith(touched);
        foreach (Guid thing in parents) FoldParts(thing);
        parents.UnionWith(_groups.Take(folded.Select(pair => (pair.Key, pair.Value))));
        // Whose stamps count may change in every run when a device's role does.
        if (roles) parents.UnionWith(_things[(int)ThingType.Run].Keys);
        foreach (Guid run in parents)
        {
            if (Is(run, ThingType.Run) || _things[(int)ThingType.Run][run] is not null) FoldRun(run);
        }
    }

    // A device that measured its clock anew moves those of its entries that the measurement holds for.
    private void MoveClocks(HashSet<Guid> touched, Lines lines)
    {
        foreach (Guid device in touched.Where(thing => _index.Measures(thing)).ToArray())
        {
            (NodaTime.Instant, double)[] offsets =
            [
                .. lines.Of(device).Where(line => line.Live && line.Kind == EntryKind.ClockOffset).OrderBy(line => line.Stored.Entry.At).ThenBy(line => line.Id)
                    .Select(line => (line.Stored.Entry.At, line.Body.Number("ms") ?? 0)),
            ];
            foreach (StoredEntry moved in _clocks.Set(device, offsets, _index.OfDevice(device))) touched.UnionWith(_index.Homes(moved));
        }
    }

    private bool FoldLeaf(ThingType type, Guid thing, Line[] lines, HashSet<Guid> parents)
    {
        FillingShelf<NotedThing> shelf = _things[(int)type];
        NotedThing? before = shelf[thing];
        NotedThing? after = LeafFold.Of(type, thing, lines, type == ThingType.Device ? _clocks.Latest(thing) : null);
        if (after is null) shelf.Remove(thing);
        else shelf[thing] = after;
        _children.Move(thing, type, Children.ParentOf(before), Children.ParentOf(after), parents);
        return type == ThingType.Device && (before as NotedDevice)?.Role != (after as NotedDevice)?.Role;
    }

    private void FoldParts(Guid thing)
    {
        Line[] lines = _lines[thing] ?? [];
        if (Is(thing, ThingType.Option) || _things[(int)ThingType.Option][thing] is not null) FoldParent(ThingType.Option, thing, lines, (fields, since, removed) => new NotedOption(thing, fields, since, removed, Of<NotedPart>(thing, ThingType.Part)));
        if (Is(thing, ThingType.Instrument) || _things[(int)ThingType.Instrument][thing] is not null) FoldParent(ThingType.Instrument, thing, lines, (fields, since, removed) => new NotedInstrument(thing, fields, since, removed, Of<NotedGunCheck>(thing, ThingType.GunCheck)));
    }

    private bool Is(Guid thing, ThingType type) => (_types.GetValueOrDefault(thing) >> (int)type & 1) != 0;

    private static uint Types(Line[] lines)
    {
        uint types = 0;
        foreach (Line line in lines)
        {
            if (line.Type is { } type) types |= 1u << (int)type;
        }

        return types;
    }

    private void FoldParent(ThingType type, Guid thing, Line[] lines, Func<EntryBody, NodaTime.Instant, bool, NotedThing> make)
    {
        Line[] live = LeafFold.LiveOf(type, lines);
        if (live.Length == 0) _things[(int)type].Remove(thing);
        else _things[(int)type][thing] = make(FieldMerge.Of(live), live[0].Tapped, LeafFold.Removed(lines));
    }

    private List<T> Of<T>(Guid parent, ThingType type) where T : NotedThing =>
        [.. _children.Of(parent, type).Select(child => (T)_things[(int)type][child]!).Where(child => !child.Removed).Order<T>(PitNotebook.InList)];

    private void FoldRun(Guid run)
    {
        Guid[] ids = _groups.Of(run);
        foreach (Guid other in ids.AsSpan(1)) _things[(int)ThingType.Run].Remove(other);
        Line[] lines = ids.Length == 1
            ? _lines[run] ?? []
            : [.. ids.SelectMany(id => _lines[id] ?? []).DistinctBy(line => line.Id).Order(Line.InOrder)];
        NotedRun? folded = lines.Length == 0 ? null : RunFold.Of(
            ids, lines, ids.SelectMany(id => _children.Of(id, ThingType.Shot)).Select(shot => (NotedShot)_things[(int)ThingType.Shot][shot]!),
            ids.SelectMany(id => _children.Of(id, ThingType.CoolDown)).Select(cooling => (NotedCoolDown)_things[(int)ThingType.CoolDown][cooling]!), RoleOf);
        if (folded is null) _things[(int)ThingType.Run].Remove(ids[0]);
        else _things[(int)ThingType.Run][ids[0]] = folded;
    }

    private DeviceRole RoleOf(Guid device) => (_things[(int)ThingType.Device][device] as NotedDevice)?.Role ?? DeviceRole.Any;
}
