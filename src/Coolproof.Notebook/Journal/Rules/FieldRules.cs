using Coolproof.Notebook.Tables;

namespace Coolproof.Notebook.Journal.Rules;

/// <summary>Short ways to say a field's rule. Ranges that the readings table has too are taken from it.</summary>
internal static class FieldRules
{
    public static FieldRule Text(string name, string means) => new(name, FieldType.Text, means);

    public static FieldRule Number(string name, double min, double max, string means) => new(name, FieldType.Number, means) { Min = min, Max = max };

    public static FieldRule Whole(string name, double min, double max, string means) => new(name, FieldType.Whole, means) { Min = min, Max = max };

    public static FieldRule YesNo(string name, string means) => new(name, FieldType.YesNo, means);

    public static FieldRule Id(string name, string means) => new(name, FieldType.Id, means);

    public static FieldRule Ids(string name, string means) => new(name, FieldType.Ids, means);

    public static FieldRule Word(string name, string means, params IReadOnlyList<string> words) => new(name, FieldType.Word, means) { Words = words };

    public static FieldRule Date(string name, string means) => new(name, FieldType.LocalDate, means);

    public static FieldRule DateTime(string name, string means) => new(name, FieldType.LocalDateTime, means);

    /// <summary>A field with the range or words of a column of the readings table.</summary>
    public static FieldRule Column(string name, Field column, string means)
    {
        ColumnRule rule = ColumnRules.Of(column);
        FieldType type = rule.Quantity switch
        {
            Quantity.Text => FieldType.Text,
            Quantity.Whole => FieldType.Whole,
            Quantity.Choice => FieldType.Word,
            Quantity.YesNo => FieldType.YesNo,
            Quantity.DateTime => FieldType.LocalDateTime,
            _ => FieldType.Number,
        };
        return new FieldRule(name, type, means) { Min = rule.Min, Max = rule.Max, Words = rule.Allowed };
    }

    /// <summary>The field must be there.</summary>
    public static FieldRule Must(FieldRule field) => field with { Required = true };

    /// <summary>The field may be null.</summary>
    public static FieldRule OrNull(FieldRule field) => field with { Clears = true };

    /// <summary>A kind that sets fields one by one: none is required, null clears.</summary>
    public static KindRule Set(string kind, string about, params IReadOnlyList<FieldRule> fields) =>
        new(kind, about, "the fields that it names; per field the latest counts", [.. fields.Select(OrNull)]);
}
