using System.Collections.Immutable;
using System.Diagnostics.CodeAnalysis;

namespace Coolproof.Notebook.Journal.Folding;

/// <summary>What lay on a shelf at one time, by UUID. Never changes; may be read by many at once.</summary>
/// <typeparam name="T">What lies there.</typeparam>
internal sealed class Shelf<T> where T : class
{
    private readonly Dictionary<Guid, T> _ground;
    private readonly ImmutableDictionary<Guid, T?> _since;

    internal Shelf(Dictionary<Guid, T> ground, ImmutableDictionary<Guid, T?> since) => (_ground, _since) = (ground, since);

    /// <summary>Nothing.</summary>
    public static Shelf<T> Empty { get; } = new([], ImmutableDictionary<Guid, T?>.Empty);

    /// <summary>All that lies there, in no order.</summary>
    public IEnumerable<T> Values => _since.IsEmpty
        ? _ground.Values
        : _ground.Where(pair => !_since.ContainsKey(pair.Key)).Select(pair => pair.Value).Concat(_since.Values.OfType<T>());

    /// <summary>What lies under a UUID; null for nothing.</summary>
    public T? Find(Guid id) => !_since.IsEmpty && _since.TryGetValue(id, out T? changed) ? changed : _ground.GetValueOrDefault(id);
}

/// <summary>
/// A shelf that goes on filling while earlier states of it are read: what was handed out is left alone, and what changes after lies in a small layer above it. A layer
/// that has grown to a good part of what lies below, as when a whole notebook is read, is worked into a ground of its own.
/// </summary>
/// <typeparam name="T">What lies there.</typeparam>
internal sealed class FillingShelf<T> where T : class
{
    private const int LayerShare = 8, SmallLayer = 64;

    private Dictionary<Guid, T> _ground = [];
    private readonly ImmutableDictionary<Guid, T?>.Builder _since = ImmutableDictionary.CreateBuilder<Guid, T?>();
    private bool _handedOut;

    /// <summary>UUIDs under which something lies.</summary>
    public IEnumerable<Guid> Keys => _since.Count == 0
        ? _ground.Keys
        : _ground.Keys.Where(id => !_since.ContainsKey(id)).Concat(_since.Where(pair => pair.Value is not null).Select(pair => pair.Key));

    /// <summary>What lies under a UUID; null for nothing.</summary>
    [DisallowNull]
    public T? this[Guid id]
    {
        get => _since.Count > 0 && _since.TryGetValue(id, out T? changed) ? changed : _ground.GetValueOrDefault(id);
        set => Put(id, value);
    }

    /// <summary>Takes away what lies under a UUID.</summary>
    public void Remove(Guid id)
    {
        if (this[id] is not null) Put(id, null);
    }

    /// <summary>Makes ready for many changes at once.</summary>
    /// <param name="changes">About how many.</param>
    public void Expect(int changes)
    {
        if (_handedOut && IsLarge(_since.Count + changes)) Settle();
    }

    /// <summary>The shelf as it stands.</summary>
    public Shelf<T> Snapshot()
    {
        if (_handedOut && IsLarge(_since.Count)) Settle();
        _handedOut = true;
        return new Shelf<T>(_ground, _since.ToImmutable());
    }

    private bool IsLarge(int layer) => layer > SmallLayer + _ground.Count / LayerShare;

    private void Put(Guid id, T? value)
    {
        if (_handedOut) _since[id] = value;
        else if (value is null) _ground.Remove(id);
        else _ground[id] = value;
    }

    private void Settle()
    {
        _ground = new Dictionary<Guid, T>(_ground);
        foreach ((Guid id, T? value) in _since)
        {
            if (value is null) _ground.Remove(id);
            else _ground[id] = value;
        }

        _since.Clear();
        _handedOut = false;
    }
}
