using Coolproof.Notebook.Journal;
using NodaTime;

namespace Coolproof.EndToEnd.Support;

/// <summary>An invented evening in a notebook: two options, a gun or two, runs of a few seconds.</summary>
sealed record Evening(Guid Day, Guid Bare, Guid Fan, Guid Gun, Guid Probe, Guid Pack)
{
    /// <summary>Notes it.</summary>
    /// <param name="bench">Where.</param>
    /// <param name="driveS">Planned drive of a run, s.</param>
    /// <param name="air">Whether the air is noted, so that nobody asks for it.</param>
    public static async Task<Evening> NoteAsync(Bench bench, double driveS, bool air = true)
    {
        var evening = new Evening(Id(), Id(), Id(), Id(), Id(), Id());
        List<Entry> entries =
        [
            Of(EntryKind.OptionSet, evening.Bare, ("name", "Bare can"), ("fans", 0)),
            Of(EntryKind.OptionSet, evening.Fan, ("name", "Clamp with a 25 mm fan"), ("fans", 1)),
            Of(EntryKind.InstrumentSet, evening.Gun, ("name", "Gun A"), ("type", "gun"), ("unit", "c")),
            Of(EntryKind.InstrumentSet, evening.Probe, ("name", "Probe"), ("type", "probe"), ("unit", "c")),
            Of(EntryKind.PackSet, evening.Pack, ("name", "Pack 1")),
            Of(EntryKind.DaySet, evening.Day, ("name", "Invented evening"), ("date", "2026-06-13"), ("driveS", driveS), ("shotsPerRun", 2), ("instrument", evening.Gun),
                ("plan", new[] { evening.Bare, evening.Fan, evening.Fan, evening.Bare })),
        ];
        if (air) entries.Add(Of(EntryKind.Weather, evening.Day, ("day", evening.Day), ("airC", 24.5), ("airBy", "thermometer")));
        await bench.KeepAsync(Id(), [.. entries]);
        return evening;
    }

    /// <summary>A UUID as devices make them.</summary>
    public static Guid Id() => Guid.CreateVersion7();

    static Entry Of(string kind, Guid about, params (string Name, object? Value)[] fields) =>
        new(Id(), kind, SystemClock.Instance.GetCurrentInstant(), about, null, EntryBody.Of(fields));
}
