namespace Coolproof.Screen;

/// <summary>Rows of text set in columns.</summary>
internal static class TextColumns
{
    const int Least = 8;

    /// <summary>The rows, two blanks between columns, no line longer than the width: the widest left-hand columns give way.</summary>
    /// <param name="rows">Rows, all of the same length.</param>
    /// <param name="right">Which columns are set to the right; those never give way.</param>
    /// <param name="width">Columns of the page.</param>
    public static IEnumerable<string> Lines(IEnumerable<string[]> rows, bool[] right, int width)
    {
        var all = rows.ToList();
        if (all.Count == 0) yield break;
        var widths = right.Select((_, i) => all.Max(row => Cells.Width(row[i]))).ToArray();
        while (widths.Sum() + 2 * (widths.Length - 1) > width)
        {
            var widest = Enumerable.Range(0, widths.Length).Where(i => !right[i] && widths[i] > Least).OrderByDescending(i => widths[i]).FirstOrDefault(-1);
            if (widest < 0) break;
            widths[widest]--;
        }
        foreach (var row in all)
        {
            var cells = row.Select((text, i) => right[i] ? Cells.Right(text, widths[i]) : Cells.Left(Cells.Fit(text, widths[i]), widths[i]));
            yield return Cells.Fit(string.Join("  ", cells).TrimEnd(), width);
        }
    }
}
