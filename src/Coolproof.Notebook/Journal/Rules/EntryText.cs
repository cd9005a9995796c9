using System.Text.Json;
using NodaTime;
using NodaTime.Text;

namespace Coolproof.Notebook.Journal.Rules;

/// <summary>How texts, numbers and instants stand in the JSON of entries.</summary>
internal static class EntryText
{
    public const string InstantRemedy = "an instant in UTC, ISO 8601 with milliseconds, such as 2026-06-13T15:05:12.345Z";

    // Far outside lies a clock that was never set; the years are those that PostgreSQL, SQLite and browsers all hold.
    private static readonly Instant Earliest = Instant.FromUtc(2000, 1, 1, 0, 0);
    private static readonly Instant Latest = Instant.FromUtc(2200, 1, 1, 0, 0);

    /// <summary>The text of a JSON string; null where it holds half a surrogate pair, which is no text.</summary>
    public static string? Of(JsonElement element)
    {
        try
        {
            return element.GetString();
        }
        catch (InvalidOperationException)
        {
            return null;
        }
    }

    /// <summary>An instant rounded down to the millisecond; null when it is none or out of range.</summary>
    public static Instant? InstantOf(string text)
    {
        ParseResult<Instant> parsed = InstantPattern.ExtendedIso.Parse(text);
        if (!parsed.Success || parsed.Value < Earliest || parsed.Value > Latest) return null;
        return Instant.FromUnixTimeMilliseconds(parsed.Value.ToUnixTimeMilliseconds());
    }

    /// <summary>An instant with milliseconds.</summary>
    public static string Written(Instant instant) => instant.ToString("uuuu'-'MM'-'dd'T'HH':'mm':'ss'.'fff'Z'", System.Globalization.CultureInfo.InvariantCulture);

    /// <summary>The value of a field of a body.</summary>
    public static object? ValueOf(JsonElement element, out bool understood)
    {
        understood = true;
        switch (element.ValueKind)
        {
            case JsonValueKind.Null: return null;
            case JsonValueKind.True: return true;
            case JsonValueKind.False: return false;
            case JsonValueKind.Number when element.TryGetDouble(out double number) && double.IsFinite(number): return number;
            case JsonValueKind.String when Of(element) is { } text: return text;
            case JsonValueKind.Array:
                List<string> list = [];
                foreach (JsonElement item in element.EnumerateArray())
                {
                    if (item.ValueKind == JsonValueKind.String && Of(item) is { } itemText) list.Add(itemText);
                    else understood = false;
                }

                return list.ToArray();
            default:
                understood = false;
                return null;
        }
    }
}
