using System.Globalization;
using System.Text.Json;

namespace Coolproof.Notebook;

/// <summary>
/// The fields of one object of an asked file. Each is asked for by its name; what is wrong with it is noted and a stand-in given back, so that the rest is looked at too.
/// </summary>
internal sealed class AskedFields
{
    private readonly JsonElement _element;
    private readonly string _path;
    private readonly List<AskedProblem> _problems;
    private readonly HashSet<string> _known = [];

    private AskedFields(JsonElement element, string path, List<AskedProblem> problems) => (_element, _path, _problems) = (element, path, problems);

    /// <summary>Whether the object is there at all; without it every field is missing and none is said to be.</summary>
    public bool IsThere => _element.ValueKind == JsonValueKind.Object;

    /// <summary>Reads a whole file: a JSON object, comments and a comma too many allowed.</summary>
    /// <param name="text">The file.</param>
    /// <param name="read">Makes of its fields what it asks.</param>
    public static AskedRead<T> Read<T>(string text, Func<AskedFields, T> read) where T : class
    {
        List<AskedProblem> problems = [];
        try
        {
            using JsonDocument document = JsonDocument.Parse(text, new JsonDocumentOptions { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true, MaxDepth = 16 });
            if (document.RootElement.ValueKind != JsonValueKind.Object)
                return new(null, [new("the file", Shown(document.RootElement), "an object in braces", "See the example in the docs.")]);
            AskedFields fields = new(document.RootElement, "", problems);
            T asked = read(fields);
            fields.NoOthers();
            return new(problems.Count == 0 ? asked : null, problems);
        }
        catch (JsonException broken)
        {
            return new(null, [new($"line {broken.LineNumber + 1}", "text that is no JSON", "a field in quotes, a colon and its value, with commas between", "Look for a missing quote, comma or brace there or just before.")]);
        }
    }

    /// <summary>Path of a field.</summary>
    public string PathOf(string name) => _path.Length == 0 ? name : $"{_path}.{name}";

    /// <summary>Notes a problem of a field.</summary>
    public void Wrong(string name, string expected, string remedy, string? found = null) => _problems.Add(new(PathOf(name), found ?? Shown(Field(name)), expected, remedy));

    /// <summary>Whether a field is given.</summary>
    public bool Has(string name) => IsThere && Field(name).ValueKind is not (JsonValueKind.Undefined or JsonValueKind.Null);

    /// <summary>A number within limits; null where it isn't given or is wrong.</summary>
    public double? Number(string name, double low, double high, string unit, string remedy = "")
    {
        if (!Has(name)) return null;
        JsonElement field = Field(name);
        if (field.ValueKind == JsonValueKind.Number && field.TryGetDouble(out double value) && value >= low && value <= high) return value;
        string range = $"a number from {Text(low)} to {Text(high)}{(unit.Length > 0 ? " " + unit : "")}";
        Wrong(name, field.ValueKind == JsonValueKind.Number ? range : range + ", without quotes", remedy);
        return null;
    }

    /// <summary>A number that must be given; a stand-in within limits where it isn't.</summary>
    public double Needed(string name, double low, double high, string unit, string remedy)
    {
        if (!Has(name) && IsThere) Wrong(name, $"a number from {Text(low)} to {Text(high)}{(unit.Length > 0 ? " " + unit : "")}", remedy, "nothing");
        return Number(name, low, high, unit, remedy) ?? Math.Sqrt(Math.Max(low, 1e-9) * high);
    }

    /// <summary>A number that may be given in one of two units, as a value in the first.</summary>
    public double? Either((string Name, double Low, double High, string Unit) first, (string Name, double Low, double High, string Unit) second, Func<double, double> toFirst)
    {
        if (Has(first.Name) && Has(second.Name)) Wrong(second.Name, $"only one of {first.Name} and {second.Name}", "Take one of them out.");
        double? one = Number(first.Name, first.Low, first.High, first.Unit), other = Number(second.Name, second.Low, second.High, second.Unit);
        return one ?? (other is { } given ? toFirst(given) : null);
    }

    /// <summary>A text; empty where it isn't given or is wrong.</summary>
    public string Name(string name, string remedy)
    {
        if (Has(name) && Field(name) is { ValueKind: JsonValueKind.String } field && field.GetString() is { } text && !string.IsNullOrWhiteSpace(text) && text.Length <= 200) return text.Trim();
        Wrong(name, "a name of 1 to 200 letters in quotes", remedy, Has(name) ? null : "nothing");
        return "";
    }

    /// <summary>One of a few words; the first one where it isn't given.</summary>
    public string Word(string name, params string[] words)
    {
        if (!Has(name)) return words[0];
        if (Field(name) is { ValueKind: JsonValueKind.String } field && words.FirstOrDefault(w => string.Equals(w, field.GetString(), StringComparison.OrdinalIgnoreCase)) is { } word) return word;
        Wrong(name, string.Join(" or ", words.Select(w => $"\"{w}\"")), "");
        return words[0];
    }

    /// <summary>Yes or no; a stand-in where it isn't given.</summary>
    public bool YesNo(string name, bool otherwise)
    {
        if (!Has(name)) return otherwise;
        if (Field(name).ValueKind is JsonValueKind.True or JsonValueKind.False) return Field(name).GetBoolean();
        Wrong(name, "true or false, without quotes", "");
        return otherwise;
    }

    /// <summary>Texts of a list; none where it isn't given.</summary>
    public IReadOnlyList<string> Names(string name)
    {
        if (!Has(name)) return [];
        if (Field(name) is { ValueKind: JsonValueKind.Array } list && list.EnumerateArray().All(item => item.ValueKind == JsonValueKind.String)) return [.. list.EnumerateArray().Select(item => item.GetString()!.Trim())];
        Wrong(name, "a list of names in brackets", "");
        return [];
    }

    /// <summary>An object within this one; null where it isn't given or is none.</summary>
    public T? Part<T>(string name, Func<AskedFields, T> read) where T : class
    {
        if (!Has(name)) return null;
        if (Field(name).ValueKind == JsonValueKind.Object) return Read(Field(name), PathOf(name), read);
        Wrong(name, "an object in braces", "");
        return null;
    }

    /// <summary>Objects of a list.</summary>
    public IReadOnlyList<T> Items<T>(string name, int most, Func<AskedFields, T> read) where T : class
    {
        if (!Has(name)) return [];
        JsonElement list = Field(name);
        if (list.ValueKind != JsonValueKind.Array || list.GetArrayLength() > most || list.EnumerateArray().Any(item => item.ValueKind != JsonValueKind.Object))
        {
            Wrong(name, $"a list in brackets of at most {most} objects in braces", "", list.ValueKind == JsonValueKind.Array ? $"a list of {list.GetArrayLength()}" : null);
            return [];
        }
        return [.. list.EnumerateArray().Select((item, i) => Read(item, $"{PathOf(name)}[{i}]", read))];
    }

    private T Read<T>(JsonElement element, string path, Func<AskedFields, T> read)
    {
        AskedFields fields = new(element, path, _problems);
        T asked = read(fields);
        fields.NoOthers();
        return asked;
    }

    // A field that nobody asked for is a slip of the pen, and would be left out silently. "note" is everybody's own.
    private void NoOthers()
    {
        _known.Add("note");
        HashSet<string> seen = [];
        foreach (JsonProperty property in _element.EnumerateObject())
        {
            if (!seen.Add(property.Name)) _problems.Add(new(PathOf(property.Name), "the field twice", "it once", "Take one of them out."));
            else if (!_known.Contains(property.Name)) _problems.Add(new(PathOf(property.Name), "a field of that name", $"one of {string.Join(", ", _known.Order(StringComparer.Ordinal))}", "Mind capitals and the unit at the end of the name; \"note\" may hold anything."));
        }
    }

    private JsonElement Field(string name)
    {
        _known.Add(name);
        return IsThere && _element.TryGetProperty(name, out JsonElement value) ? value : default;
    }

    private static string Shown(JsonElement element) => element.ValueKind switch
    {
        JsonValueKind.Undefined or JsonValueKind.Null => "nothing",
        JsonValueKind.Object => "an object",
        JsonValueKind.Array => "a list",
        _ when element.GetRawText() is { Length: > 40 } raw => raw[..40] + "…",
        _ => element.GetRawText(),
    };

    private static string Text(double value) => value.ToString("0.###", CultureInfo.InvariantCulture);
}
