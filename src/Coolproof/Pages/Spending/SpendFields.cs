using System.Globalization;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Coolproof.Notebook;
using Coolproof.Pages.Forms;

namespace Coolproof.Pages.Spending;

/// <summary>
/// The fields of the page's form and of its address: money, grams and class by their names, parts by a letter and a number (n1 the first part's name, e1 its price, g1 its mass …), driven options as a1 and their parts as b1.
/// Short, since the address holds them all.
/// </summary>
internal static partial class SpendFields
{
    /// <summary>Most letters of all fields together: what an address may hold.</summary>
    public const int LongestAddress = 24_000;

    /// <summary>A part's field: letter in the address, name in a sheet, label, unit.</summary>
    public static IReadOnlyList<(char Letter, string InSheet, string Label, string Unit)> OfPart { get; } =
    [
        ('n', "name", "Name", ""), ('e', "price", "Price", ""), ('g', "massG", "Mass", "g"), ('o', "owned", "I have it already", ""), ('l', "places", "Place that it takes up", ""), ('x', "excludes", "Doesn’t go with", ""),
        ('w', "needs", "Needs", ""), ('f', "fans", "Fans", ""), ('m', "fitMin", "Work", "min"), ('s', "soldering", "Something is soldered", ""), ('c', "cutting", "Something is cut", ""), ('h', "opensShell", "The shell is opened", ""),
        ('t', "lapS", "Lap longer by", "s"), ('k', "coolsK", "Your guess: cooler by", "K"), ('i', "coolsLowK", "At least", "K"), ('j', "coolsHighK", "At most", "K"),
    ];

    /// <summary>Fields of the whole: name in the address and in a sheet.</summary>
    public static IReadOnlyList<(string Name, string InSheet, string Label)> OfWhole { get; } =
    [
        ("money", "money", "Money"), ("grams", "grams", "Grams above the minimum weight"), ("cur", "currency", "Currency"), ("base", "base", "Set against"), ("lap", "lapSPer100G", "A hundred grams cost a lap"),
        ("min", "class.minimumMassG", "The class’s minimum weight"), ("car", "class.carMassG", "The car without any of these"), ("fans", "class.fansMax", "Most fans"),
    ];

    /// <summary>A sheet as a file has it (docs/formats/spend-sheet.schema.json), of fields; a part without a name isn't there, which is how it is taken out.</summary>
    public static JsonObject File(IReadOnlyDictionary<string, string> fields)
    {
        string Of(string name) => fields.GetValueOrDefault(name, "").Trim();
        JsonArray parts = [], driven = [];
        foreach (var place in Places(fields, 'n'))
        {
            JsonObject part = [];
            foreach (var (letter, inSheet, _, _) in OfPart)
                if (Of($"{letter}{place}") is { Length: > 0 } text) part[inSheet] = Value(inSheet, text);
            parts.Add((JsonNode)part);
        }
        foreach (var place in Places(fields, 'a').Where(place => Of($"b{place}").Length > 0)) driven.Add((JsonNode)new JsonObject { ["option"] = Of($"a{place}"), ["parts"] = List(Of($"b{place}")) });
        JsonObject rules = [], sheet = new() { ["version"] = 1 };
        foreach (var (name, inSheet, _) in OfWhole)
            if (Of(name) is { Length: > 0 } text) (inSheet.StartsWith("class.", StringComparison.Ordinal) ? rules : sheet)[inSheet[(inSheet.IndexOf('.', StringComparison.Ordinal) + 1)..]] = Value(inSheet, text);
        if (Of("open") == "no") rules["openingsAllowed"] = false;
        if (rules.Count > 0) sheet["class"] = rules;
        (sheet["parts"], sheet["driven"]) = (parts, driven);
        return sheet;
    }

    /// <summary>Fields of a sheet.</summary>
    public static Dictionary<string, string> Of(SpendSheet sheet)
    {
        Dictionary<string, string> fields = [];
        void Put(string name, string? text)
        {
            if (text is { Length: > 0 }) fields[name] = text;
        }
        Put("money", sheet.Money is { } money ? FieldUnits.Text((double)money) : null);
        Put("grams", sheet.Grams is { } grams ? FieldUnits.Text(Math.Round(grams, 2)) : null);
        Put("cur", sheet.Currency);
        Put("base", sheet.Base);
        Put("lap", sheet.LapSPer100G is { } lap ? FieldUnits.Text(lap) : null);
        // Only their difference counts and is kept of a sheet.
        if (sheet.Rules.FreeG != 0) (fields["min"], fields["car"]) = (FieldUnits.Text(Math.Round(10_000 + sheet.Rules.FreeG, 2)), "10000");
        Put("fans", sheet.Rules.FansMax?.ToString(CultureInfo.InvariantCulture));
        Put("open", sheet.Rules.OpeningsAllowed ? "" : "no");
        for (var i = 0; i < sheet.Parts.Count; i++)
        {
            var part = sheet.Parts[i];
            foreach (var (letter, text) in new (char, string?)[]
            {
                ('n', part.Part.Name), ('e', FieldUnits.Text((double)part.Part.Price)), ('g', FieldUnits.Text(Math.Round(part.Part.MassG, 2))), ('o', part.Owned ? "yes" : ""), ('l', string.Join(", ", part.Places)),
                ('x', string.Join(", ", part.Excludes)), ('w', string.Join(", ", part.Needs)), ('f', part.Fans > 0 ? $"{part.Fans}" : ""), ('m', part.FitMin > 0 ? FieldUnits.Text(part.FitMin) : ""), ('s', part.Soldering ? "yes" : ""),
                ('c', part.Cutting ? "yes" : ""), ('h', part.OpensShell ? "yes" : ""), ('t', part.LapS != 0 ? FieldUnits.Text(part.LapS) : ""), ('k', Text(part.CoolsK?.Middle)), ('i', Text(part.CoolsK?.Low)), ('j', Text(part.CoolsK?.High)),
            })
                Put($"{letter}{i + 1}", text);
        }
        for (var i = 0; i < sheet.Driven.Count; i++) (fields[$"a{i + 1}"], fields[$"b{i + 1}"]) = (sheet.Driven[i].Option, string.Join(", ", sheet.Driven[i].Parts));
        return fields;

        static string? Text(double? value) => value is { } one ? FieldUnits.Text(one) : null;
    }

    /// <summary>Numbers of the rows whose field of a letter is filled, in their order.</summary>
    public static IReadOnlyList<int> Places(IReadOnlyDictionary<string, string> fields, char letter) =>
        [.. fields.Where(one => one.Value.Trim().Length > 0 && Numbered().Match(one.Key) is { Success: true } key && key.Groups[1].Value[0] == letter).Select(one => int.Parse(one.Key[1..], CultureInfo.InvariantCulture)).Order()];

    /// <summary>A problem of the sheet in the words of the form.</summary>
    /// <param name="problem">The problem.</param>
    /// <param name="fields">Fields of the form.</param>
    public static string Said(AskedProblem problem, IReadOnlyDictionary<string, string> fields)
    {
        var words = problem.Field;
        if (InList().Match(words) is { Success: true } at)
        {
            var row = int.Parse(at.Groups[2].Value, CultureInfo.InvariantCulture);
            var part = at.Groups[1].Value == "parts";
            var place = Places(fields, part ? 'n' : 'a') is { } rows && row < rows.Count ? rows[row] : row + 1;
            var name = fields.GetValueOrDefault($"{(part ? 'n' : 'a')}{place}", "");
            var label = OfPart.FirstOrDefault(one => one.InSheet == at.Groups[3].Value).Label ?? (at.Groups[3].Value == "option" ? "option" : "its parts");
            words = part ? $"{(name.Length > 0 ? name : $"Part {place}")}, {label.ToLowerInvariant()}" : $"Driven as “{name}”, {label}";
        }
        else if (OfWhole.FirstOrDefault(one => one.InSheet == words) is { Label: { } label }) words = label;
        else if (words == "parts") words = "Parts";
        return $"{words}: found {problem.Found}; expected {Plain(problem.Expected)}.{(problem.Remedy.Length > 0 ? " " + Plain(problem.Remedy) : "")}";
    }

    static string Plain(string text) => text.Replace(" (or massOz)", "", StringComparison.Ordinal).Replace("Or \"owned\": true for what you have.", "Or tick that you have it.", StringComparison.Ordinal).Replace("in this file", "in this list", StringComparison.Ordinal)
        .Replace("coolsK", "the guess", StringComparison.Ordinal).Replace(", without quotes", "", StringComparison.Ordinal).Replace("Write \"parts\": [ { \"name\": …, \"price\": …, \"massG\": … } ].", "Type a name, a price and a mass below.", StringComparison.Ordinal);

    static JsonNode Value(string inSheet, string text) => inSheet switch
    {
        "name" or "currency" or "base" => text,
        "owned" or "soldering" or "cutting" or "opensShell" => true,
        "places" or "excludes" or "needs" => List(text),
        _ => TypedNumber.TryRead(text, out var number) ? number : text, // what is no number is told by the reader of sheets
    };

    static JsonArray List(string text) => new(text.Split([',', ';'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).Select(name => (JsonNode?)name).ToArray());

    [GeneratedRegex("^([a-z])([1-9][0-9]?)$")]
    private static partial Regex Numbered();

    [GeneratedRegex(@"^(parts|driven)\[(\d+)\]\.(\w+)$")]
    private static partial Regex InList();
}
