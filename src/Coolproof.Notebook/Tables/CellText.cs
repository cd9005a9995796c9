using System.Globalization;
using NodaTime;
using NodaTime.Text;

namespace Coolproof.Notebook.Tables;

/// <summary>Reads what people type into cells: numbers with point or comma and a unit, times, dates, words.</summary>
internal static class CellText
{
    // The smallest double, written out without an exponent, and a unit.
    private const int LongestNumber = 400;

    // Converted values are rounded here, far below what can be typed, so that 143.6 °F is 62 °C to the last bit and 6.1 min is 366 s.
    private const int ConvertedDecimals = 9;

    private static readonly LocalDateTimePattern[] Times =
    [
        LocalDateTimePattern.CreateWithInvariantCulture("uuuu-M-d'T'H:mm"),
        LocalDateTimePattern.CreateWithInvariantCulture("uuuu-M-d'T'H:mm:ss"),
        LocalDateTimePattern.CreateWithInvariantCulture("uuuu-M-d'T'H:mm:ss;FFFFFFFFF"),
    ];

    private static readonly OffsetPattern[] Offsets =
    [
        OffsetPattern.GeneralInvariantWithZ, OffsetPattern.CreateWithInvariantCulture("+HHmm"), OffsetPattern.CreateWithInvariantCulture("+HH:mm"),
    ];

    /// <summary>Whether a cell says nothing: blank, or a dash or "n/a" as people write for it.</summary>
    public static bool SaysNothing(string cell) => cell is "" or "-" or "–" or "—" || cell.Equals("n/a", StringComparison.OrdinalIgnoreCase);

    /// <summary>A number at the start of a cell, and what follows it in lower case, without blanks.</summary>
    public static bool TryNumber(string cell, out double number, out string unit) => TryNumber(cell.AsSpan(), out number, out unit, out _);

    /// <summary>A temperature in °C; the cell's own unit goes before the column's. False when it is none or has no unit.</summary>
    public static bool TryCelsius(string cell, ColumnUnit column, out double celsius, out bool bare)
    {
        celsius = double.NaN;
        bare = false;
        if (!TryNumber(cell, out double number, out string unit)) return false;
        switch (unit.Trim('°', 'º', '˚', '*', '\''))
        {
            case "c" or "℃" or "celsius" or "degc" or "degreesc" or "deg.c":
                celsius = number;
                return true;
            case "f" or "℉" or "fahrenheit" or "degf" or "degreesf" or "deg.f":
                celsius = FromFahrenheit(number);
                return true;
            case "" or "deg" or "degrees" when column != ColumnUnit.None:
                bare = true;
                celsius = column == ColumnUnit.Fahrenheit ? FromFahrenheit(number) : number;
                return true;
            default:
                return false;
        }
    }

    private static double FromFahrenheit(double number) => Math.Round(Units.CelsiusFrom(number, TemperatureUnitChoice.Fahrenheit), ConvertedDecimals);

    /// <summary>A duration in s: "15", "15 s", "6 min", "6 min 30 s", "6:00" (min:s), "1:02:03" (h:min:s).</summary>
    public static bool TrySeconds(string cell, ColumnUnit column, out double seconds, out bool bare)
    {
        bare = false;
        if (cell.Contains(':')) return TryClock(cell, out seconds);
        seconds = 0;
        ReadOnlySpan<char> rest = cell.AsSpan().Trim();
        double smallest = double.PositiveInfinity;
        for (int parts = 0; rest.Length > 0; parts++)
        {
            if (!TryNumber(rest, out double number, out _, out int length)) return false;
            if (parts > 0 && number < 0) return false;
            rest = rest[length..].TrimStart();
            int letters = 0;
            while (letters < rest.Length && !char.IsDigit(rest[letters]) && !char.IsWhiteSpace(rest[letters])) letters++;
            double size = SecondsIn(rest[..letters], column);
            // Units go downwards (6 min 30 s); a bare number stands alone.
            if (double.IsNaN(size) || size >= smallest || (letters == 0 && parts > 0)) return false;
            bare = letters == 0;
            smallest = letters == 0 ? 0 : size;
            seconds += size == 1 ? number : Math.Round(number * size, ConvertedDecimals);
            rest = rest[letters..].TrimStart();
        }

        return smallest < double.PositiveInfinity;
    }

    /// <summary>A local date and time by ISO 8601, with T or a blank, with or without seconds and offset.</summary>
    public static StartTime? TryStart(string cell)
    {
        string text = cell.Trim().Replace(' ', 'T').Replace('t', 'T').Replace('z', 'Z').Replace('−', '-').Replace(',', '.');
        int time = text.IndexOf('T');
        if (time < 0 || text.Length > 40) return null;
        text = text.TrimEnd('T');
        Offset? offset = null;
        int sign = text.IndexOfAny(['+', '-', 'Z'], time);
        if (sign >= 0)
        {
            string written = text[sign..];
            foreach (OffsetPattern pattern in Offsets)
            {
                if (pattern.Parse(written) is { Success: true } parsed) offset = parsed.Value;
            }

            if (offset is null) return null;
            text = text[..sign].TrimEnd('T');
        }

        foreach (LocalDateTimePattern pattern in Times)
        {
            if (pattern.Parse(text) is { Success: true } parsed) return new StartTime(parsed.Value, offset);
        }

        return null;
    }

    /// <summary>Yes or no; null when it is neither.</summary>
    public static bool? TryYes(string cell) => cell.ToLowerInvariant() switch
    {
        "yes" or "y" or "true" or "1" or "x" => true,
        "no" or "n" or "false" or "0" => false,
        _ => null,
    };

    /// <summary>Place of a word in the list of allowed words, whatever its case, blanks and hyphens; −1 when it is none of them.</summary>
    public static int PlaceOf(string cell, ColumnRule rule)
    {
        string word = Letters(cell);
        foreach ((string spelling, string meant) in rule.Spellings)
        {
            if (word == Letters(spelling)) return Array.IndexOf(rule.Allowed, meant);
        }

        return Array.FindIndex(rule.Allowed, allowed => word == Letters(allowed));
    }

    /// <summary>A name with its blanks set right.</summary>
    public static string Name(string cell) => string.Join(' ', cell.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    private static string Letters(string text) => string.Concat(text.Where(char.IsLetterOrDigit)).ToLowerInvariant();

    private static bool TryNumber(ReadOnlySpan<char> cell, out double number, out string unit, out int length)
    {
        number = double.NaN;
        unit = "";
        length = 0;
        ReadOnlySpan<char> text = cell.Trim();
        if (text.Length is 0 or > LongestNumber) return false;
        Span<char> digits = stackalloc char[text.Length + 1];
        int count = 0;
        int points = 0;
        int i = 0;
        if (text[0] is '+' or '-' or '−' or '–')
        {
            if (text[0] != '+') digits[count++] = '-';
            i++;
        }

        for (; i < text.Length && (char.IsAsciiDigit(text[i]) || text[i] is '.' or ','); i++)
        {
            if (!char.IsAsciiDigit(text[i])) points++;
            digits[count++] = text[i] == ',' ? '.' : text[i];
        }

        // Two separators (1,234.5) could be thousands or a slip: not guessed.
        if (points > 1) return false;
        length = i;
        unit = string.Concat(text[i..].ToString().Where(c => !char.IsWhiteSpace(c))).ToLowerInvariant().Replace("ω", "ohm");
        return double.TryParse(digits[..count], NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out number)
            && double.IsFinite(number);
    }

    private static bool TryClock(string cell, out double seconds)
    {
        seconds = 0;
        string[] parts = cell.Split(':');
        if (parts.Length > 3) return false;
        for (int i = 0; i < parts.Length; i++)
        {
            bool last = i == parts.Length - 1;
            string part = last ? parts[i].TrimEnd() : parts[i].Trim();
            if (!TryNumber(part, out double number, out string unit) || number < 0) return false;
            if (!(unit.Length == 0 || (last && unit is "min" or "s")) || (i > 0 && number >= 60) || (!last && number != Math.Floor(number))) return false;
            seconds = (60 * seconds) + number;
        }

        return cell.TrimStart()[0] is not ('-' or '−' or '–');
    }

    private static double SecondsIn(ReadOnlySpan<char> unit, ColumnUnit column) => unit.ToString().ToLowerInvariant().TrimEnd('.') switch
    {
        "s" or "sec" or "secs" or "second" or "seconds" or "\"" or "''" => 1,
        "m" or "min" or "mins" or "minute" or "minutes" or "'" => 60,
        "h" or "hr" or "hour" or "hours" => 3600,
        "" when column == ColumnUnit.Seconds => 1,
        "" when column == ColumnUnit.Minutes => 60,
        _ => double.NaN,
    };
}
