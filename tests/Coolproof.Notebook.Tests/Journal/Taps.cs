using Coolproof.Notebook.Journal;
using NodaTime;

namespace Coolproof.Notebook.Tests.Journal;

/// <summary>Makes entries as devices do: one clock for all, unless a device's is set ahead.</summary>
internal sealed class Taps
{
    /// <summary>When the tests' day begins.</summary>
    public static readonly Instant Start = Instant.FromUtc(2026, 6, 13, 15, 0);

    private readonly List<StoredEntry> _all = [];
    private readonly Dictionary<Guid, double> _aheadS = [];

    public Guid Driver { get; } = Id(1);
    public Guid Clock { get; } = Id(2);
    public Guid Day { get; } = Id(3);
    public Guid Option { get; } = Id(4);
    public Guid Gun { get; } = Id(5);

    /// <summary>All entries so far.</summary>
    public IReadOnlyList<StoredEntry> All => _all;

    /// <summary>The notebook of all entries so far.</summary>
    public PitNotebook Notebook => PitNotebook.Of(_all);

    /// <summary>A UUIDv7 by number.</summary>
    public static Guid Id(int number)
    {
        Span<byte> bytes = stackalloc byte[16];
        bytes[0] = 1;
        bytes[6] = 0x70;
        bytes[8] = 0x80;
        System.Buffers.Binary.BinaryPrimitives.WriteInt32BigEndian(bytes[12..], number);
        return new Guid(bytes, bigEndian: true);
    }

    /// <summary>An instant, s after the start.</summary>
    public static Instant At(double seconds) => Start + Duration.FromMilliseconds((long)Math.Round(seconds * 1000));

    /// <summary>Sets a device's clock ahead.</summary>
    public void SetAhead(Guid device, double seconds) => _aheadS[device] = seconds;

    /// <summary>A tap of the driver's phone.</summary>
    public Guid Tap(double seconds, string kind, Guid about, params (string, object?)[] body) => TapOn(Driver, seconds, kind, about, body);

    /// <summary>A tap of a device.</summary>
    public Guid TapOn(Guid device, double seconds, string kind, Guid about, params (string, object?)[] body) => Add(device, seconds, kind, about, null, body);

    /// <summary>A tap that corrects an entry.</summary>
    public Guid Correct(double seconds, Guid corrects, string kind, Guid about, params (string, object?)[] body) => Add(Driver, seconds, kind, about, corrects, body);

    public Guid Undo(double seconds, Guid of) => Tap(seconds, EntryKind.Undo, Day, ("of", of));

    public Guid Nudge(double seconds, Guid of, double by) => Tap(seconds, EntryKind.Nudge, Day, ("of", of), ("seconds", by));

    /// <summary>A run begun on a device.</summary>
    public Guid Begin(double seconds, int number = 1, Guid? device = null)
    {
        Guid run = Id(1000 + _all.Count);
        TapOn(device ?? Driver, seconds, EntryKind.RunBegin, run, ("day", Day), ("option", Option), ("kind", "test"), ("number", number));
        return run;
    }

    /// <summary>A shot with its number.</summary>
    public Guid Shoot(double seconds, Guid run, double? value = null, string unit = "c")
    {
        Guid shot = Id(1000 + _all.Count);
        Tap(seconds, EntryKind.Shot, shot, ("run", run), ("instrument", Gun), ("spot", "can"), ("hold", "single"), ("surface", "tape"));
        if (value is { } number) Tap(seconds + 3, EntryKind.ShotRead, shot, ("shot", shot), ("value", number), ("unit", unit));
        return shot;
    }

    private Guid Add(Guid device, double seconds, string kind, Guid about, Guid? corrects, (string, object?)[] body)
    {
        Guid id = Id(100_000 + _all.Count);
        Instant at = At(seconds + _aheadS.GetValueOrDefault(device));
        _all.Add(new StoredEntry(new Entry(id, kind, at, about, corrects, EntryBody.Of(body)), device, _all.Count + 1, At(seconds)));
        return id;
    }
}
