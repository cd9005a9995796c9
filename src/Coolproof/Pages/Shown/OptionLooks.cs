using Coolproof.Notebook.Journal;
using Coolproof.Pictures;

namespace Coolproof.Pages.Shown;

/// <summary>The one colour and mark of each cooling option, everywhere: as chosen, else by the order in which the options were made.</summary>
internal static class OptionLooks
{
    static readonly string[] Marks = ["circle", "square", "triangle-up", "diamond", "triangle-down", "cross", "star", "hourglass"];

    /// <summary>Words of the palette, in its order.</summary>
    public static IReadOnlyList<string> Colours { get; } = ["black", "orange", "sky blue", "bluish green", "yellow", "blue", "vermillion", "reddish purple"];

    /// <summary>Words of the marks, as entries name them, in the order of <see cref="Mark"/>.</summary>
    public static IReadOnlyList<string> MarkWords => Marks;

    /// <summary>The look of an option.</summary>
    public static OptionLook Of(PitNotebook notebook, NotedOption option)
    {
        var place = notebook.OptionsEver.ToList().FindIndex(other => other.Id == option.Id);
        return Of(option, Math.Max(0, place));
    }

    /// <summary>Looks of all options by name, for pictures.</summary>
    public static IReadOnlyDictionary<string, OptionLook> ByName(PitNotebook notebook)
    {
        Dictionary<string, OptionLook> looks = new(StringComparer.OrdinalIgnoreCase);
        var place = 0;
        foreach (var option in notebook.OptionsEver)
        {
            // Of two options of one name the one that is in use counts.
            if (!option.Removed || !looks.ContainsKey(option.Name)) looks[option.Name] = Of(option, place);
            place++;
        }
        return looks;
    }

    static OptionLook Of(NotedOption option, int place)
    {
        var usual = OptionLook.At(place);
        var mark = Array.IndexOf(Marks, option.Mark);
        return new OptionLook(option.Colour is { } colour and >= 0 and < 8 ? OptionLook.Palette[colour] : usual.ColourHex, mark >= 0 ? (Mark)mark : usual.Mark);
    }
}
