using System.Globalization;
using Coolproof.Notebook.Journal;

namespace Coolproof.Pages.Questions;

/// <summary>What a class card, as the person typed it, says against a cooling option. The class's own rules come first.</summary>
internal static class ClassWords
{
    /// <summary>Each thing that the card doesn't allow; empty where it says nothing against it.</summary>
    public static IEnumerable<string> Against(NotedClass card, NotedOption option)
    {
        if (card.FansMax is { } most && option.Fans > most) yield return $"it has {option.Fans} fans, and {most} are allowed";
        if (card.FanMaxV is { } volts && option.FanV > volts) yield return string.Create(CultureInfo.InvariantCulture, $"its fan runs at {option.FanV:0.##} V, and {volts:0.##} V are allowed");
        if (card.OpeningsAllowed == false && option.CantBeUndone) yield return "openings in the shell are not allowed, and it can't be undone: see whether it cuts the shell";
    }
}
