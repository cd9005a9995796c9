namespace Coolproof.Notebook.Tables;

/// <summary>Finds the separator of a table: the one by which most of the header's names are known.</summary>
internal static class SeparatorChoice
{
    private static readonly char[] Candidates = [',', ';', '\t'];

    /// <summary>The separator, and whether the first row only declares it ("sep=;", as some spreadsheets write).</summary>
    /// <param name="head">The first part of the text.</param>
    public static (char Separator, bool Declared) For(string head)
    {
        if (head.Length > 5 && head.StartsWith("sep=", StringComparison.OrdinalIgnoreCase) && head[5] is '\r' or '\n') return (head[4], true);
        return (Candidates.MaxBy(candidate => Score(head, candidate)), false);
    }

    // Known names first; where none is known, the separator that makes the most cells, so that the message shows names one by one.
    private static (int Known, int Cells) Score(string head, char separator)
    {
        RowSplitter rows = new(new StringReader(head), separator);
        while (rows.Next())
        {
            if (rows.Cells.TrueForAll(string.IsNullOrWhiteSpace)) continue;
            return (rows.Cells.Count(cell => Header.Lookup(cell) is not null), rows.Cells.Count);
        }

        return (0, 0);
    }
}
