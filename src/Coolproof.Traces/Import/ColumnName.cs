namespace Coolproof.Traces.Import;

/// <summary>A column's name as it stands in a header, parted into name and unit: "can [°C]", "can (C)", "can_c", "speed km/h".</summary>
static class ColumnName
{
    /// <summary>Parts it; the unit is empty where none is told.</summary>
    public static (string Name, string Unit) Parts(string header)
    {
        string text = header.Trim();
        foreach ((char open, char close) in ((char, char)[])[('[', ']'), ('(', ')'), ('{', '}')])
        {
            int at = text.LastIndexOf(open);
            if (at > 0 && text.EndsWith(close) && IsUnit(text[(at + 1)..^1])) return (text[..at].Trim(' ', '_'), text[(at + 1)..^1].Trim());
        }
        int cut = text.LastIndexOfAny([' ', '_', ',', '/']);
        // "km/h" is cut before its first letter, not at its stroke.
        if (cut > 0 && text[cut] == '/') cut = text.LastIndexOfAny([' ', '_', ','], cut);
        return cut > 0 && IsUnit(text[(cut + 1)..]) ? (text[..cut].Trim(' ', '_', ','), text[(cut + 1)..].Trim()) : (text, "");
    }

    /// <summary>Whether a word is a unit, of a channel or of time.</summary>
    public static bool IsUnit(string word) => ChannelUnit.Of(word) is not null || TimeUnit(word) is not null;

    /// <summary>How time is written with a unit; null when the word is no unit of time.</summary>
    public static TimeForm? TimeUnit(string word) => word.Trim().ToLowerInvariant() switch
    {
        "s" or "sec" or "secs" or "second" or "seconds" => TimeForm.Seconds,
        "ms" or "msec" or "millis" or "milliseconds" => TimeForm.Milliseconds,
        "us" or "µs" or "μs" or "usec" or "micros" or "microseconds" => TimeForm.Microseconds,
        "min" or "mins" or "minutes" => TimeForm.Minutes,
        "h" or "hr" or "hours" => TimeForm.Hours,
        "d" or "day" or "days" => TimeForm.Days,
        _ => null,
    };

    /// <summary>How much a name says that its column is time: 2 plainly, 1 perhaps, 0 not.</summary>
    public static int SaysTime(string name)
    {
        string word = string.Concat(name.ToLowerInvariant().Where(char.IsLetter));
        return word switch
        {
            "time" or "timestamp" or "datetime" or "elapsed" or "elapsedtime" or "runtime" or "timeofday" or "logtime" or "zeit" or "uhrzeit" or "temps" or "tiempo" or "millis" => 2,
            "t" or "ms" or "seconds" or "secs" or "date" or "clock" => 1,
            _ => word.EndsWith("time", StringComparison.Ordinal) || word.StartsWith("time", StringComparison.Ordinal) ? 1 : 0,
        };
    }
}
