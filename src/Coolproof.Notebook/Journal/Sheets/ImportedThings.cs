namespace Coolproof.Notebook.Journal;

/// <summary>Things that a table names: found in the notebook by name, else made.</summary>
internal sealed class ImportedThings(PitNotebook into, Action<string, Guid, string, EntryBody> add, Func<string, Guid> id)
{
    private readonly Dictionary<(string Kind, string Name), Guid> _known = [];

    public Guid Option(string name) => Of(EntryKind.OptionSet, name, into.Options);

    public Guid Instrument(string name) => Of(EntryKind.InstrumentSet, name, into.Instruments);

    public Guid? Vehicle(string? name) => name is null ? null : Of(EntryKind.VehicleSet, name, into.Vehicles);

    public Guid? Motor(string? name) => name is null ? null : Of(EntryKind.MotorSet, name, into.Motors);

    public Guid? Pack(string? name) => name is null ? null : Of(EntryKind.PackSet, name, into.Packs);

    private Guid Of(string kind, string name, IReadOnlyList<NotedThing> there)
    {
        (string, string) key = (kind, name.ToUpperInvariant());
        if (_known.TryGetValue(key, out Guid known)) return known;
        if (there.FirstOrDefault(thing => string.Equals(thing.Name, name, StringComparison.OrdinalIgnoreCase)) is { } found) return _known[key] = found.Id;
        Guid made = id($"{kind}/{name}");
        add(kind, made, $"set/{kind}/{name}", EntryBody.Of(("name", name)));
        return _known[key] = made;
    }
}
