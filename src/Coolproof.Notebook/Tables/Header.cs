using System.Text;

namespace Coolproof.Notebook.Tables;

/// <summary>Unit that a column's name gives to bare numbers in its cells.</summary>
internal enum ColumnUnit { None, Celsius, Fahrenheit, Seconds, Minutes }

/// <summary>One column of the file.</summary>
/// <param name="Written">Its name as written; "column 7" where it has none.</param>
/// <param name="Rule">What is known of it; null for an unknown column, whose cells are kept as notes.</param>
/// <param name="Unit">Unit of bare numbers.</param>
/// <param name="Named">Whether the header gives it a name.</param>
internal sealed record HeaderColumn(string Written, ColumnRule? Rule, ColumnUnit Unit, bool Named);

/// <summary>The header row, understood.</summary>
/// <param name="Line">Its line in the file.</param>
/// <param name="Columns">Its columns in order.</param>
internal sealed record Header(int Line, IReadOnlyList<HeaderColumn> Columns)
{
    // A longer name is shown by its beginning.
    private const int LongestName = 100;

    private static readonly Dictionary<string, (ColumnRule Rule, ColumnUnit Unit)> Names = AllNames();

    /// <summary>What a name means; null when it is unknown.</summary>
    public static (ColumnRule Rule, ColumnUnit Unit)? Lookup(string written) =>
        written.Length <= 80 && (Names.TryGetValue(Plain(written, splitCapitals: false), out var known) || Names.TryGetValue(Plain(written, splitCapitals: true), out known))
            ? known : null;

    /// <summary>Understands a header row.</summary>
    public static Header Of(int line, IReadOnlyList<string> cells)
    {
        List<HeaderColumn> columns = [];
        foreach (string cell in cells)
        {
            string written = cell.Trim();
            if (written.Length > LongestName) written = written[..LongestName] + "...";
            (ColumnRule Rule, ColumnUnit Unit)? known = Lookup(written);
            columns.Add(new HeaderColumn(
                written.Length > 0 ? written : $"column {columns.Count + 1}", known?.Rule, known?.Unit ?? ColumnUnit.None, written.Length > 0));
        }

        return new Header(line, columns);
    }

    /// <summary>Whether any column holds the field.</summary>
    public bool Has(Field field) => Columns.Any(column => column.Rule?.Field == field);

    /// <summary>Name of the field's column as written, else the name that it would have.</summary>
    public string NameOf(Field field) => Columns.FirstOrDefault(column => column.Rule?.Field == field)?.Written ?? ColumnRules.Of(field).Names[0];

    /// <summary>The known name that an unknown one is a slip away from; null when none is near.</summary>
    public static string? NearName(string written)
    {
        string plain = Plain(written, splitCapitals: false);
        if (plain.Length is < 4 or > 40) return null;
        foreach (ColumnRule rule in ColumnRules.All)
        {
            foreach (string name in rule.Names)
            {
                // A known stem with a unit that is not understood (ambient_k) is as near as a slip of the key.
                if (plain == rule.Stem + "_k" || (name.Length >= 4 && EditDistance.Within(plain, name, plain.Length < 8 ? 1 : 2))) return name;
            }
        }

        return null;
    }

    /// <summary>A name without case, accents of units, blanks and punctuation: "Stop to read [s]" becomes stop_to_read_s.</summary>
    internal static string Plain(string written, bool splitCapitals)
    {
        StringBuilder plain = new();
        char before = '_';
        foreach (char letter in written.Replace("℃", "c").Replace("℉", "f").Replace("Ω", "ohm").Replace("Ω", "ohm"))
        {
            if (char.IsLetterOrDigit(letter) && letter != 'º')
            {
                if (splitCapitals && char.IsUpper(letter) && char.IsLower(before)) plain.Append('_');
                plain.Append(char.ToLowerInvariant(letter));
            }
            else if (plain.Length > 0 && plain[^1] != '_')
            {
                plain.Append('_');
            }

            before = letter;
        }

        return plain.ToString().TrimEnd('_');
    }

    private static Dictionary<string, (ColumnRule, ColumnUnit)> AllNames()
    {
        Dictionary<string, (ColumnRule, ColumnUnit)> names = [];
        foreach (ColumnRule rule in ColumnRules.All)
        {
            foreach ((string ending, ColumnUnit unit) in Endings(rule.Quantity)) names[rule.Stem + ending] = (rule, unit);
            foreach (string synonym in rule.Synonyms) names[synonym] = (rule, ColumnUnit.None);
        }

        // A quantity's name without its unit is known too (its cells must then carry one), unless it is another column's whole name (track).
        foreach (ColumnRule rule in ColumnRules.All) names.TryAdd(rule.Stem, (rule, ColumnUnit.None));
        return names;
    }

    private static (string Ending, ColumnUnit Unit)[] Endings(Quantity quantity) => quantity switch
    {
        Quantity.Temperature =>
        [
            ("_c", ColumnUnit.Celsius), ("_deg_c", ColumnUnit.Celsius), ("_celsius", ColumnUnit.Celsius),
            ("_f", ColumnUnit.Fahrenheit), ("_deg_f", ColumnUnit.Fahrenheit), ("_fahrenheit", ColumnUnit.Fahrenheit),
        ],
        Quantity.Duration =>
        [
            ("_s", ColumnUnit.Seconds), ("_sec", ColumnUnit.Seconds), ("_seconds", ColumnUnit.Seconds),
            ("_min", ColumnUnit.Minutes), ("_minutes", ColumnUnit.Minutes),
        ],
        _ => [("", ColumnUnit.None)],
    };
}
