using System.Globalization;

namespace Coolproof.Traces.Live;

/// <summary>The time at the end of a line, after an @.</summary>
internal static class LineTime
{
    /// <summary>How long ago a value may have been measured, ms.</summary>
    public const long Oldest = 24 * 3_600_000L;

    /// <summary>How far a sender's clock may be ahead, ms.</summary>
    public const long Ahead = 5000;

    static readonly string[] Forms = ["yyyy-MM-dd'T'HH:mm:ssK", "yyyy-MM-dd'T'HH:mm:ss.FFFFFFFK"];

    const string Remedy = "Write @ and milliseconds since 1970 UTC, or an ISO 8601 time with Z or an offset, or how long ago: @-2.5s, @-250ms. Or leave it out: then the time is that of arrival.";

    /// <summary>Reads it.</summary>
    /// <param name="word">The word with its @.</param>
    /// <param name="arrivedMs">When the line came, ms since 1970-01-01 UTC.</param>
    /// <returns>The instant, ms since 1970-01-01 UTC, or a problem.</returns>
    public static (long AtMs, LineProblem? Problem) Read(string word, long arrivedMs)
    {
        if (word.Length < 2 || word[0] != '@') return (0, new($"\"{LiveLineReader.Short(word)}\" is no time.", Remedy));
        if (Instant(word[1..], arrivedMs) is not { } at) return (0, new($"\"{LiveLineReader.Short(word)}\" is no time.", Remedy));
        if (at < arrivedMs - Oldest) return (0, new("The time is more than a day before it came.", "Set the sender's clock, or write how long ago: @-2.5s"));
        return at > arrivedMs + Ahead ? (0, new("The time is yet to come.", "Set the sender's clock, or write how long ago: @-2.5s")) : (at, null);
    }

    static long? Instant(string word, long arrivedMs)
    {
        if (word[0] == '-') return Ago(word[1..]) is { } ago ? arrivedMs - ago : null;
        if (long.TryParse(word, NumberStyles.None, CultureInfo.InvariantCulture, out var ms)) return ms;
        if (!word.EndsWith('Z') && word.LastIndexOfAny(['+', '-']) < 11) return null; // a local time of whom?
        return DateTimeOffset.TryParseExact(word, Forms, CultureInfo.InvariantCulture, DateTimeStyles.None, out var time) ? time.ToUnixTimeMilliseconds() : null;
    }

    static long? Ago(string word)
    {
        var length = LiveLineReader.NumberLength(word);
        if (length == 0 || word[0] is '-' or '+') return null;
        double? scale = word[length..] switch { "ms" => 1, "s" => 1000, "min" => 60_000, _ => null };
        var ms = double.Parse(word[..length], NumberStyles.Float, CultureInfo.InvariantCulture) * scale;
        return ms <= long.MaxValue / 4 ? (long)Math.Round(ms.Value) : null;
    }
}
