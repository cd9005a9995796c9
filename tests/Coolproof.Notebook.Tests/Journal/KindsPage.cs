using System.Globalization;
using System.Text;
using Coolproof.Notebook.Journal.Rules;

namespace Coolproof.Notebook.Tests.Journal;

/// <summary>The table of kinds as docs/formats/entries.md shows it.</summary>
internal static class KindsPage
{
    public const string Begin = "<!-- kinds -->\n";
    public const string End = "<!-- end of kinds -->\n";

    public static string Of(IEnumerable<KindRule> rules)
    {
        StringBuilder page = new();
        foreach (KindRule rule in rules)
        {
            page.Append(CultureInfo.InvariantCulture, $"**`{rule.Kind}`** about: {rule.About}. {char.ToUpperInvariant(rule.Says[0])}{rule.Says[1..]}.");
            if (rule.Open) page.Append(" Settings of any other name: a text, number or yes or no.");
            page.Append('\n');
            foreach (FieldRule field in rule.Fields) page.Append(CultureInfo.InvariantCulture, $"- `{field.Name}`{(field.Required ? "\\*" : "")} {Type(field)}: {field.Means}\n");
            page.Append('\n');
        }

        return page.ToString();
    }

    private static string Type(FieldRule field)
    {
        string type = field.Type switch
        {
            FieldType.Text => "text",
            FieldType.Number => "number" + Range(field),
            FieldType.Whole => "whole number" + Range(field),
            FieldType.YesNo => "true or false",
            FieldType.Id => "UUID",
            FieldType.Ids => "list of UUIDs",
            FieldType.Word => string.Join(" / ", field.Words.Select(word => $"`{word}`")),
            FieldType.LocalDate => "date",
            _ => "local date and time",
        };
        return field.Clears && field.Required ? type + " or null" : type;
    }

    private static string Range(FieldRule field) => string.Create(CultureInfo.InvariantCulture, $" {field.Min} to {field.Max}");
}
