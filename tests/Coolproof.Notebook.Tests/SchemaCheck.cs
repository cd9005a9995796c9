using System.Globalization;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Coolproof.Notebook.Tables;

namespace Coolproof.Notebook.Tests;

/// <summary>Checks written tables against the Table Schema: types and constraints of the Data Package standard, version 2, as far as the schema uses them.</summary>
internal sealed class SchemaCheck
{
    private readonly Dictionary<string, JsonObject> _fields;

    public SchemaCheck()
    {
        JsonObject schema = JsonNode.Parse(ReadingsTableSchema.Json())!.AsObject();
        Fields = [.. schema["fields"]!.AsArray().Select(field => field!.AsObject())];
        _fields = Fields.ToDictionary(field => (string)field["name"]!);
    }

    public IReadOnlyList<JsonObject> Fields { get; }

    /// <summary>Every cell that breaks the schema, in words.</summary>
    public IReadOnlyList<string> Violations(string csv)
    {
        RowSplitter rows = new(new StringReader(csv), ',');
        rows.Next();
        string[] header = [.. rows.Cells];
        List<string> violations = [.. header.Where(name => !_fields.ContainsKey(name)).Select(name => $"unknown column {name}")];
        while (rows.Next())
        {
            for (int i = 0; i < header.Length; i++)
            {
                string cell = i < rows.Cells.Count ? rows.Cells[i] : "";
                if (cell.Length > 0 && _fields.TryGetValue(header[i], out JsonObject? field) && !Holds(cell, field)) violations.Add($"line {rows.Line}, {header[i]}: {cell}");
            }
        }

        return violations;
    }

    private static bool Holds(string cell, JsonObject field)
    {
        JsonObject? constraints = field["constraints"]?.AsObject();
        switch ((string)field["type"]!)
        {
            case "boolean":
                return field["trueValues"]!.AsArray().Concat(field["falseValues"]!.AsArray()).Any(word => (string)word! == cell);
            case "integer" or "number":
                return (int.TryParse(cell, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out _) || (string)field["type"]! == "number")
                    && double.TryParse(cell, NumberStyles.Float, CultureInfo.InvariantCulture, out double number)
                    && number >= (double)constraints!["minimum"]! - 1e-9 && number <= (double)constraints["maximum"]! + 1e-9;
            case "string":
                return (constraints?["enum"] is not { } words || words.AsArray().Any(word => (string)word! == cell))
                    && (constraints?["pattern"] is not { } pattern || Regex.IsMatch(cell, $"^({pattern})$"));
            default:
                return false;
        }
    }
}
