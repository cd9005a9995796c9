using System.Globalization;

namespace Coolproof.Commands;

/// <summary>Quantities as they are typed after an option. Each comes back as a number, or as words that say what would be right.</summary>
internal static class Typed
{
    /// <summary>A temperature of the air like "30C" or "86F".</summary>
    /// <param name="text">What was typed.</param>
    /// <param name="celsius">°C.</param>
    /// <returns>Null, or what would be right.</returns>
    public static string? Air(string text, out double celsius)
    {
        celsius = 0;
        if (!Split(text, out var number, out var unit) || unit is not ("c" or "f" or "°c" or "°f")) return "expected a temperature with its unit, like 30C or 86F";
        celsius = unit.EndsWith('f') ? (number - 32) / 1.8 : number;
        return celsius is >= -40 and <= 60 ? null : "air on this side of the Earth lies between -40C and 60C (-40F and 140F)";
    }

    /// <summary>Minutes after midnight of a clock time like "16:30"; null where it is none.</summary>
    public static int? MinuteOfDay(string text) =>
        TimeOnly.TryParseExact(text, ["H:mm", "HH:mm"], CultureInfo.InvariantCulture, DateTimeStyles.None, out var time) ? time.Hour * 60 + time.Minute : null;

    /// <summary>A length of driving like "360s", "6min" or "6:00".</summary>
    /// <param name="text">What was typed.</param>
    /// <param name="seconds">Seconds.</param>
    /// <returns>Null, or what would be right.</returns>
    public static string? Drive(string text, out double seconds)
    {
        seconds = 0;
        const string Right = "expected a time with its unit, like 360s, 6min or 6:00";
        if (text.Split(':') is [var minutes, { Length: 2 } rest])
        {
            if (!int.TryParse(minutes, NumberStyles.None, CultureInfo.InvariantCulture, out var m)
                || !int.TryParse(rest, NumberStyles.None, CultureInfo.InvariantCulture, out var s) || s > 59) return Right;
            seconds = 60.0 * m + s;
        }
        else
        {
            if (!Split(text, out var number, out var unit) || unit is not ("s" or "min")) return Right;
            seconds = unit == "min" ? number * 60 : number;
        }
        return seconds is >= 10 and <= 7200 ? null : "a run takes between 10s and 120min";
    }

    /// <summary>A stretch of time like "45min", "3h" or "2.5h".</summary>
    /// <param name="text">What was typed.</param>
    /// <param name="seconds">Seconds.</param>
    /// <returns>Null, or what would be right.</returns>
    public static string? Stretch(string text, out double seconds)
    {
        seconds = 0;
        if (!Split(text, out var number, out var unit) || unit is not ("s" or "min" or "h")) return "expected a time with its unit, like 45min or 3h";
        seconds = number * unit switch { "h" => 3600, "min" => 60, _ => 1 };
        return seconds is >= 0 and <= 24 * 3600 ? null : "expected at most 24h, and not less than nothing";
    }

    /// <summary>Any temperature like "62C" or "144F".</summary>
    /// <param name="text">What was typed.</param>
    /// <param name="celsius">°C.</param>
    /// <returns>Whether it is one.</returns>
    public static bool Degrees(string text, out double celsius)
    {
        var understood = Split(text, out celsius, out var unit) && unit is ("c" or "f" or "°c" or "°f");
        if (understood && unit.EndsWith('f')) celsius = (celsius - 32) / 1.8;
        return understood;
    }

    /// <summary>A body's temperature like "62C" or "144F".</summary>
    /// <param name="text">What was typed.</param>
    /// <param name="celsius">°C.</param>
    /// <returns>Null, or what would be right.</returns>
    public static string? Body(string text, out double celsius)
    {
        celsius = 0;
        if (!Split(text, out var number, out var unit) || unit is not ("c" or "f" or "°c" or "°f")) return "expected a temperature with its unit, like 62C or 144F";
        celsius = unit.EndsWith('f') ? (number - 32) / 1.8 : number;
        return celsius is >= -40 and <= 200 ? null : "a motor's can lies between -40C and 200C (-40F and 392F)";
    }

    /// <summary>A temperature difference like "2K", "2C" or "3.6F".</summary>
    /// <param name="text">What was typed.</param>
    /// <param name="kelvin">K.</param>
    /// <returns>Null, or what would be right.</returns>
    public static string? Difference(string text, out double kelvin)
    {
        kelvin = 0;
        if (!Split(text, out var number, out var unit) || unit is not ("k" or "c" or "f" or "°c" or "°f")) return "expected a difference with its unit, like 2K, 2C or 3.6F";
        kelvin = unit.EndsWith('f') ? number / 1.8 : number;
        return kelvin is > 0 and <= 50 ? null : "expected more than 0K and at most 50K";
    }

    /// <summary>A whole number.</summary>
    /// <param name="text">What was typed.</param>
    /// <param name="least">The least that makes sense.</param>
    /// <param name="most">The most.</param>
    /// <param name="number">The number.</param>
    /// <returns>Null, or what would be right.</returns>
    public static string? Whole(string text, int least, int most, out double number)
    {
        var understood = int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var whole) && whole >= least && whole <= most;
        number = whole;
        return understood ? null : $"expected a whole number from {least} to {most}";
    }

    /// <summary>A figure with its unit or without, like "85mm" or "85".</summary>
    /// <param name="text">What was typed.</param>
    /// <param name="unit">The unit; empty: none.</param>
    /// <param name="least">The least that makes sense.</param>
    /// <param name="most">The most.</param>
    /// <param name="figure">The figure.</param>
    /// <returns>Null, or what would be right.</returns>
    public static string? Figure(string text, string unit, double least, double most, out double figure)
    {
        var understood = Split(text, out figure, out var typed) && (typed.Length == 0 || typed == unit.ToLowerInvariant()) && figure >= least && figure <= most;
        return understood ? null : $"expected {least:0.###} to {most:0.###}{unit}";
    }

    /// <summary>One figure, or a range of two like "18..30"; both ends in it.</summary>
    /// <param name="text">What was typed.</param>
    /// <param name="unit">The unit; empty: none.</param>
    /// <param name="least">The least that makes sense.</param>
    /// <param name="most">The most.</param>
    /// <param name="range">Its ends; the same twice for one figure.</param>
    /// <returns>Null, or what would be right.</returns>
    public static string? Range(string text, string unit, double least, double most, out (double Least, double Most) range)
    {
        var ends = text.Split("..");
        range = default;
        if (ends.Length is not (1 or 2) || Figure(ends[0], unit, least, most, out range.Least) is not null || Figure(ends[^1], unit, least, most, out range.Most) is not null || range.Least > range.Most)
            return $"expected one figure or a range of two, the smaller first, within {least:0.###} to {most:0.###}{unit}, like {least:0.###}..{most:0.###}";
        return null;
    }

    /// <summary>A number followed by letters.</summary>
    static bool Split(string text, out double number, out string unit)
    {
        var trimmed = text.Trim();
        var end = trimmed.Length;
        while (end > 0 && (char.IsLetter(trimmed[end - 1]) || trimmed[end - 1] == '°')) end--;
        unit = trimmed[end..].ToLowerInvariant();
        var digits = trimmed[..end].TrimEnd().Replace(',', '.').Replace('−', '-');
        return double.TryParse(digits, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out number)
            && double.IsFinite(number);
    }
}
