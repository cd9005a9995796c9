using Coolproof.Evidence;
using Coolproof.Screen;

namespace Coolproof.Words;

/// <summary>The ranking as a table in text, with an interval strip where it fits.</summary>
internal static class RankingTable
{
    const int LeastStrip = 12;
    const int MostStrip = 30;
    const int LeastName = 8;
    const int NarrowPage = 80;

    /// <summary>Header and one line for each option, at most a number of lines.</summary>
    public static IEnumerable<string> Lines(IReadOnlyList<OptionVerdict> ranked, int mostLines, PageSettings page)
    {
        var shown = ranked.Count + 1 <= mostLines ? ranked : [.. ranked.Take(Math.Max(1, mostLines - 2))];
        var unit = page.Degrees.Unit;
        string[][] columns =
        [
            ["", .. shown.Select((_, i) => $"{i + 1}")],
            ["option", .. shown.Select(option => Cells.Clean(option.Name))],
            ["runs", .. shown.Select(option => $"{option.Runs}")],
            [$"can {unit}", .. shown.Select(option => page.Degrees.MiddleAndRange(option.PeakCanC))],
            [$"winding {unit}", .. shown.Select(option => Winding(option, page))],
            ["coolest?", .. Ranking.Coolest(ranked).Take(shown.Count)],
        ];
        var widths = columns.Select(column => column.Max(Cells.Width)).ToArray();
        var (name, strip) = Share(widths, page.Width);
        widths[1] = name;
        var axis = strip > 0 ? IntervalStrip.Over(shown.Select(option => option.PeakCanC), strip) : default;
        for (var row = 0; row <= shown.Count; row++)
        {
            var cells = columns.Select((column, i) => i is 0 or 2 ? Cells.Right(column[row], widths[i]) : Cells.Left(Cells.Fit(column[row], widths[i]), widths[i]));
            var line = string.Join("  ", cells);
            if (strip > 0) line += "  " + (row == 0 ? axis.Axis(page.Degrees) : axis.Draw(shown[row - 1].PeakCanC));
            line = Cells.Fit(line.TrimEnd(), page.Width);
            yield return row == 0 ? page.Ink.Faint(line) : line;
        }
        if (shown.Count < ranked.Count) yield return $"   and {ranked.Count - shown.Count} more options: --details";
    }

    /// <summary>The winding; on a narrow page without its range.</summary>
    static string Winding(OptionVerdict option, PageSettings page)
    {
        var text = page.Degrees.MiddleAndRange(option.PeakWindingC);
        return page.Width < NarrowPage ? text[..text.IndexOf(' ')] : text;
    }

    /// <summary>Cells for the names and for the strip: names first, as far as a short strip leaves room.</summary>
    static (int Name, int Strip) Share(int[] widths, int width)
    {
        var free = width - widths.Where((_, i) => i != 1).Sum() - 2 * (widths.Length - 1);
        var withStrip = free - 2 - LeastStrip;
        if (withStrip < Math.Min(widths[1], LeastName)) return (Math.Clamp(free, LeastName, Math.Max(LeastName, widths[1])), 0);
        var name = Math.Min(widths[1], withStrip);
        return (name, Math.Min(MostStrip, free - 2 - name));
    }
}
