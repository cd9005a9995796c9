namespace Coolproof.Words;

/// <summary>An answer in two parts: the answer proper stands large, what goes with it beneath. What to fit is an answer before any number.</summary>
/// <param name="First">The answer proper.</param>
/// <param name="Rest">What goes with it; may be empty.</param>
internal readonly record struct AnswerParts(string First, string Rest)
{
    /// <summary>The parts of an answer.</summary>
    public static AnswerParts Of(string answer)
    {
        var cut = Cut(answer);
        var rest = answer[cut..].TrimStart(';', '.', ':', ' ');
        return new(answer[..cut] + ".", rest.Length == 0 ? "" : char.ToUpperInvariant(rest[0]) + rest[1..]);
    }

    static int Cut(string answer) => answer.StartsWith("Fit ", StringComparison.Ordinal) && answer.IndexOf(": ", StringComparison.Ordinal) is >= 0 and var told ? told
        : answer.IndexOf("; ", StringComparison.Ordinal) is >= 0 and var clause ? clause
        : answer.IndexOf(". ", StringComparison.Ordinal) is >= 0 and var sentence ? sentence : answer.TrimEnd('.').Length;
}
