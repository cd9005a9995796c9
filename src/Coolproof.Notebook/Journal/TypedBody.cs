using System.Globalization;
using Coolproof.Notebook.Journal.Rules;

namespace Coolproof.Notebook.Journal;

/// <summary>The body of an entry as a person typed it, field by field.</summary>
/// <param name="Body">What was understood.</param>
/// <param name="Faults">All that was not, each with its field's name; empty when everything was.</param>
public sealed record TypedBody(EntryBody Body, IReadOnlyList<EntryFault> Faults)
{
    /// <summary>
    /// Reads typed fields by the rules of a kind. A blank clears the field of a `*.set` and says nothing elsewhere; decimal commas, true minus signs and "yes" and "no" are
    /// understood; a list is given as several texts of one name.
    /// </summary>
    /// <param name="kind">One of <see cref="EntryKind"/>.</param>
    /// <param name="typed">Names and texts.</param>
    /// <param name="toStored">Turns a number from the person's unit into the field's own: field, number typed, number kept. Null: they are the same.</param>
    /// <exception cref="ArgumentException">No such kind.</exception>
    public static TypedBody Read(string kind, IEnumerable<KeyValuePair<string, IReadOnlyList<string>>> typed, Func<string, double, double>? toStored = null)
    {
        ArgumentNullException.ThrowIfNull(typed);
        KindRule rule = KindRules.Of(kind) ?? throw new ArgumentException($"{kind} is no kind of entry.", nameof(kind));
        List<EntryFault> faults = [];
        List<(string, object?)> fields = [];
        foreach ((string name, IReadOnlyList<string> texts) in typed)
        {
            FieldRule field = rule.Field(name) ?? (rule.Open && KindRules.IsSettingName(name) ? new FieldRule(name, FieldType.Text, name) { Clears = true } : new FieldRule(name, FieldType.Text, name));
            string[] said = [.. texts.Select(text => text.Trim()).Where(text => text.Length > 0)];
            if (said.Length == 0 && field.Type != FieldType.Ids)
            {
                if (rule.IsSet && field.Clears) fields.Add((name, null));
                continue;
            }

            if (ValueOf(field, said, toStored) is { } value) fields.Add((name, value));
            else faults.Add(new EntryFault(null, name, $"{EntryReading.Shown(said[0])} is {What(field.Type)}", $"{field.Means}: {Right(field)}"));
        }

        EntryBody body = EntryBody.Of(fields);
        // What could not be read is said already; that it is missing would be said twice.
        HashSet<string> unread = [.. faults.Select(fault => fault.Field)];
        BodyCheck.Check(body, rule, (path, reason, remedy) =>
        {
            string name = path["body.".Length..];
            if (!unread.Contains(name)) faults.Add(new EntryFault(null, name, reason, remedy));
        });
        return new TypedBody(body, faults);
    }

    private static object? ValueOf(FieldRule field, string[] said, Func<string, double, double>? toStored) => field.Type switch
    {
        FieldType.Ids => said,
        FieldType.Number or FieldType.Whole => Number(said[^1]) is { } number ? toStored?.Invoke(field.Name, number) ?? number : null,
        FieldType.YesNo => said[^1] switch { "yes" or "true" or "on" => true, "no" or "false" or "off" => false, _ => null },
        _ => said[^1],
    };

    private static double? Number(string text) =>
        double.TryParse(text.Replace(',', '.').Replace('−', '-'), NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double number) && double.IsFinite(number) ? number : null;

    private static string What(FieldType type) => type == FieldType.YesNo ? "neither yes nor no" : "no number";

    private static string Right(FieldRule field) => field.Type == FieldType.YesNo ? "yes or no" : "digits alone, such as 24 or 24.5";
}
