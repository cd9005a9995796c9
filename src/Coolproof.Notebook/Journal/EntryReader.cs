using System.Collections.Frozen;
using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Unicode;
using Coolproof.Notebook.Journal.Rules;
using NodaTime;

namespace Coolproof.Notebook.Journal;

/// <summary>Reads entries from JSON by docs/formats/entries.md; names every fault with its remedy.</summary>
public static class EntryReader
{
    /// <summary>Most entries in a batch.</summary>
    public const int LargestBatch = 1000;

    /// <summary>Largest batch, bytes of JSON.</summary>
    public const int LargestBatchBytes = 8_000_000;

    /// <summary>Most faults that are listed.</summary>
    public const int ListedFaults = 200;

    private static readonly FrozenSet<string>.AlternateLookup<ReadOnlySpan<char>> Kinds = KindRules.All.Select(rule => rule.Kind).ToFrozenSet(StringComparer.Ordinal).GetAlternateLookup<ReadOnlySpan<char>>();

    private const int LongestKind = 32;

    private static readonly JsonDocumentOptions Strict = new() { MaxDepth = 8, AllowDuplicateProperties = false };

    /// <summary>Reads a batch {"device": uuid, "sentAt": instant, "entries": [...]}.</summary>
    /// <param name="utf8">The JSON text.</param>
    /// <returns>The batch, or all its faults.</returns>
    public static EntryBatchRead ReadBatch(ReadOnlyMemory<byte> utf8)
    {
        if (utf8.Length > LargestBatchBytes) return Refused($"{utf8.Length} bytes", $"at most {LargestBatchBytes} bytes: send fewer entries at once");
        if (!Utf8.IsValid(utf8.Span)) return Refused("bytes that are no UTF-8", "JSON in UTF-8");
        JsonDocument document;
        try
        {
            document = JsonDocument.Parse(utf8, Strict);
        }
        catch (Exception failure) when (IsOfJson(failure))
        {
            return Refused("no JSON: " + failure.Message, "a JSON object with device, sentAt and entries");
        }

        using (document) return ReadBatch(document.RootElement);
    }

    /// <summary>Reads the body of an entry that was read and kept before; what a newer version wrote is kept as it is.</summary>
    /// <param name="utf8">A flat JSON object.</param>
    /// <exception cref="FormatException">No flat JSON object.</exception>
    public static EntryBody ReadKeptBody(ReadOnlySpan<byte> utf8)
    {
        try
        {
            if (KeptBody.Read(utf8) is { } body) return body;
            using JsonDocument document = JsonDocument.Parse(utf8.ToArray(), Strict);
            return BodyOf(document.RootElement, (_, reason, remedy) => throw new FormatException($"{reason}; expected {remedy}"));
        }
        catch (Exception failure) when (IsOfJson(failure))
        {
            throw new FormatException("The body of a kept entry is no JSON.", failure);
        }
    }

    /// <summary>Reads the kind of a kept entry, be it one that only a newer version knows. The same kind is the same text in memory.</summary>
    /// <param name="utf8">Its name.</param>
    public static string ReadKeptKind(ReadOnlySpan<byte> utf8)
    {
        Span<char> name = stackalloc char[LongestKind];
        return Encoding.UTF8.TryGetChars(utf8, name, out int length) && Kinds.TryGetValue(name[..length], out string? kind) ? kind : Encoding.UTF8.GetString(utf8);
    }

    private static EntryBatchRead ReadBatch(JsonElement root)
    {
        if (root.ValueKind != JsonValueKind.Object) return Refused("no object", "a JSON object with device, sentAt and entries");
        List<EntryFault> faults = [];
        Guid device = Guid.Empty;
        if (!root.TryGetProperty("device", out JsonElement deviceElement) || !TryId(deviceElement, out device)) faults.Add(new(null, "device", "missing, or no UUID", "the UUID of the device that made the entries"));
        Instant? sentAt = null;
        if (root.TryGetProperty("sentAt", out JsonElement sent) && sent.ValueKind != JsonValueKind.Null)
        {
            sentAt = InstantOf(sent);
            if (sentAt is null) faults.Add(new(null, "sentAt", "no instant", EntryText.InstantRemedy));
        }

        List<Entry> entries = [];
        if (!root.TryGetProperty("entries", out JsonElement list) || list.ValueKind != JsonValueKind.Array) faults.Add(new(null, "entries", "missing, or no list", "a list of entries"));
        else if (list.GetArrayLength() > LargestBatch) faults.Add(new(null, "entries", $"{list.GetArrayLength()} entries", $"at most {LargestBatch} at once"));
        else ReadEntries(list, entries, faults);
        return faults.Count > 0 ? new EntryBatchRead(null, [.. faults.Take(ListedFaults)]) : new EntryBatchRead(new EntryBatch(device, sentAt, entries), []);
    }

    private static void ReadEntries(JsonElement list, List<Entry> entries, List<EntryFault> faults)
    {
        int index = 0;
        foreach (JsonElement element in list.EnumerateArray())
        {
            if (faults.Count >= ListedFaults) return;
            if (EntryReading.Of(element, index.ToString(CultureInfo.InvariantCulture), faults) is { } entry) entries.Add(entry);
            index++;
        }
    }

    // InvalidOperationException is what the JSON library throws for half a surrogate pair in a name.
    private static bool IsOfJson(Exception failure) => failure is JsonException or InvalidOperationException;

    internal static bool TryId(JsonElement element, out Guid id)
    {
        id = default;
        return element.ValueKind == JsonValueKind.String && EntryText.Of(element) is { } text && Guid.TryParseExact(text, "D", out id) && id != Guid.Empty;
    }

    internal static Instant? InstantOf(JsonElement element) =>
        element.ValueKind == JsonValueKind.String && EntryText.Of(element) is { } text ? EntryText.InstantOf(text) : null;

    internal static EntryBody BodyOf(JsonElement element, Action<string, string, string> fault)
    {
        if (element.ValueKind != JsonValueKind.Object)
        {
            fault("body", "no object", "a flat JSON object, {} where there is nothing to say");
            return EntryBody.Empty;
        }

        List<(string, object?)> fields = [];
        foreach (JsonProperty property in element.EnumerateObject())
        {
            string field = "body." + property.Name;
            object? value = EntryText.ValueOf(property.Value, out bool understood);
            if (understood) fields.Add((property.Name, value));
            else fault(field, "not flat, or not readable", "a text, a number, true, false, null or a list of texts");
        }

        return EntryBody.Of(fields);
    }

    private static EntryBatchRead Refused(string reason, string remedy) => new(null, [new EntryFault(null, "", reason, remedy)]);
}
