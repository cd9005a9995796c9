using System.Globalization;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Coolproof.Evidence;
using Coolproof.Notebook;
using Coolproof.Notebook.Journal;
using Coolproof.Pages.Forms;

namespace Coolproof.Pages.Mounts;

/// <summary>A number of the form as it stands, in the person's unit.</summary>
/// <param name="Field">Which.</param>
/// <param name="Unit">Its unit.</param>
/// <param name="Least">Left end of its slider.</param>
/// <param name="Most">Right end.</param>
/// <param name="Step">From one value to the next.</param>
/// <param name="Value">Where it stands; null: left blank.</param>
public sealed record MountEntry(MountField Field, string Unit, double Least, double Most, double Step, double? Value)
{
    /// <summary>The words beside a slider.</summary>
    public string Said => Value is { } value ? FieldUnits.Text(value) + (Unit.Length > 0 ? " " + Unit : "") : "";
}

/// <summary>
/// The mount that its page is asked: the address, else the demo's and what the motor's card tells. It is read as a file of one mount is, so that what can't be right is refused for the same reasons.
/// Temperatures in the address are in the unit that it names.
/// </summary>
public sealed partial class MountAsked
{
    const int LongestName = 60;

    readonly IQueryCollection query;
    readonly TemperatureUnitChoice shown, typed;
    readonly List<string> faults = [];

    /// <summary>Reads the address.</summary>
    /// <param name="query">What was set; nothing on the first visit.</param>
    /// <param name="motor">The motor's card; null: none.</param>
    /// <param name="fair">Fair conditions of the verdict; null: none.</param>
    /// <param name="unit">Degrees of the person.</param>
    public MountAsked(IQueryCollection query, NotedMotor? motor, FairConditions? fair, TemperatureUnitChoice unit)
    {
        (this.query, shown) = (query, unit);
        typed = query["in"].ToString() switch { "f" => TemperatureUnitChoice.Fahrenheit, "c" => TemperatureUnitChoice.Celsius, _ => unit };
        Dictionary<string, double?> known = new() { ["diameter"] = motor?.CanDiameterMm, ["length"] = motor?.CanLengthMm, ["mass"] = motor?.MassG, ["air"] = fair is null ? null : Math.Round(fair.AmbientC) };
        Entries = [.. MountField.All.Select(field => Entry(field, known.GetValueOrDefault(field.Name) ?? field.Usual))];
        var name = query["name"].ToString().Trim();
        Name = name.Length == 0 ? "new mount" : name.Length > LongestName ? name[..LongestName] : name;
        if (name.Length > LongestName) faults.Add($"Its name: expected at most {LongestName} letters. Shorten it.");
        var read = MountSheetReader.Read(File().ToJsonString());
        faults.AddRange(read.Problems.Where(problem => !problem.Field.Contains("fans[1]", StringComparison.Ordinal)).Select(Said));
        Sheet = faults.Count == 0 ? read.Asked : null;
    }

    /// <summary>Its numbers, in the form's order.</summary>
    public IReadOnlyList<MountEntry> Entries { get; }

    /// <summary>Its name.</summary>
    public string Name { get; }

    /// <summary>What is asked; null where it can't be right.</summary>
    public MountSheet? Sheet { get; }

    /// <summary>What can't be right, each with its remedy.</summary>
    public IReadOnlyList<string> Faults => faults;

    /// <summary>What a list of choices stands at.</summary>
    public string Chosen(string field) => query[field].ToString();

    /// <summary>Whether a part is fitted.</summary>
    public bool Has(MountPart part) => part switch
    {
        MountPart.Fan => Chosen("fans") != "none",
        MountPart.Shell => Chosen("over") != "open",
        MountPart.Shroud => Chosen("shroud") == "yes",
        MountPart.Duct => Chosen("duct") is "forward" or "elsewhere",
        _ => true,
    };

    MountEntry Entry(MountField field, double usual)
    {
        var step = field.Step;
        double Put(double celsius, TemperatureUnitChoice unit) => field.IsTemperature ? Math.Round(Units.FromCelsius(celsius, unit)) : celsius;
        var text = query[field.Name].ToString().Trim();
        double? value = Put(usual, typed);
        if (text.Length == 0) value = field.MayBeBlank && query.ContainsKey(field.Name) ? null : value;
        else if (TypedNumber.TryRead(text, out var number) && Math.Abs(number) < 1e6) value = number;
        else faults.Add($"{field.Label}: expected a number. Write it with digits only.");
        if (field.IsTemperature && shown != typed) value = Math.Round(Units.FromCelsius(Units.CelsiusFrom(value!.Value, typed), shown), 1);
        double at = value ?? field.Least, least = Math.Min(Put(field.Least, shown), at), most = Math.Max(Put(field.Most, shown), at);
        return new(field, field.IsTemperature ? Units.Symbol(shown) : field.Unit, least, most, double.IsInteger(Math.Round((at - least) / step, 6)) ? step : 0.01, value);
    }

    // The mount as a file has it (docs/formats/mount-sheet.schema.json).
    JsonObject File()
    {
        JsonObject fan = [], mount = new() { ["name"] = Name }, can = [], shroud = [], duct = [], file = new() { ["version"] = 1, ["can"] = can, ["mounts"] = new JsonArray(mount) };
        foreach (var entry in Entries.Where(entry => entry.Value is not null && Has(entry.Field.Part) && (entry.Field.Name != "gap" || Has(MountPart.Fan) || Has(MountPart.Duct))))
        {
            var part = entry.Field.Part switch { MountPart.Car => file, MountPart.Can => can, MountPart.Fan => fan, MountPart.Shroud => shroud, MountPart.Duct => duct, _ => mount };
            part[InFile(entry.Field)] = entry.Value;
        }
        if (Has(MountPart.Fan)) mount["fans"] = Chosen("fans") is "beside" or "behind" ? new JsonArray(fan, fan.DeepClone()) : new JsonArray(fan);
        if (Chosen("fans") == "behind") mount["fansStand"] = "one behind the other";
        if (Has(MountPart.Shroud)) mount["shroud"] = shroud;
        if (Has(MountPart.Duct)) (mount["duct"], duct["facesForward"]) = (duct, Chosen("duct") == "forward");
        if (Chosen("from") == "shell") mount["airFrom"] = "shell";
        return file;
    }

    string InFile(MountField field) => field.IsTemperature && shown == TemperatureUnitChoice.Fahrenheit ? field.InFile[..^1] + "F" : field.InFile;

    // A problem of the file in the words of the form.
    string Said(AskedProblem problem)
    {
        var field = MountField.All.FirstOrDefault(field => field.Path == problem.Field || InFile(field) == problem.Field);
        var label = field?.Label ?? problem.Field.Replace("mounts[0].", "", StringComparison.Ordinal) switch { "duct" => "Duct", "fans" => "Fans", "shroud" => "Shroud", var other => other };
        var found = double.TryParse(problem.Found, CultureInfo.InvariantCulture, out _) && field is { Unit: { Length: > 0 } } ? $"{problem.Found} {(field.IsTemperature ? Units.Symbol(shown) : field.Unit)}" : problem.Found;
        var text = $"{label}: found {found}; expected {problem.Expected}.{(problem.Remedy.Length > 0 ? " " + problem.Remedy : "")}";
        return FileWord().Replace(text.Replace("\"facesForward\": true", "turn its mouth forward", StringComparison.Ordinal), word => MountField.All.FirstOrDefault(one => one.InFile == word.Value) is { } named ? $"“{named.Label}”" : word.Value);
    }

    [GeneratedRegex("[a-z]+[A-Z][A-Za-z0-9]*")]
    private static partial Regex FileWord();
}
