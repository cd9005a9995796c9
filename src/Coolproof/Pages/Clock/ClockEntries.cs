using System.Text.Json;
using Coolproof.Notebook.Journal;
using Coolproof.Pages.Shown;
using Coolproof.Pictures;
using NodaTime;

namespace Coolproof.Pages.Clock;

/// <summary>
/// What a run clock needs of the notebook: the entries about one day, its runs and the devices that spoke of them, and the names of things. A phone folds them itself,
/// with what it holds back in its outbox, so that it goes on when the bench is out of reach.
/// </summary>
internal static class ClockEntries
{
    // Of a device's measurements of its clock those before the day matter no more, but for the last.
    static readonly Duration Before = Duration.FromDays(2);

    /// <summary>The answer as JSON: cursor, how many entries the day has, names of things, and the entries after a cursor.</summary>
    /// <param name="notebook">The notebook.</param>
    /// <param name="day">The day.</param>
    /// <param name="after">Entries up to this seq are known to the phone.</param>
    /// <param name="now">The server's clock.</param>
    /// <param name="advised">The option that is advised next once the plan is driven; null: none is.</param>
    public static byte[] Json(PitNotebook notebook, NotedDay day, long after, Instant now, NotedOption? advised = null)
    {
        var entries = Of(notebook, day);
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream))
        {
            json.WriteStartObject();
            json.WriteNumber("cursor", notebook.Cursor);
            json.WriteNumber("count", entries.Count);
            json.WriteString("serverAt", now.ToDateTimeUtc());
            json.WritePropertyName("things");
            Things(json, notebook, day, advised);
            json.WriteStartArray("entries");
            foreach (var entry in entries.Where(entry => entry.Seq > after)) EntryWriter.Write(json, entry);
            json.WriteEndArray();
            json.WriteEndObject();
        }
        return stream.ToArray();
    }

    /// <summary>Entries about a day, its runs (removed ones too: their removal must be known) and the devices among their authors; each once.</summary>
    public static IReadOnlyCollection<StoredEntry> Of(PitNotebook notebook, NotedDay day)
    {
        Dictionary<Guid, StoredEntry> entries = [];
        void Add(Guid thing)
        {
            foreach (var line in notebook.History(thing)) entries[line.Stored.Id] = line.Stored;
        }
        Add(day.Id);
        foreach (var run in notebook.RunsEver(day.Id)) Add(run.Id);
        if (entries.Count == 0) return entries.Values;
        var first = entries.Values.Min(entry => entry.Entry.At) - Before;
        var devices = entries.Values.Select(entry => entry.Device).Concat(notebook.Devices.Where(device => device.Role != DeviceRole.Any).Select(device => device.Id)).Distinct().ToList();
        foreach (var device in devices)
        {
            var said = notebook.History(device).Select(line => line.Stored).ToList();
            var lastBefore = said.LastOrDefault(stored => stored.Entry.Kind == EntryKind.ClockOffset && stored.Entry.At < first);
            foreach (var stored in said)
            {
                if (stored.Entry.Kind != EntryKind.ClockOffset || stored.Entry.At >= first || stored.Id == lastBefore?.Id) entries[stored.Id] = stored;
            }
        }
        return entries.Values;
    }

    static void Things(Utf8JsonWriter json, PitNotebook notebook, NotedDay day, NotedOption? advised)
    {
        var motor = day.Motor is { } id ? notebook.Find<NotedMotor>(id) : null;
        json.WriteStartObject();
        json.WriteString("name", day.Name.Length > 0 ? day.Name : day.Date?.ToString("d MMMM uuuu", System.Globalization.CultureInfo.InvariantCulture) ?? "a day");
        json.WriteNumber("utcOffsetMin", day.UtcOffset.Seconds / 60.0);
        Number(json, "driveS", day.DriveS);
        json.WriteNumber("shots", day.ShotsPerRun);
        json.WriteString("surface", motor?.Surface?.ToString().ToLowerInvariant() ?? "unknown");
        Number(json, "canLimitC", motor?.CanLimitC);
        if (Rehearsals.GuidedRehearsal.SeedOf(notebook, day) is not null)
        {
            json.WriteStartObject("rehearsal");
            json.WriteNumber("fromMs", Rehearsals.GuidedRehearsal.BeginsAt(day).ToUnixTimeMilliseconds());
            json.WriteEndObject();
        }
        else json.WriteNull("rehearsal");
        json.WriteStartArray("plan");
        foreach (var option in day.Plan) json.WriteStringValue(option);
        json.WriteEndArray();
        // Advice is of so many runs: a phone that knows of more has none until the bench says more.
        json.WriteString("advised", advised?.Id.ToString("D"));
        json.WriteNumber("advisedAfter", notebook.RunsOf(day.Id).Count);
        Each(json, "options", OptionsOf(notebook, day), option =>
        {
            var look = OptionLooks.Of(notebook, option);
            json.WriteString("colour", look.ColourHex);
            json.WriteString("path", MarkOutline.SvgPath(look.Mark, 8));
            if (HasFan(option) is { } fan) json.WriteBoolean("fan", fan);
            else json.WriteNull("fan");
        });
        Each(json, "instruments", InstrumentsOf(notebook, day), instrument =>
        {
            json.WriteString("type", instrument.Kind.ToString().ToLowerInvariant());
            json.WriteString("unit", instrument.Unit switch { Notebook.TemperatureUnitChoice.Celsius => "c", Notebook.TemperatureUnitChoice.Fahrenheit => "f", _ => null });
        });
        Each(json, "packs", notebook.Packs, _ => { });
        Each(json, "devices", notebook.Devices, device => json.WriteString("role", device.Role.ToString().ToLowerInvariant()));
        json.WriteEndObject();
    }

    static void Each<T>(Utf8JsonWriter json, string name, IEnumerable<T> things, Action<T> more) where T : NotedThing
    {
        json.WriteStartArray(name);
        foreach (var thing in things)
        {
            json.WriteStartObject();
            json.WriteString("id", thing.Id);
            json.WriteString("name", thing.Name);
            more(thing);
            json.WriteEndObject();
        }
        json.WriteEndArray();
    }

    // Those of the question first, in its order; the others can be chosen too.
    static IEnumerable<NotedOption> OptionsOf(PitNotebook notebook, NotedDay day)
    {
        var asked = day.Question is { } id ? notebook.Find<NotedQuestion>(id)?.Options ?? [] : [];
        return notebook.Options.OrderBy(option => asked.IndexOf(option.Id) is >= 0 and var place ? place : int.MaxValue);
    }

    static IEnumerable<NotedInstrument> InstrumentsOf(PitNotebook notebook, NotedDay day) => notebook.Instruments.OrderBy(instrument => instrument.Id == day.Instrument ? 0 : 1);

    // Null where nothing tells: then the clock asks, and takes "no fan" for an answer.
    static bool? HasFan(NotedOption option) =>
        option.Fans is { } fans ? fans > 0 : option.FanSizeMm is not null || option.FanV is not null ? true : null;

    static int IndexOf(this IReadOnlyList<Guid> ids, Guid id)
    {
        for (var i = 0; i < ids.Count; i++)
            if (ids[i] == id) return i;
        return -1;
    }

    static void Number(Utf8JsonWriter json, string name, double? value)
    {
        if (value is { } number) json.WriteNumber(name, number);
        else json.WriteNull(name);
    }
}
