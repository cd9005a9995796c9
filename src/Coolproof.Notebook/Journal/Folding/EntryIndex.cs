using System.Runtime.InteropServices;

namespace Coolproof.Notebook.Journal.Folding;

/// <summary>All entries, by id, by thing, by device, and by the entry that they refer to.</summary>
internal sealed class EntryIndex
{
    private readonly Dictionary<Guid, StoredEntry> _byId = [];
    private readonly Dictionary<Guid, List<StoredEntry>> _byThing = [];
    private readonly Dictionary<Guid, List<StoredEntry>> _byDevice = [];
    private readonly Dictionary<Guid, List<StoredEntry>> _referring = [];
    private readonly HashSet<Guid> _circular = [];
    private readonly HashSet<Guid> _measuring = [];

    /// <summary>How many entries there are.</summary>
    public int Count => _byId.Count;

    /// <summary>Entries of a thing, in the order of arrival.</summary>
    public IReadOnlyList<StoredEntry> OfThing(Guid thing) => _byThing.TryGetValue(thing, out List<StoredEntry>? list) ? list : [];

    /// <summary>Entries of a device, in the order of arrival.</summary>
    public IReadOnlyList<StoredEntry> OfDevice(Guid device) => _byDevice.TryGetValue(device, out List<StoredEntry>? list) ? list : [];

    /// <summary>Whether a thing is a device that ever measured its clock.</summary>
    public bool Measures(Guid thing) => _measuring.Contains(thing);

    /// <summary>Entries that refer to an entry; those that go round in a circle left out.</summary>
    public IEnumerable<StoredEntry> Referring(Guid entry) =>
        _referring.TryGetValue(entry, out List<StoredEntry>? list) ? _circular.Count == 0 ? list : list.Where(referring => !_circular.Contains(referring.Id)) : [];

    /// <summary>Adds an entry. Returns false for one that is there already.</summary>
    /// <param name="stored">The entry.</param>
    /// <param name="touched">Things that are to be folded again.</param>
    public bool Add(StoredEntry stored, HashSet<Guid> touched)
    {
        if (_byId.TryGetValue(stored.Id, out StoredEntry? known))
        {
            // One id with two contents is a broken device; which one counts must not depend on the order of arrival.
            if (Compare(known, stored) <= 0) return false;
            Remove(known, touched);
        }

        _byId.Add(stored.Id, stored);
        Put(_byDevice, stored.Device, stored);
        if (stored.Entry.Kind == EntryKind.ClockOffset) _measuring.Add(stored.Device);
        if (Subject.Refers(stored) is { } target)
        {
            Put(_referring, target, stored);
            NoteCircle(stored, target);
        }

        (Guid? own, Guid? other) = HomesOf(stored);
        Put(stored, own, touched);
        if (other != own) Put(stored, other, touched);
        PlaceWaiting(stored);
        TouchReferredTo(stored, touched);
        return true;
    }

    /// <summary>Things that an entry belongs to: its own, or those of the entry at the end of its references.</summary>
    public IEnumerable<Guid> Homes(StoredEntry stored)
    {
        (Guid? own, Guid? other) = HomesOf(stored);
        if (own is { } thing) yield return thing;
        if (other is { } further && other != own) yield return further;
    }

    private (Guid? Own, Guid? Other) HomesOf(StoredEntry stored)
    {
        for (int steps = 0; IsAboutAnEntry(stored); steps++)
        {
            // More steps than entries: undos that go round in a circle have no home.
            if (steps > _byId.Count || Subject.Refers(stored) is not { } of || !_byId.TryGetValue(of, out StoredEntry? next)) return (null, null);
            stored = next;
        }

        return (Subject.Of(stored), Subject.OtherOf(stored));
    }

    private void Put(StoredEntry stored, Guid? home, HashSet<Guid> touched)
    {
        if (home is not { } thing) return;
        Put(_byThing, thing, stored);
        touched.Add(thing);
    }

    // What waited for this entry (an undo that came before what it takes back) finds its home now.
    private void PlaceWaiting(StoredEntry arrived)
    {
        if (!_referring.ContainsKey(arrived.Id)) return;
        HashSet<Guid> seen = [];
        Stack<StoredEntry> waiting = new(AboutEntry(arrived.Id));
        while (waiting.TryPop(out StoredEntry? referring))
        {
            if (!seen.Add(referring.Id)) continue;
            foreach (Guid thing in Homes(referring))
            {
                // It may have found its home before, where its references came in several steps.
                if (!OfThing(thing).Any(there => ReferenceEquals(there, referring))) Put(_byThing, thing, referring);
            }

            foreach (StoredEntry further in AboutEntry(referring.Id)) waiting.Push(further);
        }
    }

    private IEnumerable<StoredEntry> AboutEntry(Guid entry) => _referring.TryGetValue(entry, out List<StoredEntry>? list) ? list.Where(IsAboutAnEntry) : [];

    private static bool IsAboutAnEntry(StoredEntry stored) => stored.Entry.Kind is EntryKind.Undo or EntryKind.Nudge;

    private void TouchReferredTo(StoredEntry stored, HashSet<Guid> touched)
    {
        if (Subject.Refers(stored) is null) return;
        HashSet<Guid> seen = [];
        while (Subject.Refers(stored) is { } target && seen.Add(target) && _byId.TryGetValue(target, out StoredEntry? next))
        {
            // An undo's home is that of the entry that it leads to, which is reached below.
            if (!IsAboutAnEntry(next)) touched.UnionWith(Homes(next));
            stored = next;
        }
    }

    // Only one that others refer to already can close a circle.
    private void NoteCircle(StoredEntry stored, Guid target)
    {
        if (!_referring.ContainsKey(stored.Id)) return;
        List<Guid> path = [stored.Id];
        HashSet<Guid> seen = [stored.Id];
        Guid next = target;
        while (_byId.TryGetValue(next, out StoredEntry? entry) && seen.Add(next))
        {
            path.Add(next);
            if (Subject.Refers(entry) is not { } further) return;
            next = further;
        }

        if (next == stored.Id) _circular.UnionWith(path);
    }

    private void Remove(StoredEntry stored, HashSet<Guid> touched)
    {
        touched.UnionWith(Homes(stored));
        TouchReferredTo(stored, touched);
        // Rare enough for the plain way: everything that held it, or hung on it, is sorted out anew.
        StoredEntry[] rest = [.. _byId.Values.Where(entry => entry.Id != stored.Id)];
        _byId.Clear();
        _byThing.Clear();
        _byDevice.Clear();
        _referring.Clear();
        _circular.Clear();
        foreach (StoredEntry entry in rest) Add(entry, touched);
    }

    private static void Put(Dictionary<Guid, List<StoredEntry>> lists, Guid key, StoredEntry stored)
    {
        ref List<StoredEntry>? list = ref CollectionsMarshal.GetValueRefOrAddDefault(lists, key, out _);
        list ??= new List<StoredEntry>(2);
        list.Add(stored);
    }

    private static int Compare(StoredEntry a, StoredEntry b)
    {
        if (a.Device == b.Device && a.Entry.Equals(b.Entry)) return 0;
        return string.CompareOrdinal(Text(a), Text(b));
    }

    private static string Text(StoredEntry stored) =>
        $"{stored.Device:D} {stored.Entry.At.ToUnixTimeMilliseconds():D20} {stored.Entry.Kind} {stored.Entry.About:D} {stored.Entry.Corrects:D} {stored.Entry.Body.Json()}";
}
