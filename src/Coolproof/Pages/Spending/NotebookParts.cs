using System.Globalization;
using Coolproof.Evidence.Forecasts;
using Coolproof.Notebook.Journal;
using Coolproof.Pages.Forms;

namespace Coolproof.Pages.Spending;

/// <summary>What the notebook knows of parts, money and class, as fields of the form.</summary>
internal static class NotebookParts
{
    /// <summary>The place that every option takes up until somebody says that two go together.</summary>
    public const string Place = "on the motor";

    /// <summary>The fields, and the options that are left out since price or mass isn't noted.</summary>
    /// <param name="notebook">The notebook.</param>
    /// <param name="question">The question; null: none.</param>
    /// <param name="vehicle">The vehicle; null: none.</param>
    /// <param name="card">The class card; null: none.</param>
    /// <param name="evidence">The verdict's draws: its options were driven.</param>
    public static (Dictionary<string, string> Fields, IReadOnlyList<string> LeftOut) Of(PitNotebook notebook, NotedQuestion? question, NotedVehicle? vehicle, NotedClass? card, RaceEvidence evidence)
    {
        Dictionary<string, string> fields = [];
        List<string> left = [];
        void Put(string name, double? value)
        {
            if (value is { } number) fields[name] = FieldUnits.Text(number);
        }
        Put("money", question?.Budget);
        Put("grams", question?.BudgetG);
        if (notebook.Settings.Currency is { Length: > 0 } currency) fields["cur"] = currency;
        if (card?.MassMinG is { } least && vehicle?.MassG is { } mass) (fields["min"], fields["car"]) = (FieldUnits.Text(least), FieldUnits.Text(mass));
        Put("fans", card?.FansMax);
        if (card?.OpeningsAllowed == false) fields["open"] = "no";
        var options = notebook.Options.Where(option => evidence.Options.Contains(option.Name, StringComparer.OrdinalIgnoreCase)).ToArray();
        var plain = options.FirstOrDefault(option => option.Parts.Count == 0 && option is { Price: 0, MassG: 0 }) ?? options.FirstOrDefault(option => string.Equals(option.Name, "bare can", StringComparison.OrdinalIgnoreCase));
        fields["base"] = plain?.Name ?? evidence.Options[0];
        int part = 0, driven = 0;
        foreach (var option in options.Where(option => !string.Equals(option.Name, fields["base"], StringComparison.OrdinalIgnoreCase)))
        {
            if (option.Parts.Count > 0 ? option.Parts.Any(one => one.MassG is null || one.Price is null && !one.Owned) : option.Price is null || option.MassG is null)
            {
                left.Add(option.Name);
                continue;
            }
            string[] names = option.Parts.Count > 0 ? [.. option.Parts.Select(one => Safe(one.Name))] : [Safe(option.Name)];
            for (var i = 0; i < names.Length; i++)
            {
                part++;
                fields[$"n{part}"] = names[i];
                Put($"e{part}", option.Parts.Count > 0 ? option.Parts[i].Price : option.Price);
                Put($"g{part}", option.Parts.Count > 0 ? option.Parts[i].MassG : option.MassG);
                if (option.Parts.Count > 0 && option.Parts[i].Owned) fields[$"o{part}"] = "yes";
                // Parts of one option were driven together only: each needs the others, and the first bears what belongs to all.
                if (names.Length > 1) fields[$"w{part}"] = string.Join(", ", i == 0 ? names[1..] : [names[0]]);
                if (i > 0) continue;
                fields[$"l{part}"] = Place;
                if (option.Fans is > 0 and { } fans) fields[$"f{part}"] = fans.ToString(CultureInfo.InvariantCulture);
                Put($"m{part}", option.FitMin);
                if (Says(option.FitNotes, "solder")) fields[$"s{part}"] = "yes";
                if (option.CantBeUndone || Says(option.FitNotes, "cut")) fields[$"c{part}"] = "yes";
                if (Says(option.FitNotes, "opening")) fields[$"h{part}"] = "yes";
            }
            driven++;
            (fields[$"a{driven}"], fields[$"b{driven}"]) = (option.Name, string.Join(", ", names));
        }
        return (fields, left);
    }

    /// <summary>Three parts to begin with where there is no notebook to take them from; made up, like all of the demo.</summary>
    public static Dictionary<string, string> MadeUp { get; } = new()
    {
        ["cur"] = "€",
        ["money"] = "40",
        ["base"] = "bare can",
        ["n1"] = "finned clamp",
        ["e1"] = "14",
        ["g1"] = "31",
        ["l1"] = "can",
        ["m1"] = "5",
        ["k1"] = "4",
        ["i1"] = "1",
        ["j1"] = "8",
        ["n2"] = "25 mm fan",
        ["e2"] = "13",
        ["g2"] = "15",
        ["l2"] = "fan lead",
        ["w2"] = "finned clamp",
        ["f2"] = "1",
        ["m2"] = "8",
        ["s2"] = "yes",
        ["k2"] = "9",
        ["i2"] = "4",
        ["j2"] = "14",
        ["n3"] = "rear blower",
        ["e3"] = "29",
        ["g3"] = "41",
        ["l3"] = "fan lead",
        ["f3"] = "1",
        ["m3"] = "10",
        ["k3"] = "12",
        ["i3"] = "6",
        ["j3"] = "18",
    };

    // Lists are typed with commas between, so a name must not have one.
    static string Safe(string name) => name.Replace(',', ' ').Replace(';', ' ');

    static bool Says(string? notes, string word) => notes?.Contains(word, StringComparison.OrdinalIgnoreCase) == true;
}
