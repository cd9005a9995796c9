namespace Coolproof.Notebook.Journal.Rules;

/// <summary>Checks a body by its kind's rule.</summary>
internal static class BodyCheck
{
    /// <summary>Calls <paramref name="fault"/> with field, reason and remedy for each fault.</summary>
    public static void Check(EntryBody body, KindRule rule, Action<string, string, string> fault)
    {
        foreach (FieldRule field in rule.Fields)
        {
            if (field.Required && !body.Has(field.Name)) fault("body." + field.Name, "missing", Right(field));
        }

        foreach ((string name, object? value) in body.Fields)
        {
            if (rule.Field(name) is { } field) CheckField(name, value, field, fault);
            else if (rule.Open && KindRules.IsSettingName(name)) CheckSetting(name, value, fault);
            else fault("body." + EntryReading.Shown(name), "unknown", rule.Fields.Count == 0 ? $"{rule.Kind} says nothing more" : $"{rule.Kind} has {string.Join(", ", rule.Fields.Select(known => known.Name))}");
        }
    }

    private static void CheckField(string name, object? value, FieldRule field, Action<string, string, string> fault)
    {
        if (value is null && field.Clears) return;
        if (Reason(value, field) is { } reason) fault("body." + name, reason, Right(field));
    }

    private static void CheckSetting(string name, object? value, Action<string, string, string> fault)
    {
        if (value is string { Length: > FieldRule.LongestText } or string[]) fault("body." + name, "too long, or a list", "a text, number, true or false");
    }

    private static string? Reason(object? value, FieldRule field) => field.Type switch
    {
        FieldType.Text => value is string text ? TextReason(text) : "no text",
        FieldType.Number => value is double number ? RangeReason(number, field) : "no number",
        FieldType.Whole => value is not double number ? "no number" : number != Math.Floor(number) ? $"{EntryReading.Number(number)} is no whole number" : RangeReason(number, field),
        FieldType.YesNo => value is bool ? null : "neither true nor false",
        FieldType.Id => IsId(value) ? null : "no UUID",
        FieldType.Ids => value is string[] ids && ids.Length <= FieldRule.LongestList && ids.All(IsId) ? null : "no list of UUIDs",
        FieldType.Word => value is string word && field.Words.Contains(word) ? null : $"unknown: {(value is string other ? EntryReading.Shown(other) : "no text")}",
        FieldType.LocalDate => value is string date && EntryReading.IsDate(date) ? null : "no date",
        FieldType.LocalDateTime => value is string time && EntryReading.IsDateTime(time) ? null : "no local date and time",
        _ => throw new ArgumentOutOfRangeException(nameof(field), field.Type, "no type of field"),
    };

    private static string? TextReason(string text) => text.Length > FieldRule.LongestText ? $"{text.Length} letters" : text.Contains('\0') ? "a letter of code 0" : null;

    private static string? RangeReason(double number, FieldRule field) => number < field.Min ? EntryReading.Number(number) + ", too small" : number > field.Max ? EntryReading.Number(number) + ", too large" : null;

    private static bool IsId(object? value) => value is string text && Guid.TryParseExact(text, "D", out Guid id) && id != Guid.Empty;

    private static string Right(FieldRule field)
    {
        string right = field.Type switch
        {
            FieldType.Text => $"a text of at most {FieldRule.LongestText} letters",
            FieldType.Number => Range("a number", field),
            FieldType.Whole => Range("a whole number", field),
            FieldType.YesNo => "true or false",
            FieldType.Id => "a UUID",
            FieldType.Ids => $"a list of at most {FieldRule.LongestList} UUIDs",
            FieldType.Word => "one of " + string.Join(", ", field.Words),
            FieldType.LocalDate => "a date such as 2026-06-13",
            _ => "a local date and time such as 2026-06-13T17:05:00",
        };
        return $"{field.Means}: {right}{(field.Clears ? ", or null" : "")}";
    }

    private static string Range(string what, FieldRule field) =>
        double.IsInfinity(field.Min) ? what : $"{what} from {EntryReading.Number(field.Min)} to {EntryReading.Number(field.Max)}";
}
