namespace Coolproof.Screen;

/// <summary>Weight and colour of text on a terminal; nothing at all elsewhere. Colour never carries a meaning of its own.</summary>
/// <param name="On">Whether escape sequences are written.</param>
internal readonly record struct Ink(bool On)
{
    /// <summary>What must be seen first.</summary>
    public string Bold(string text) => Wrapped(text, "\e[1m");

    /// <summary>What may be skipped.</summary>
    public string Faint(string text) => Wrapped(text, "\e[2m");

    string Wrapped(string text, string start) => On && text.Length > 0 ? $"{start}{text}\e[0m" : text;
}
