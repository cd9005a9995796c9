using Coolproof.Notebook.Tables;

namespace Coolproof.Notebook;

/// <summary>
/// Writes a readings table as CSV by RFC 4180 with LF line ends, one row per reading, what belongs to the run repeated on each of its rows, and
/// only the columns in which any row has something. What is the meaning of a blank (kind test, instrument gun) is left blank.
/// </summary>
/// <remarks>
/// Read back, the table is the same to the last bit in °C, and to 1e-9 K in °F. A drive that was assumed is left blank and assumed again; where no run
/// noted a drive the reader must be given it again.
/// </remarks>
public static class ReadingsTableWriter
{
    /// <summary>Writes the table.</summary>
    /// <param name="table">Table to write.</param>
    /// <param name="writer">Where to; left open.</param>
    /// <param name="unit">Unit of the temperatures.</param>
    /// <exception cref="ArgumentException">A test or race run without a reading: the format cannot say that.</exception>
    public static void Write(ReadingsTable table, TextWriter writer, TemperatureUnitChoice unit = TemperatureUnitChoice.Celsius)
    {
        ArgumentNullException.ThrowIfNull(table);
        ArgumentNullException.ThrowIfNull(writer);
        IReadOnlyList<WrittenColumn> columns = WrittenColumns.All(unit);
        List<string?[]> rows = [];
        foreach (Run run in table.Runs)
        {
            bool mayBeUnread = run.Kind is RunKind.WarmUp or RunKind.Void;
            if (run.Readings.Count == 0 && !mayBeUnread) throw new ArgumentException($"Run {run.Name} of {run.Day} is a {run.Kind} without a reading, which the format cannot say.", nameof(table));
            if (mayBeUnread && (run.Readings.Count == 0 || run.Note is not null)) rows.Add(Row(columns, run, null));
            foreach (Reading reading in run.Readings) rows.Add(Row(columns, run, reading));
        }

        int[] used = [.. Enumerable.Range(0, columns.Count).Where(i => columns[i].Always || rows.Exists(row => row[i] is not null))];
        WriteRow(writer, used.Select(i => (string?)columns[i].Name));
        foreach (string?[] row in rows) WriteRow(writer, used.Select(i => row[i]));
    }

    private static string?[] Row(IReadOnlyList<WrittenColumn> columns, Run run, Reading? reading) =>
        [.. columns.Select(column => column.Of(run, reading))];

    private static void WriteRow(TextWriter writer, IEnumerable<string?> cells)
    {
        bool first = true;
        foreach (string? cell in cells)
        {
            if (!first) writer.Write(',');
            writer.Write(Quoted(cell ?? ""));
            first = false;
        }

        writer.Write('\n');
    }

    private static string Quoted(string cell) =>
        cell.AsSpan().IndexOfAny([',', '"', '\r', '\n', ';', '\t']) >= 0 ? $"\"{cell.Replace("\"", "\"\"")}\"" : cell;
}
