using Coolproof.Screen;

namespace Coolproof.Words;

/// <summary>A label in the gutter, its text to the right of it.</summary>
internal static class Labelled
{
    /// <summary>Cells of the gutter.</summary>
    public const int Gutter = 15;

    /// <summary>One text under a label.</summary>
    public static IEnumerable<string> Text(string label, string text, PageSettings page, bool faint = false) =>
        Items(label, [text], int.MaxValue, page, faint);

    /// <summary>Texts under a label, whole ones only and no more lines than given; what didn't fit is counted.</summary>
    public static IEnumerable<string> Items(string label, IReadOnlyList<string> texts, int mostLines, PageSettings page, bool faint = false)
    {
        var shown = new List<string>();
        var blank = new string(' ', Gutter);
        var count = 0;
        foreach (var text in texts)
        {
            var lines = Cells.Wrap(text, page.Width, blank, blank);
            var last = count == texts.Count - 1;
            if (shown.Count + lines.Count + (last ? 0 : 1) > mostLines && count > 0) break;
            shown.AddRange(lines);
            count++;
        }
        if (count < texts.Count) shown.Add($"{blank}and {texts.Count - count} more: --details");
        for (var i = 0; i < shown.Count; i++)
        {
            var text = faint ? page.Ink.Faint(shown[i][Gutter..]) : shown[i][Gutter..];
            yield return (i == 0 ? page.Ink.Bold(Cells.Left(label, Gutter)) : blank) + text;
        }
    }
}
