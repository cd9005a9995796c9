using System.Text.Json;
using System.Text.Json.Nodes;
using Coolproof.Notebook.Journal.Rules;

namespace Coolproof.Notebook.Journal;

/// <summary>The published schema of entries.</summary>
public static class EntrySchema
{
    private const string Uuid = "^[0-9a-fA-F]{8}-[0-9a-fA-F]{4}-[0-9a-fA-F]{4}-[0-9a-fA-F]{4}-[0-9a-fA-F]{12}$";
    private static readonly JsonSerializerOptions Indented = new() { WriteIndented = true, Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>JSON Schema (2020-12) of a batch: docs/formats/entries.schema.json. Its definition "entry" is that of one entry.</summary>
    public static string Json()
    {
        JsonObject definitions = new()
        {
            ["uuid"] = new JsonObject { ["type"] = "string", ["pattern"] = Uuid },
            ["instant"] = new JsonObject { ["type"] = "string", ["format"] = "date-time", ["pattern"] = "^2[01][0-9]{2}-[0-9]{2}-[0-9]{2}T[0-9]{2}:[0-9]{2}:[0-9]{2}([.][0-9]{1,9})?Z$" },
            ["entry"] = Entry(),
        };
        JsonObject schema = new()
        {
            ["$schema"] = "https://json-schema.org/draft/2020-12/schema",
            ["title"] = "Entries of a Coolproof journal, as a device sends them, version 1",
            ["type"] = "object",
            ["required"] = new JsonArray("device", "entries"),
            ["properties"] = new JsonObject
            {
                ["device"] = Ref("uuid"),
                ["sentAt"] = new JsonObject { ["oneOf"] = new JsonArray(Ref("instant"), new JsonObject { ["type"] = "null" }) },
                ["entries"] = new JsonObject { ["type"] = "array", ["maxItems"] = EntryReader.LargestBatch, ["items"] = Ref("entry") },
            },
            ["$defs"] = definitions,
        };
        return schema.ToJsonString(Indented) + "\n";
    }

    private static JsonObject Entry()
    {
        JsonArray kinds = [.. KindRules.All.Select(rule => (JsonNode)rule.Kind)];
        JsonArray bodies = [];
        foreach (KindRule rule in KindRules.All)
        {
            bodies.Add(new JsonObject
            {
                ["if"] = new JsonObject { ["properties"] = new JsonObject { ["kind"] = new JsonObject { ["const"] = rule.Kind } } },
                ["then"] = new JsonObject { ["properties"] = new JsonObject { ["body"] = Body(rule) } },
            });
        }

        return new JsonObject
        {
            ["type"] = "object",
            ["required"] = new JsonArray("id", "kind", "at", "about", "body"),
            ["properties"] = new JsonObject
            {
                ["id"] = new JsonObject { ["type"] = "string", ["pattern"] = Uuid.Replace("-[0-9a-fA-F]{4}-[0-9a-fA-F]{4}-[0-9a-fA-F]{4}-", "-[0-9a-fA-F]{4}-[78][0-9a-fA-F]{3}-[0-9a-fA-F]{4}-", StringComparison.Ordinal) },
                ["kind"] = new JsonObject { ["enum"] = kinds },
                ["at"] = Ref("instant"),
                ["about"] = Ref("uuid"),
                ["corrects"] = new JsonObject { ["oneOf"] = new JsonArray(Ref("uuid"), new JsonObject { ["type"] = "null" }) },
                ["body"] = new JsonObject { ["type"] = "object" },
            },
            ["additionalProperties"] = false,
            ["allOf"] = bodies,
        };
    }

    private static JsonObject Body(KindRule rule)
    {
        JsonObject properties = [];
        foreach (FieldRule field in rule.Fields) properties[field.Name] = Field(field);
        JsonObject body = new() { ["description"] = rule.Says, ["properties"] = properties };
        JsonArray required = [.. rule.Fields.Where(field => field.Required).Select(field => (JsonNode)field.Name)];
        if (required.Count > 0) body["required"] = required;
        if (!rule.Open)
        {
            body["additionalProperties"] = false;
            return body;
        }

        body["propertyNames"] = new JsonObject { ["pattern"] = "^[a-z][A-Za-z0-9]{0,39}$" };
        body["additionalProperties"] = new JsonObject { ["type"] = new JsonArray("string", "number", "boolean", "null"), ["maxLength"] = FieldRule.LongestText };
        return body;
    }

    private static JsonObject Field(FieldRule field)
    {
        JsonObject schema = field.Type switch
        {
            FieldType.Text => new() { ["type"] = "string", ["maxLength"] = FieldRule.LongestText },
            FieldType.Number => Range(new() { ["type"] = "number" }, field),
            FieldType.Whole => Range(new() { ["type"] = "integer" }, field),
            FieldType.YesNo => new() { ["type"] = "boolean" },
            FieldType.Id => Ref("uuid"),
            FieldType.Ids => new() { ["type"] = "array", ["maxItems"] = FieldRule.LongestList, ["items"] = Ref("uuid") },
            FieldType.Word => new() { ["enum"] = new JsonArray([.. field.Words.Select(word => (JsonNode)word)]) },
            FieldType.LocalDate => new() { ["type"] = "string", ["format"] = "date", ["pattern"] = "^[0-9]{4}-[0-9]{2}-[0-9]{2}$" },
            _ => new() { ["type"] = "string", ["pattern"] = "^[0-9]{4}-[0-9]{2}-[0-9]{2}T[0-9]{2}:[0-9]{2}:[0-9]{2}([.][0-9]{1,9})?$" },
        };
        if (field.Clears) schema = new JsonObject { ["oneOf"] = new JsonArray(schema, new JsonObject { ["type"] = "null" }) };
        schema["description"] = field.Means;
        return schema;
    }

    private static JsonObject Range(JsonObject schema, FieldRule field)
    {
        if (!double.IsInfinity(field.Min)) schema["minimum"] = field.Min;
        if (!double.IsInfinity(field.Max)) schema["maximum"] = field.Max;
        return schema;
    }

    private static JsonObject Ref(string definition) => new() { ["$ref"] = "#/$defs/" + definition };
}
