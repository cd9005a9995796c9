using System.Globalization;

namespace Coolproof.Notebook.Tables;

/// <summary>Reads the cells of one row by the rules of their columns.</summary>
internal sealed class RowReader(Header header, ProblemLog log)
{
    private readonly TableCell?[] _byField = new TableCell?[ColumnRules.All.Count];

    /// <summary>Reads a row that is not blank.</summary>
    public TableRow Read(int line, IReadOnlyList<string> cells)
    {
        if (IsTooWide(line, cells)) return TableRow.NotRead(line);
        Array.Clear(_byField);
        ulong faulty = 0;
        List<string>? unknown = null;
        for (int i = 0; i < cells.Count && i < header.Columns.Count; i++)
        {
            string cell = cells[i].Trim();
            HeaderColumn column = header.Columns[i];
            if (column.Rule is not { } rule)
            {
                if (cell.Length > 0) (unknown ??= []).Add($"{column.Written}: {cell}");
                continue;
            }

            if (cell.Length == 0 || (rule.Quantity != Quantity.Text && CellText.SaysNothing(cell))) continue;
            (TableCell? understood, string expected) = Understand(cell, i, column, rule);
            if (understood is null) log.Problem(line, i, column.Written, cell, expected);
            if (understood is { } read && InRange(line, cell, read, column, rule) && Agrees(line, cell, read, column, rule)) _byField[(int)rule.Field] ??= read;
            else faulty |= 1UL << (int)rule.Field;
        }

        return new TableRow(line, [.. _byField.OfType<TableCell>()], faulty, unknown is null ? null : string.Join("; ", unknown));
    }

    private static (TableCell? Cell, string Expected) Understand(string cell, int index, HeaderColumn column, ColumnRule rule)
    {
        switch (rule.Quantity)
        {
            case Quantity.Temperature:
                return (CellText.TryCelsius(cell, column.Unit, out double celsius, out bool bareDegrees)
                    ? new TableCell(rule.Field, index, celsius, null, bareDegrees) : null, ExpectedTemperature(column, rule));
            case Quantity.Duration:
                return (CellText.TrySeconds(cell, column.Unit, out double seconds, out bool bareSeconds)
                    ? new TableCell(rule.Field, index, seconds, null, bareSeconds) : null, ExpectedDuration(column, rule));
            case Quantity.Number or Quantity.Whole:
                return (Figure(cell, index, rule), "a number: " + rule.Rule);
            case Quantity.Choice:
                int place = CellText.PlaceOf(cell, rule);
                return (place >= 0 ? new TableCell(rule.Field, index, place, null, false) : null, rule.Rule);
            case Quantity.YesNo:
                return (CellText.TryYes(cell) is { } yes ? new TableCell(rule.Field, index, yes ? 1 : 0, null, false) : null, "yes or no");
            case Quantity.DateTime:
                return (CellText.TryStart(cell) is { } start ? new TableCell(rule.Field, index, 0, start, false) : null, rule.Rule);
            default:
                return (new TableCell(rule.Field, index, 0, rule.BelongsTo == BelongsTo.Run ? CellText.Name(cell) : cell, false), "");
        }
    }

    private static TableCell? Figure(string cell, int index, ColumnRule rule)
    {
        if (!CellText.TryNumber(cell, out double number, out string unit)) return null;
        if (unit.Length > 0 && !rule.CellUnits.Contains(unit)) return null;
        if (rule.Quantity == Quantity.Whole && number != Math.Floor(number)) return null;
        return new TableCell(rule.Field, index, unit == "%" ? number / 100 : number, null, unit.Length == 0);
    }

    private bool InRange(int line, string cell, TableCell read, HeaderColumn column, ColumnRule rule)
    {
        if (read.Thing is StartTime { Local.Year: < 2000 or > 2100 })
        {
            log.Problem(line, read.Column, column.Written, cell, "a year between 2000 and 2100");
            return false;
        }

        if (rule.Quantity is Quantity.Text or Quantity.Choice or Quantity.YesNo or Quantity.DateTime) return true;
        if (read.Number >= rule.Min && read.Number <= rule.Max) return true;
        log.Problem(line, read.Column, column.Written, cell, rule.Rule + OtherUnit(cell, read, column, rule));
        return false;
    }

    // A value that is impossible in one unit and sensible in the other is most likely a slip of the unit; said, not put right.
    private static string OtherUnit(string cell, TableCell read, HeaderColumn column, ColumnRule rule)
    {
        if (rule.Quantity == Quantity.Duration && cell.Count(c => c == ':') == 2) return $"; {cell} reads as hours:minutes:seconds, write 6:00 or 6 min";
        if (!read.Bare || column.Unit != ColumnUnit.Celsius) return "";
        double swapped = Units.CelsiusFrom(read.Number, TemperatureUnitChoice.Fahrenheit);
        return swapped >= rule.Min && swapped <= rule.Max
            ? string.Create(CultureInfo.InvariantCulture, $"; if {read.Number:0.#} is °F, write {read.Number:0.#} °F") : "";
    }

    private bool Agrees(int line, string cell, TableCell read, HeaderColumn column, ColumnRule rule)
    {
        if (_byField[(int)rule.Field] is not { } other || SameCells.Same(other, read, rule, SameCells.Rounded)) return true;
        log.Problem(line, read.Column, column.Written, cell, $"the same as column {header.Columns[other.Column].Written} of this row, or blank");
        return false;
    }

    // The cells of a row with too many have slipped sideways: read, they would only raise more problems that are none.
    private bool IsTooWide(int line, IReadOnlyList<string> cells)
    {
        int last = cells.Count;
        while (last > header.Columns.Count && string.IsNullOrWhiteSpace(cells[last - 1])) last--;
        if (last <= header.Columns.Count) return false;
        log.Problem(line, header.Columns.Count, "", $"{last} cells", $"{header.Columns.Count} cells, as the header has; a cell with a separator or a decimal comma in it needs quotes");
        return true;
    }

    private static string ExpectedTemperature(HeaderColumn column, ColumnRule rule) => column.Unit == ColumnUnit.None
        ? $"a temperature with its unit, such as 61.5 °C, or a column named {rule.Stem}_c or {rule.Stem}_f"
        : column.Unit == ColumnUnit.Celsius ? "a temperature in °C, such as 61.5, or with its unit, such as 142 °F" : "a temperature in °F, such as 142, or with its unit, such as 61.5 °C";

    private static string ExpectedDuration(HeaderColumn column, ColumnRule rule) => column.Unit == ColumnUnit.None
        ? $"a time with its unit, such as 15 s, 6 min or 6:00, or a column named {rule.Stem}_s or {rule.Stem}_min"
        : "a time, such as 15 s, 6 min or 6:00, or a number of " + (column.Unit == ColumnUnit.Seconds ? "seconds" : "minutes");
}
