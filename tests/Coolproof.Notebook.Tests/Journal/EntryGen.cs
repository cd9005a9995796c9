using System.Globalization;
using System.Text.Json.Nodes;
using Coolproof.Notebook.Journal.Rules;
using CsCheck;

namespace Coolproof.Notebook.Tests.Journal;

/// <summary>Random batches as JSON, valid by the rules, some of them spoilt in one place.</summary>
internal static class EntryGen
{
    public static readonly Gen<string> Uuid7 = Gen.Byte.Array[16].Select(bytes =>
    {
        bytes[6] = (byte)((bytes[6] & 0x0F) | 0x70);
        bytes[8] = (byte)((bytes[8] & 0x3F) | 0x80);
        return new Guid(bytes, bigEndian: true).ToString("D");
    });

    private static readonly Gen<string> At = Gen.Long[946_684_800_000, 4_102_444_800_000].Select(ms =>
        DateTimeOffset.FromUnixTimeMilliseconds(ms).ToString("yyyy-MM-dd'T'HH:mm:ss.fff'Z'", CultureInfo.InvariantCulture));

    private static readonly string[] Texts = ["", "bare can", "naïve ✓ 你好", "\"quoted\"", "two\nlines"];

    private static readonly Gen<string> Entry =
        from rule in Gen.Int[0, KindRules.All.Count - 1].Select(i => KindRules.All[i])
        from fields in Gen.Bool.Array[rule.Fields.Count]
        from values in Gen.Int[0, 1 << 20].Array[rule.Fields.Count]
        from ids in Uuid7.Array[3]
        from at in At
        from corrects in Gen.Bool
        select EntryOf(rule, fields, values, ids, at, corrects).ToJsonString();

    // Each makes a valid entry wrong, or leaves it valid where it has nothing to spoil.
    private static readonly Action<JsonObject, int>[] Spoilt =
    [
        (entry, _) => entry.Remove("id"),
        (entry, _) => entry["id"] = "not a uuid",
        (entry, _) => entry["id"] = "00000000-0000-4000-8000-000000000001",
        (entry, _) => entry["kind"] = "run.gone",
        (entry, _) => entry["at"] = "yesterday",
        (entry, _) => entry["at"] = 12,
        (entry, _) => entry["about"] = null,
        (entry, _) => entry["corrects"] = true,
        (entry, _) => entry["body"] = new JsonArray(),
        (entry, _) => entry["more"] = 1,
        (entry, _) => ((JsonObject)entry["body"]!)["unknown field"] = 1,
        (entry, which) => Field(entry, which, new JsonObject()),
        (entry, which) => Field(entry, which, 1e9),
        (entry, which) => Field(entry, which, -1e9),
        (entry, which) => Field(entry, which, 0.5),
        (entry, which) => Field(entry, which, "no such word"),
        (entry, which) => Field(entry, which, (JsonNode?)null),
        (entry, which) => Field(entry, which, new JsonArray(1)),
        (entry, which) => Remove(entry, which),
    ];

    /// <summary>Batches of one to three entries.</summary>
    public static readonly Gen<string> Batch =
        from entries in Entry.Array[1, 3]
        from device in Uuid7
        from spoil in Gen.Int[0, 2 * Spoilt.Length]
        from which in Gen.Int[0, 1 << 20]
        select BatchOf(entries, device, spoil, which);

    private static string BatchOf(string[] entries, string device, int spoil, int which)
    {
        JsonArray list = [.. entries.Select(entry => JsonNode.Parse(entry))];
        if (spoil < Spoilt.Length) Spoilt[spoil]((JsonObject)list[which % list.Count]!, which);
        return new JsonObject { ["device"] = device, ["sentAt"] = "2026-06-13T15:05:12.345Z", ["entries"] = list }.ToJsonString();
    }

    private static void Field(JsonObject entry, int which, JsonNode? value)
    {
        JsonObject body = (JsonObject)entry["body"]!;
        if (body.Count > 0) body[body.ElementAt(which % body.Count).Key] = value;
    }

    private static void Remove(JsonObject entry, int which)
    {
        JsonObject body = (JsonObject)entry["body"]!;
        if (body.Count > 0) body.Remove(body.ElementAt(which % body.Count).Key);
    }

    private static JsonObject EntryOf(KindRule rule, bool[] chosen, int[] values, string[] ids, string at, bool corrects)
    {
        JsonObject body = [];
        for (int i = 0; i < rule.Fields.Count; i++)
        {
            if (chosen[i] || rule.Fields[i].Required) body[rule.Fields[i].Name] = ValueOf(rule.Fields[i], values[i], ids[2]);
        }

        return new JsonObject { ["id"] = ids[0], ["kind"] = rule.Kind, ["at"] = at, ["about"] = ids[1], ["corrects"] = corrects ? ids[2] : null, ["body"] = body };
    }

    private static JsonNode? ValueOf(FieldRule field, int value, string id)
    {
        if (field.Clears && value % 7 == 0) return null;
        double share = value % 1001 / 1000.0;
        return field.Type switch
        {
            FieldType.Text => Texts[value % Texts.Length],
            FieldType.Number => field.Min + (share * (field.Max - field.Min)),
            FieldType.Whole => Math.Ceiling(field.Min) + Math.Floor(share * (field.Max - Math.Ceiling(field.Min))),
            FieldType.YesNo => value % 2 == 0,
            FieldType.Id => id,
            FieldType.Ids => new JsonArray(id, id),
            FieldType.Word => field.Words[value % field.Words.Count],
            FieldType.LocalDate => "2026-06-13",
            _ => "2026-06-13T17:05:00",
        };
    }
}
