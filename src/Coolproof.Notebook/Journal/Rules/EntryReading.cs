using System.Globalization;
using System.Text.Json;
using NodaTime;
using NodaTime.Text;

namespace Coolproof.Notebook.Journal.Rules;

/// <summary>Reads one entry and checks it by its kind's rule.</summary>
internal static class EntryReading
{
    private static readonly string[] Names = ["id", "kind", "at", "about", "corrects", "body"];

    /// <summary>The entry; null when a fault was added.</summary>
    /// <param name="element">Its JSON.</param>
    /// <param name="index">Its place in the batch, which names it where its id is no UUID.</param>
    /// <param name="faults">Where faults go.</param>
    public static Entry? Of(JsonElement element, string index, List<EntryFault> faults)
    {
        int before = faults.Count;
        if (element.ValueKind != JsonValueKind.Object)
        {
            faults.Add(new(index, "", "no object", "an entry with id, kind, at, about, corrects and body"));
            return null;
        }

        string name = index;
        void Fault(string field, string reason, string remedy) => faults.Add(new(name, field, reason, remedy));
        if (Member(element, "id") is not { } idElement || !EntryReader.TryId(idElement, out Guid id) || id.Version is not (7 or 8))
        {
            Fault("id", "missing, or no UUID of version 7", "a UUIDv7 made on the device, in its usual form with hyphens");
            id = default;
        }
        else
        {
            name = id.ToString("D");
        }

        Instant? at = Member(element, "at") is { } atElement ? EntryReader.InstantOf(atElement) : null;
        if (at is null) Fault("at", "missing, or no instant between 2000 and 2200", EntryText.InstantRemedy);
        if (Member(element, "about") is not { } aboutElement || !EntryReader.TryId(aboutElement, out Guid about))
        {
            Fault("about", "missing, or no UUID", "the UUID of the thing that the entry speaks of");
            about = default;
        }

        Guid? corrects = null;
        if (Member(element, "corrects") is { ValueKind: not JsonValueKind.Null } correctsElement)
        {
            if (EntryReader.TryId(correctsElement, out Guid corrected) && corrected != id) corrects = corrected;
            else Fault("corrects", "no UUID of another entry", "null, or the id of the entry that this one corrects");
        }

        foreach (JsonProperty property in element.EnumerateObject())
        {
            if (!Names.Contains(property.Name)) Fault(Shown(property.Name), "unknown", "only id, kind, at, about, corrects and body");
        }

        string kind = Member(element, "kind") is { ValueKind: JsonValueKind.String } kindElement ? EntryText.Of(kindElement) ?? "" : "";
        EntryBody body = BodyOf(element, kind, Fault);
        return faults.Count > before ? null : new Entry(id, kind, at!.Value, about, corrects, body);
    }

    private static EntryBody BodyOf(JsonElement element, string kind, Action<string, string, string> fault)
    {
        if (KindRules.Of(kind) is not { } rule)
        {
            fault("kind", kind.Length == 0 ? "missing, or no text" : $"unknown: {Shown(kind)}", "one of the kinds of docs/formats/entries.md; a newer page may need a newer server");
            return EntryBody.Empty;
        }

        if (Member(element, "body") is not { } bodyElement)
        {
            fault("body", "missing", "a flat JSON object, {} where there is nothing to say");
            return EntryBody.Empty;
        }

        bool flat = true;
        EntryBody body = EntryReader.BodyOf(bodyElement, (field, reason, remedy) =>
        {
            flat = false;
            fault(Shown(field), reason, remedy);
        });
        if (flat) BodyCheck.Check(body, rule, fault);
        return body;
    }

    private static JsonElement? Member(JsonElement element, string name) => element.TryGetProperty(name, out JsonElement member) ? member : null;

    /// <summary>A name from outside, short enough to be shown.</summary>
    internal static string Shown(string name) => name.Length <= 60 ? name : name[..60] + "...";

    internal static string Number(double value) => value.ToString(CultureInfo.InvariantCulture);

    internal static bool IsDate(string text) => LocalDatePattern.Iso.Parse(text).Success;

    internal static bool IsDateTime(string text) => LocalDateTimePattern.ExtendedIso.Parse(text).Success;
}
