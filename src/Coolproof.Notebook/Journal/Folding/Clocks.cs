using NodaTime;

namespace Coolproof.Notebook.Journal.Folding;

/// <summary>How far each device's clock was ahead of the server's, and when.</summary>
internal sealed class Clocks
{
    private readonly Dictionary<Guid, (Instant At, double Ms)[]> _offsets = [];

    /// <summary>An entry's instant by the server's clock: by the device's latest measurement before it, else by its first after it.</summary>
    public Instant Corrected(StoredEntry stored) => _offsets.TryGetValue(stored.Device, out (Instant, double)[]? offsets) ? Corrected(stored.Entry.At, offsets) : stored.Entry.At;

    /// <summary>Sets a device's measurements; returns which of its entries move by it.</summary>
    public IEnumerable<StoredEntry> Set(Guid device, (Instant At, double Ms)[] offsets, IReadOnlyList<StoredEntry> entries)
    {
        (Instant, double)[] before = _offsets.GetValueOrDefault(device) ?? [];
        if (before.AsSpan().SequenceEqual(offsets)) return [];
        _offsets[device] = offsets;
        return entries.Where(stored => Corrected(stored.Entry.At, before) != Corrected(stored.Entry.At, offsets));
    }

    /// <summary>The device's latest measurement, ms; null when there is none.</summary>
    public double? Latest(Guid device) => _offsets.TryGetValue(device, out (Instant At, double Ms)[]? offsets) && offsets.Length > 0 ? offsets[^1].Ms : null;

    private static Instant Corrected(Instant at, (Instant At, double Ms)[] offsets)
    {
        if (offsets.Length == 0) return at;
        int low = 0, high = offsets.Length; // the first measurement after `at`
        while (low < high)
        {
            int middle = (low + high) / 2;
            if (offsets[middle].At <= at) low = middle + 1;
            else high = middle;
        }

        return at - Duration.FromMilliseconds((long)Math.Round(offsets[Math.Max(0, low - 1)].Ms));
    }
}
