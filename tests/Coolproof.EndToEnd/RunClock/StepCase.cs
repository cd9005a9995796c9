using System.Text.Json;
using System.Text.Json.Nodes;
using Coolproof.Notebook.Journal;
using NodaTime;

namespace Coolproof.EndToEnd.RunClock;

/// <summary>A written case of Data/steps.json: entries as [device, second, kind, body, name of the entry], and what is next.</summary>
sealed record StepCase(string Name, MirrorDay Day, StepAnswer Expected)
{
    static readonly Instant Start = Instant.FromUtc(2026, 6, 13, 15, 0);
    static readonly Guid Run = Named("run"), OfDay = Named("day");

    /// <summary>All cases.</summary>
    public static IReadOnlyList<StepCase> All()
    {
        var cases = JsonNode.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Data", "steps.json")))!.AsArray();
        return [.. cases.Select(one => Of(one!.AsObject()))];
    }

    static StepCase Of(JsonObject one)
    {
        var entries = one["entries"]!.AsArray().Select((entry, index) => EntryOf(entry!.AsArray(), index)).Prepend(Stored("a", Named("0", 7), "run.set", Run, EntryBody.Of(("day", OfDay)), 0));
        return new StepCase(
            (string)one["name"]!, new MirrorDay(OfDay, At((double)one["nowS"]!), (int?)one["shots"] ?? 3, [], [.. entries]),
            new StepAnswer((string)one["step"]!, (double)one["sinceS"]!, (double?)one["leftS"], (int)one["shotsLeft"]!, (int)one["owed"]!));
    }

    static StoredEntry EntryOf(JsonArray entry, int index)
    {
        var (device, atS, kind) = ((string)entry[0]!, (double)entry[1]!, (string)entry[2]!);
        var id = entry.Count > 4 ? Named((string)entry[4]!, 7) : Named($"entry {index}", 7);
        List<(string, object?)> fields = [.. entry[3]!.AsObject().Select(field => (field.Key, Value(field.Key, field.Value)))];
        // What goes without saying in the file: whose day, run and shot.
        if (kind == "run.begin") fields.Add(("day", OfDay));
        if (kind is "shot" or "clock.choice") fields.Add(("run", Run));
        var about = kind switch { "device.set" or "clock.offset" => Named(device), "shot" => id, _ => Run };
        return Stored(device, id, kind, about, EntryBody.Of(fields), atS);
    }

    static object? Value(string name, JsonNode? value) => value!.GetValueKind() switch
    {
        JsonValueKind.Number => (double)value,
        JsonValueKind.True => true,
        JsonValueKind.False => false,
        _ => name is "of" or "entry" or "shot" ? Named((string)value!, 7) : (string)value!,
    };

    static StoredEntry Stored(string device, Guid id, string kind, Guid about, EntryBody body, double atS) => new(new Entry(id, kind, At(atS), about, null, body), Named(device), 1, Start);

    static Instant At(double seconds) => Start + Duration.FromMilliseconds((long)Math.Round(seconds * 1000));

    static Guid Named(string name, int version = 4)
    {
        var bytes = System.Security.Cryptography.SHA256.HashData(System.Text.Encoding.UTF8.GetBytes(name))[..16];
        bytes[6] = (byte)((bytes[6] & 0x0f) | (version << 4));
        bytes[8] = (byte)((bytes[8] & 0x3f) | 0x80);
        return new Guid(bytes, bigEndian: true);
    }
}

/// <summary>What is next, rounded to the millisecond.</summary>
sealed record StepAnswer(string Step, double SinceS, double? LeftS, int ShotsLeft, int Owed)
{
    public static StepAnswer Of(MirrorRun run) => new(run.Step, run.Since / 1000.0, run.Left / 1000.0, run.ShotsLeft, run.Owed);
}
