namespace Coolproof.Notebook.Tables;

/// <summary>Reads the header and the rows under it, up to the limits.</summary>
internal sealed class RowCollection(RowSplitter splitter, ProblemLog log)
{
    private readonly List<TableRow> _rows = [];

    /// <summary>Rows under the header, blank ones left out.</summary>
    public IReadOnlyList<TableRow> Rows => _rows;

    /// <summary>Whether there are rows, and all that were in the file, with the columns that are needed.</summary>
    public bool IsWhole { get; private set; }

    /// <summary>The header: the first row that is not blank; null, with the problem noted, when there is none.</summary>
    public Header? ReadHeader()
    {
        if (!NextFilled())
        {
            log.Problem(1, -1, "", "nothing but blanks", "a header row and at least one reading");
            return null;
        }

        if (splitter.Fault != RowFault.None)
        {
            NoteFault(null);
            return null;
        }

        Header header = Header.Of(splitter.Line, splitter.Cells);
        if (header.Columns.Any(column => column.Rule is not null)) return header;
        log.Problem(
            header.Line, -1, "", string.Join(", ", header.Columns.Where(column => column.Named).Select(column => column.Written)),
            "a header row with the names of the columns; needed are option and read_c or read_f");
        return null;
    }

    /// <summary>Reads the rows under the header.</summary>
    public void ReadRows(Header header)
    {
        bool columns = CheckColumns(header);
        RowReader reader = new(header, log);
        long notes = 0;
        while (NextFilled())
        {
            if (_rows.Count == ReadingsTableLimits.Rows)
            {
                log.Problem(splitter.Line, -1, "", $"more than {ReadingsTableLimits.Rows} rows", "a readings table typed by hand; the trace of a logger is another thing");
                return;
            }

            if (splitter.Fault != RowFault.None)
            {
                NoteFault(header);
                _rows.Add(TableRow.NotRead(splitter.Line));
                continue;
            }

            TableRow row = reader.Read(splitter.Line, splitter.Cells);
            _rows.Add(row);
            notes += row.Unknown?.Length ?? 0;
            if (notes <= ReadingsTableLimits.NoteCharacters) continue;
            log.Problem(splitter.Line, -1, "", $"more than {ReadingsTableLimits.NoteCharacters} characters in unknown columns", "a readings table typed by hand; take the columns out that do not belong to it");
            return;
        }

        if (_rows.Count == 0) log.Problem(header.Line, -1, "", "a header with no rows under it", "at least one reading");
        IsWhole = columns && _rows.Count > 0;
    }

    private bool NextFilled()
    {
        while (splitter.Next())
        {
            if (splitter.Fault != RowFault.None || !splitter.Cells.TrueForAll(string.IsNullOrWhiteSpace)) return true;
        }

        return false;
    }

    private bool CheckColumns(Header header)
    {
        string written = string.Join(", ", header.Columns.Where(column => column.Named).Select(column => column.Written));
        bool option = header.Has(Field.Option);
        bool reading = header.Has(Field.Read) || header.Has(Field.WindingHot);
        if (!option) log.Problem(header.Line, -1, "option", "no such column; there are " + written, "a column named option (also understood: cooling, setup)");
        if (!reading) log.Problem(header.Line, -1, "read_c", "no such column; there are " + written, "a column named read_c or read_f (or winding_mohm)");
        return option && reading;
    }

    private void NoteFault(Header? header)
    {
        if (splitter.Fault == RowFault.None) return;
        int cell = splitter.FaultCell;
        string column = header is not null && cell < header.Columns.Count ? header.Columns[cell].Written : $"column {cell + 1}";
        string text = cell < splitter.Cells.Count ? splitter.Cells[cell] : "";
        (string found, string expected) = splitter.Fault switch
        {
            RowFault.OpenQuote => ($"a quote that is never closed: \"{text}", "a second quote at the end of the cell"),
            RowFault.TextAfterQuote => ($"text after a closing quote: {text}", "quotes around the whole cell, those inside it doubled"),
            RowFault.LongCell => ($"a cell of more than {ReadingsTableLimits.CellCharacters} characters", "a shorter one; is a quote never closed?"),
            RowFault.ManyCells => ($"more than {ReadingsTableLimits.Columns} cells", $"at most {ReadingsTableLimits.Columns} columns"),
            _ => ($"a control character in: {text}", "text that can be printed"),
        };
        log.Problem(splitter.FaultLine, cell, column, found, expected);
    }
}
