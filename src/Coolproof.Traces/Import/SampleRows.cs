using System.Globalization;

namespace Coolproof.Traces.Import;

/// <summary>The rows of values among the first lines of a file, cut by the separator that makes the most sense of them.</summary>
sealed class SampleRows
{
    readonly IReadOnlyList<IReadOnlyList<string>> _lines;
    readonly int _first;
    readonly int _header;

    SampleRows(IReadOnlyList<IReadOnlyList<string>> lines, char separator, bool decimalComma, int columns, int first, int header)
    {
        _lines = lines;
        (Separator, DecimalComma, Columns, _first, _header) = (separator, decimalComma, columns, first, header);
    }

    public char Separator { get; }
    public bool DecimalComma { get; }
    public int Columns { get; }
    /// <summary>Line of the first row, from 1.</summary>
    public int FirstLine => _first + 1;
    /// <summary>Line of the names, from 1; 0: none.</summary>
    public int HeaderLine => _header + 1;
    public IReadOnlyList<string> HeaderCells => _header < 0 ? [] : _lines[_header];

    IEnumerable<IReadOnlyList<string>> Rows => _lines.Skip(_first).Where(cells => cells.Count == Columns);

    /// <summary>Cuts the lines by each separator and keeps the cut with the most cells that are numbers or times in rows alike.</summary>
    /// <exception cref="TraceRefusedException">There is no row of numbers.</exception>
    public static SampleRows Of(FileHead head)
    {
        SampleRows? best = null;
        double most = 0;
        foreach (char separator in Separators.All)
        {
            IReadOnlyList<string>[] lines = [.. head.Lines.Select(line => FileHead.Cells(line, separator))];
            foreach (bool comma in (bool[])[false, true])
            {
                // A comma between bare cells can't be a decimal mark too; between quoted ones it can.
                if (comma && separator == ',' && !head.Lines.Any(line => line.Contains('"'))) continue;
                foreach (int columns in lines.Where(cells => cells.Any(c => c.Length > 0)).GroupBy(cells => cells.Count).OrderByDescending(g => g.Count()).Take(2).Select(g => g.Key))
                {
                    double worth = Worth(lines, columns, comma);
                    if (worth <= most || Cut(lines, separator, comma, columns) is not { } cut) continue;
                    (best, most) = (cut, worth);
                }
            }
        }
        return best ?? throw new TraceRefusedException(new TraceProblem(0, "", "no rows of numbers in its first lines", "rows of a logger: a time and values, parted by commas, semicolons, tabs or bars"));
    }

    static double Worth(IReadOnlyList<string>[] lines, int columns, bool comma)
    {
        double worth = 0;
        foreach (IReadOnlyList<string> cells in lines.Where(cells => cells.Count == columns))
        {
            int good = cells.Count(cell => IsValue(cell, comma)), said = cells.Count(cell => cell.Length > 0);
            // Cells that are no values weigh against a cut: "1,5;2,5" cut at commas.
            worth += good == 0 ? 0 : Math.Max(0, good - (2 * (said - good)) + (columns > 1 ? 0.5 : 0));
        }
        return worth;
    }

    static SampleRows? Cut(IReadOnlyList<string>[] lines, char separator, bool comma, int columns)
    {
        bool IsRow(int at) => at < lines.Length && lines[at].Count == columns && 2 * lines[at].Count(cell => IsValue(cell, comma)) >= lines[at].Count(cell => cell.Length > 0) && lines[at].Any(cell => IsValue(cell, comma));
        int first = -1;
        for (int i = 0; i < lines.Length && first < 0; i++)
            if (IsRow(i) && (i + 1 >= lines.Length || IsRow(i + 1) || lines.Skip(i + 1).All(cells => cells.All(c => c.Length == 0)))) first = i;
        if (first < 0) return null;
        int header = first - 1;
        while (header >= 0 && lines[header].All(cell => cell.Length == 0)) header--;
        if (header >= 0 && (lines[header].Count != columns || lines[header].Any(cell => IsValue(cell, comma)))) header = -1;
        // A row of units stands below the names.
        if (header > 0 && IsUnits(lines[header]) && lines[header - 1].Count == columns && !lines[header - 1].Any(cell => IsValue(cell, comma))) header--;
        return new SampleRows(lines, separator, comma, columns, first, header);
    }

    static bool IsUnits(IReadOnlyList<string> cells)
    {
        string[] said = [.. cells.Select(cell => cell.Trim('[', ']', '(', ')', ' ')).Where(cell => cell.Length > 0)];
        return said.Length > 0 && 2 * said.Count(ColumnName.IsUnit) >= said.Length;
    }

    static bool IsValue(string cell, bool comma) => NumberOf(cell, comma) is not null || LayoutGuess.IsClock(cell) || LayoutGuess.IsDate(cell, timed: true) || LayoutGuess.IsDate(cell, timed: false);

    static double? NumberOf(string cell, bool comma)
    {
        if (cell.Length is 0 or > 40 || cell.Contains(comma ? '.' : ',')) return null;
        return double.TryParse(comma ? cell.Replace(',', '.') : cell, NumberStyles.Float, CultureInfo.InvariantCulture, out double number) && double.IsFinite(number) ? number : null;
    }

    /// <summary>Names of the columns and units that they or the row below them say.</summary>
    public string[] Names(out string[] units)
    {
        string[] names = new string[Columns];
        units = new string[Columns];
        bool below = _header >= 0 && _first - _header > 1 && IsUnits(_lines[_header + 1]);
        for (int c = 0; c < Columns; c++)
        {
            string header = _header < 0 ? "" : _lines[_header][c];
            (names[c], units[c]) = ColumnName.Parts(header);
            if (below && _lines[_header + 1].Count > c && _lines[_header + 1][c].Trim('[', ']', '(', ')', ' ') is { Length: > 0 } unit) (names[c], units[c]) = (header, unit);
            if (names[c].Length == 0) names[c] = $"column {c + 1}";
        }
        return names;
    }

    public double? Number(string cell) => NumberOf(cell, DecimalComma);

    public IEnumerable<double> Numbers(int column) => Rows.Select(cells => Number(cells[column])).OfType<double>();

    public string FirstCell(int column) => Rows.Select(cells => cells[column]).FirstOrDefault(cell => cell.Length > 0) ?? "";

    /// <summary>Whether nearly all cells that say something are so.</summary>
    public bool All(int column, Func<string, bool> so)
    {
        string[] said = [.. Rows.Select(cells => cells[column]).Where(cell => cell.Length > 0)];
        return said.Length > 0 && said.Count(so) >= 0.9 * said.Length;
    }

    public bool MostlyNumbers(int column)
    {
        string[] said = [.. Rows.Select(cells => cells[column]).Where(cell => cell.Length > 0)];
        return said.Length > 0 && 2 * said.Count(cell => Number(cell) is not null) >= said.Length;
    }

    /// <summary>Whether a column's numbers hardly ever go back and do go on. One that is named as time may have a few bad cells among the first.</summary>
    public bool Rises(int column, bool named)
    {
        if (named ? !MostlyNumbers(column) : !All(column, cell => Number(cell) is not null)) return false;
        double[] numbers = [.. Numbers(column)];
        int back = 0;
        for (int i = 1; i < numbers.Length; i++) if (numbers[i] < numbers[i - 1]) back++;
        return back <= (named ? 0.2 : 0.02) * numbers.Length && numbers[^1] > numbers[0];
    }

    public double MedianStep(int column)
    {
        double[] numbers = [.. Numbers(column)];
        double[] steps = [.. numbers.Zip(numbers.Skip(1), (a, b) => b - a).Where(step => step > 0).Order()];
        return steps.Length == 0 ? 0 : steps[steps.Length / 2];
    }
}
