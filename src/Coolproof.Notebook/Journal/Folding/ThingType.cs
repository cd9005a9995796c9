namespace Coolproof.Notebook.Journal.Folding;

/// <summary>Types of things. A UUID that entries of two types speak of is one thing of each.</summary>
internal enum ThingType
{
    Class, Vehicle, Motor, Option, Part, Instrument, GunCheck, Pack, Charger, Question, Day, Run, Shot, CoolDown, RaceReading, Photo, Device, Settings, Import, Trace,
}

/// <summary>Which thing an entry speaks of.</summary>
internal static class Subject
{
    public static readonly int Types = Enum.GetValues<ThingType>().Length;

    /// <summary>The type that a kind speaks of; null for kinds that speak of any.</summary>
    public static ThingType? TypeOf(string kind) => kind switch
    {
        EntryKind.ClassSet => ThingType.Class,
        EntryKind.VehicleSet => ThingType.Vehicle,
        EntryKind.MotorSet => ThingType.Motor,
        EntryKind.OptionSet => ThingType.Option,
        EntryKind.PartSet => ThingType.Part,
        EntryKind.InstrumentSet => ThingType.Instrument,
        EntryKind.GunCheckSet => ThingType.GunCheck,
        EntryKind.PackSet => ThingType.Pack,
        EntryKind.ChargerSet => ThingType.Charger,
        EntryKind.QuestionSet => ThingType.Question,
        EntryKind.DaySet or EntryKind.Weather => ThingType.Day,
        EntryKind.Shot or EntryKind.ShotRead or EntryKind.ShotPhoto or EntryKind.ShotSet => ThingType.Shot,
        EntryKind.CoolDownBegin or EntryKind.CoolDownEnd => ThingType.CoolDown,
        EntryKind.RaceReading => ThingType.RaceReading,
        EntryKind.Photo => ThingType.Photo,
        EntryKind.DeviceSet or EntryKind.ClockOffset => ThingType.Device,
        EntryKind.SettingSet => ThingType.Settings,
        EntryKind.Import => ThingType.Import,
        EntryKind.TraceSet => ThingType.Trace,
        EntryKind.Charge or EntryKind.ClockChoice => ThingType.Run,
        _ => kind.StartsWith("run.", StringComparison.Ordinal) ? ThingType.Run : null,
    };

    /// <summary>The thing that an entry speaks of; null where another entry must tell (undo, nudge).</summary>
    public static Guid? Of(StoredEntry stored) => stored.Entry.Kind switch
    {
        EntryKind.ShotRead or EntryKind.ShotPhoto => stored.Entry.Body.Id("shot") ?? stored.Entry.About,
        EntryKind.Charge or EntryKind.ClockChoice => stored.Entry.Body.Id("run") ?? stored.Entry.About,
        EntryKind.Weather => stored.Entry.Body.Id("day") ?? stored.Entry.About,
        EntryKind.ClockOffset => stored.Device,
        EntryKind.Undo or EntryKind.Nudge => null,
        // However often and under whatever UUID they were set, there is one set of settings.
        EntryKind.SettingSet => Guid.Empty,
        _ => stored.Entry.About,
    };

    /// <summary>A second thing that it speaks of: the other run of two.</summary>
    public static Guid? OtherOf(StoredEntry stored) =>
        stored.Entry.Kind is EntryKind.RunSame or EntryKind.RunTwo ? stored.Entry.Body.Id("other") : null;

    /// <summary>The entry that it refers to, so that this one's standing or time depends on it; null for none.</summary>
    public static Guid? Refers(StoredEntry stored) => stored.Entry.Kind switch
    {
        EntryKind.Undo or EntryKind.Nudge => stored.Entry.Body.Id("of"),
        // A field that was set is corrected field by field, by setting it again; the entry stands.
        var kind when kind.EndsWith(".set", StringComparison.Ordinal) => null,
        _ => stored.Entry.Corrects,
    };
}
