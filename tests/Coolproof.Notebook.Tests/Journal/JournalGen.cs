using Coolproof.Notebook.Journal;
using CsCheck;

namespace Coolproof.Notebook.Tests.Journal;

/// <summary>Random journals: few things and devices and much said about them, so that everything meets everything.</summary>
internal static class JournalGen
{
    private const int Things = 3;

    private static readonly string[] Kinds =
    [
        EntryKind.OptionSet, EntryKind.PartSet, EntryKind.DaySet, EntryKind.RunBegin, EntryKind.RunCountdown, EntryKind.RunGo, EntryKind.RunStop, EntryKind.RunHalt, EntryKind.RunDown,
            EntryKind.RunUp, EntryKind.RunLap, EntryKind.RunFan, EntryKind.RunSet, EntryKind.RunAbandon, EntryKind.Shot, EntryKind.ShotSet, EntryKind.ShotRead, EntryKind.Weather, EntryKind.CoolDownBegin,
            EntryKind.CoolDownEnd, EntryKind.Charge, EntryKind.Remove, EntryKind.Undo, EntryKind.Undo, EntryKind.Nudge, EntryKind.RunSame, EntryKind.RunTwo, EntryKind.ClockChoice,
            EntryKind.ClockOffset, EntryKind.DeviceSet, EntryKind.SettingSet, EntryKind.Photo,
    ];

    private static readonly Gen<(string Kind, int Thing, int Other, int Device, int At, int Value, int Refers, bool Corrects)> Said =
        from kind in Gen.Int[0, Kinds.Length - 1].Select(i => Kinds[i])
        from thing in Gen.Int[0, Things - 1]
        from other in Gen.Int[0, Things - 1]
        from device in Gen.Int[0, 2]
        from at in Gen.Int[0, 40]
        from value in Gen.Int[0, 9]
        from refers in Gen.Int[0, 39]
        from corrects in Gen.Bool
        select (kind, thing, other, device, at, value, refers, corrects);

    /// <summary>Journals of up to forty entries; some refer to entries that are not there, or come before what they refer to, or go round in circles.</summary>
    public static readonly Gen<StoredEntry[]> Entries = Said.Array[1, 40].Select(said => said.Select((one, i) => Entry(i, one)).ToArray());

    /// <summary>An entry by number.</summary>
    public static StoredEntry Stored(int number, string kind, Guid about, int device, Guid? corrects, double at, params (string, object?)[] body) =>
        new(new Entry(EntryId(number), kind, Taps.At(at), about, corrects, EntryBody.Of(body)), Taps.Id(10 + device), 0, Taps.Start);

    private static Guid EntryId(int number) => Taps.Id(100_000 + number);

    private static StoredEntry Entry(int i, (string Kind, int Thing, int Other, int Device, int At, int Value, int Refers, bool Corrects) one)
    {
        Guid Of(int type, int thing) => Taps.Id((100 * type) + thing);
        Guid day = Of(1, 0), option = Of(2, one.Thing), run = Of(3, one.Thing), otherRun = Of(3, one.Other), shot = Of(4, one.Thing), cooling = Of(5, one.Thing), part = Of(6, one.Thing);
        Guid refers = EntryId(one.Refers);
        (Guid about, (string, object?)[] body) = one.Kind switch
        {
            EntryKind.OptionSet => (option, [(one.Value % 2 == 0 ? "name" : "mount", one.Value < 8 ? $"v{one.Value}" : null)]),
            EntryKind.PartSet => (part, [("option", Of(2, one.Other)), ("price", one.Value)]),
            EntryKind.DaySet => (day, [(one.Value % 2 == 0 ? "name" : "venue", $"v{one.Value}")]),
            EntryKind.RunBegin => (run, [("day", day), ("option", option), ("kind", "test"), ("number", 1 + (one.Value % 2))]),
            EntryKind.RunCountdown => (run, [("seconds", one.Value), ("driveS", 300)]),
            EntryKind.RunFan => (run, [("when", one.Value % 2 == 0 ? "before" : "after"), ("turning", one.Value % 3 == 0 ? null : one.Value % 3 == 1)]),
            EntryKind.RunSet => (run, [(one.Value % 2 == 0 ? "driver" : "number", one.Value % 2 == 0 ? $"v{one.Value}" : 1 + (one.Value % 3))]),
            EntryKind.RunAbandon => (run, [("because", $"v{one.Value}")]),
            EntryKind.Shot => (shot, [("run", otherRun), ("spot", "can")]),
            EntryKind.ShotSet => (shot, [("note", $"v{one.Value}")]),
            EntryKind.ShotRead => (shot, [("shot", shot), ("value", 50 + one.Value), ("unit", "c")]),
            EntryKind.Weather => (day, [("day", day), ("airC", 20 + one.Value)]),
            EntryKind.CoolDownBegin => (cooling, [("run", otherRun), ("way", "shade")]),
            EntryKind.CoolDownEnd => (cooling, []),
            EntryKind.Charge => (run, [("run", run), ("mah", 1000 + one.Value)]),
            EntryKind.Remove => (Of(1 + one.Value % 6, one.Thing), []),
            EntryKind.Undo => (run, [("of", refers)]),
            EntryKind.Nudge => (run, [("of", refers), ("seconds", (one.Value - 4) * 0.1)]),
            EntryKind.RunSame or EntryKind.RunTwo => (run, [("other", otherRun)]),
            EntryKind.ClockChoice => (run, [("run", run), ("event", one.Value % 2 == 0 ? "go" : "stop"), ("entry", refers)]),
            EntryKind.ClockOffset => (Taps.Id(10 + one.Device), [("ms", (one.Value - 4) * 700)]),
            EntryKind.DeviceSet => (Taps.Id(10 + one.Other), [("role", one.Value % 2 == 0 ? "clock" : "driver")]),
            EntryKind.SettingSet => (Of(7, one.Thing), [("temperatureUnit", one.Value % 2 == 0 ? "c" : "f")]),
            EntryKind.Photo => (Of(8, one.Thing), [("about", option), ("type", "image/jpeg"), ("bytes", 1 + one.Value), ("width", 1), ("height", 1)]),
            _ => (run, Array.Empty<(string, object?)>()),
        };
        return Stored(i, one.Kind, about, one.Device, one.Corrects ? refers : null, one.At, body);
    }
}
