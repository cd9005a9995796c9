using System.Globalization;
using Coolproof.Traces.Import;

namespace Coolproof.Traces.Live;

/// <summary>Reads lines of sensors by docs/formats/live-lines.md: a name, a value, a unit, and perhaps a time.</summary>
public static class LiveLineReader
{
    /// <summary>Longest line, bytes.</summary>
    public const int LongestLine = 200;

    /// <summary>Longest name, letters.</summary>
    public const int LongestName = 32;

    /// <summary>Longest unit, letters.</summary>
    public const int LongestUnit = 12;

    static readonly char[] Blanks = [' ', '\t', '\u00a0'];
    static readonly string[] NoValue = ["nan", "-nan", "inf", "-inf", "+inf", "null", "none", "open", "err", "error", "fault", "na", "n/a", "--", "-"];
    static readonly string[] NoUnit = ["-", "1"];

    /// <summary>How far a sender's clock may be ahead, ms.</summary>
    public const long MostAheadMs = LineTime.Ahead;

    const string Form = "Write a name, a value and a unit, such as: can 64.3 °C";

    /// <summary>Reads a line.</summary>
    /// <param name="text">The line without its end.</param>
    /// <param name="arrivedMs">When it came: milliseconds since 1970-01-01 UTC.</param>
    public static LineRead Read(string text, long arrivedMs)
    {
        ArgumentNullException.ThrowIfNull(text);
        return Ahead(text) ?? OfWords(Words(text), arrivedMs);
    }

    /// <summary>Reads what a channel of a known name sent: a value, perhaps with a unit and a time; or a line that says its own name.</summary>
    /// <param name="name">The channel's name.</param>
    /// <param name="text">What it sent.</param>
    /// <param name="arrivedMs">When it came: milliseconds since 1970-01-01 UTC.</param>
    public static LineRead ReadOf(string name, string text, long arrivedMs)
    {
        ArgumentNullException.ThrowIfNull(name);
        ArgumentNullException.ThrowIfNull(text);
        if (Ahead(text) is { } answer) return answer;
        var words = Words(text);
        if (!BeginsValue(words[0])) return OfWords(words, arrivedMs);
        var unitless = words.Count == 1 || words[1][0] == '@';
        return OfWords(unitless ? [name, words[0], NoUnit[0], .. words.Skip(1)] : [name, .. words], arrivedMs);
    }

    // What needs no understanding, and what shows at a glance that it can't be.
    static LineRead? Ahead(string text)
    {
        var trimmed = text.AsSpan().Trim();
        if (trimmed.IsEmpty || trimmed[0] == '#') return LineRead.Nothing;
        if (text.Length > LongestLine) return Bad($"The line is longer than {LongestLine} letters.", "Send one value a line.");
        if (text.Contains('\0')) return Bad("The line holds zero bytes.", "Have the sender write UTF-8 or ASCII, not UTF-16; or the speed of the port is another one.");
        if (text.AsSpan().ContainsAnyInRange('\u0001', '\u0008') || text.AsSpan().ContainsAnyInRange('\u000e', '\u001f') || text.Contains('\ufffd') || text.AsSpan().ContainsAnyInRange('\u007f', '\u009f'))
            return Bad("The line holds bytes that are no letters.", "Most often the speed of the port (baud) is another one than the sender's.");
        return trimmed[0] is '{' or '[' or '<' ? Bad("The line looks like JSON or XML.", Form) : null;
    }

    static List<string> Words(string text)
    {
        var words = text.Split(Blanks, StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).ToList();
        // "can: 64.3 °C", "can=64.3 °C", "can = 64.3 °C"
        if (words[0].IndexOfAny([':', '=']) is > 0 and var mark)
        {
            var (name, rest) = (words[0][..mark], words[0][(mark + 1)..]);
            words.RemoveAt(0);
            words.InsertRange(0, rest.Length > 0 ? [name, rest] : [name]);
        }
        else if (words.Count > 1 && words[1] is ":" or "=") words.RemoveAt(1);
        return words;
    }

    static LineRead OfWords(List<string> words, long arrivedMs)
    {
        if (NameProblem(words[0]) is { } named) return new(null, named);
        if (words.Count < 2) return Bad("There is a name, and no value.", Form);
        if (!BeginsValue(words[1])) return NoNumber(words[1]);
        if (!NoValue.Contains(words[1], StringComparer.OrdinalIgnoreCase) && NumberLength(words[1]) is var length && length < words[1].Length)
        {
            if (words[1][length] == ',') return Bad($"\"{words[1]}\" has a comma.", "Write a decimal point: 64.3");
            words = [words[0], words[1][..length], words[1][length..], .. words.Skip(2)]; // 64.3°C
        }
        if (words.Count < 3 || words[2][0] == '@') return Bad("There is no unit.", "Write one after the value; - where there is none.");
        if (words.Count > 4) return Bad("There are more than four words.", "A name has no blanks: can_top 64.3 °C. " + Form);
        if (UnitOf(words[2]) is not { } unit) return Bad($"\"{Short(words[2])}\" is no unit.", $"A unit has 1 to {LongestUnit} letters, digits and the signs ° % / ² ³ · ^ - µ Ω.");
        var at = arrivedMs;
        if (words.Count == 4)
        {
            var (stamp, problem) = LineTime.Read(words[3], arrivedMs);
            if (problem is not null) return new(null, problem);
            at = stamp;
        }
        return ValueOf(words[1], unit, at, words[0]);
    }

    static LineRead ValueOf(string word, ChannelUnit unit, long atMs, string name)
    {
        LineRead Nonsense(string doubt) => new(new LiveLine(name, unit, new Sample(atMs, double.NaN, SampleMark.Nonsense), doubt), null);
        if (NoValue.Contains(word, StringComparer.OrdinalIgnoreCase)) return Nonsense($"the sensor sent \"{word}\" in place of a value");
        var written = double.Parse(word, NumberStyles.Float, CultureInfo.InvariantCulture);
        var own = unit.Own(written);
        if (!double.IsFinite(own)) return Nonsense($"{word} is too large for a number");
        if (own < unit.Least || own > unit.Most)
        {
            var (least, most) = unit.WrittenLimits();
            return Nonsense(string.Create(CultureInfo.InvariantCulture, $"{word} is past what can be right: {least:0.##} to {most:0.##}, in the unit as written"));
        }
        return new(new LiveLine(name, unit, new Sample(atMs, own, SampleMark.Good), null), null);
    }

    static LineProblem? NameProblem(string name)
    {
        if (name.Length > LongestName) return new("The name is too long.", $"A name has 1 to {LongestName} letters.");
        if (!char.IsLetter(name[0])) return new($"\"{Short(name)}\" is no name.", "A name begins with a letter. " + Form);
        return name.All(letter => char.IsLetterOrDigit(letter) || letter is '_' or '-' or '.' or '/') ? null
            : new($"\"{Short(name)}\" is no name.", "A name has letters, digits and the signs _ - . / only.");
    }

    static ChannelUnit? UnitOf(string word)
    {
        if (NoUnit.Contains(word)) return ChannelUnit.None;
        if (ChannelUnit.Of(word) is { } known) return known;
        var plausible = word.Length <= LongestUnit && word.All(letter => char.IsLetterOrDigit(letter) || letter is '°' or '%' or '/' or '²' or '³' or '·' or '^' or '-' or 'µ' or 'Ω' or '"' or '\'');
        return plausible && (char.IsLetter(word[0]) || word[0] is '°' or '%' or '/' or 'µ' or 'Ω') ? ChannelUnit.None with { Name = word } : null;
    }

    static bool BeginsValue(string word) => NoValue.Contains(word, StringComparer.OrdinalIgnoreCase) || NumberLength(word) > 0;

    /// <summary>How many letters at the beginning of a word are a decimal number; 0 where it begins with none.</summary>
    internal static int NumberLength(ReadOnlySpan<char> word)
    {
        var place = word.Length > 0 && word[0] is '+' or '-' ? 1 : 0;
        var digits = Digits(word[place..]);
        place += digits;
        if (place < word.Length && word[place] == '.')
        {
            var after = Digits(word[(place + 1)..]);
            if (digits + after > 0) place += 1 + after;
            digits += after;
        }
        if (digits == 0) return 0;
        if (place >= word.Length || word[place] is not ('e' or 'E')) return place;
        var sign = place + 1 < word.Length && word[place + 1] is '+' or '-' ? 1 : 0;
        var power = Digits(word[Math.Min(word.Length, place + 1 + sign)..]);
        return power > 0 ? place + 1 + sign + power : place;
    }

    static int Digits(ReadOnlySpan<char> word)
    {
        var count = word.IndexOfAnyExceptInRange('0', '9');
        return count < 0 ? word.Length : count;
    }

    /// <summary>The beginning of a word, for a message.</summary>
    internal static string Short(string word) => word.Length <= 24 ? word : word[..23] + "…";

    static LineRead NoNumber(string word) => Bad($"\"{Short(word)}\" is no number.", "Write digits with a decimal point, such as 64.3, -5 or 1.2e3; nan where there is none. A name has no blanks.");

    static LineRead Bad(string reason, string remedy) => new(null, new LineProblem(reason, remedy));
}
