using System.Text;

namespace Coolproof.Notebook.Tables;

/// <summary>What is wrong with the form of a row, before its cells are read.</summary>
internal enum RowFault { None, OpenQuote, TextAfterQuote, LongCell, ManyCells, ControlCharacter }

/// <summary>
/// Splits text into rows and cells by RFC 4180: quotes around a cell may hold separators, line ends and doubled quotes. Line ends are LF, CRLF or CR.
/// A quote inside an unquoted cell (25" fan) is a letter. Each form fault keeps the line on which it began, so that it can be named.
/// </summary>
internal sealed class RowSplitter(TextReader text, char separator)
{
    private readonly char[] _buffer = new char[16_384];
    private readonly StringBuilder _cell = new();
    private int _next;
    private int _end;
    private int _line = 1;

    /// <summary>Line on which the current row begins, 1-based.</summary>
    public int Line { get; private set; }

    /// <summary>Cells of the current row, unquoted, not trimmed.</summary>
    public List<string> Cells { get; } = [];

    /// <summary>First fault of form in the current row.</summary>
    public RowFault Fault { get; private set; }

    /// <summary>Line of the fault.</summary>
    public int FaultLine { get; private set; }

    /// <summary>Cell of the fault, 0-based.</summary>
    public int FaultCell { get; private set; }

    /// <summary>Moves to the next row; false at the end of the text.</summary>
    public bool Next()
    {
        Cells.Clear();
        Fault = RowFault.None;
        Line = _line;
        if (Peek() < 0) return false;
        while (true)
        {
            _cell.Clear();
            int c = Peek();
            // Blanks before an opening quote are not RFC 4180 but common in typed tables.
            while (c == ' ' && separator != ' ')
            {
                Append((char)Take());
                c = Peek();
            }

            if (c == '"') QuotedCell();
            else PlainCell();
            if (Cells.Count < ReadingsTableLimits.Columns) Cells.Add(_cell.ToString());
            else SetFault(RowFault.ManyCells, _line);
            c = Take();
            if (c == separator) continue;
            EndLine(c);
            return true;
        }
    }

    private void PlainCell()
    {
        for (int c = Peek(); c >= 0 && c != separator && c is not ('\r' or '\n'); c = Peek()) Append((char)Take());
    }

    private void QuotedCell()
    {
        int opened = _line;
        _cell.Clear();
        Take();
        while (true)
        {
            int c = Take();
            if (c < 0)
            {
                SetFault(RowFault.OpenQuote, opened);
                return;
            }

            if (c == '"')
            {
                if (Peek() != '"') break;
                Take();
            }
            else if (c == '\n' || (c == '\r' && Peek() != '\n'))
            {
                _line++;
            }

            Append((char)c);
        }

        int blanks = 0;
        for (; Peek() == ' '; blanks++) Take();
        int after = Peek();
        if (after < 0 || after == separator || after is '\r' or '\n') return;
        SetFault(RowFault.TextAfterQuote, opened);
        if (blanks > 0) Append(' ');
        PlainCell();
    }

    private void Append(char c)
    {
        if (c < ' ' && c is not ('\t' or '\r' or '\n')) SetFault(RowFault.ControlCharacter, _line);
        if (_cell.Length < ReadingsTableLimits.CellCharacters) _cell.Append(c);
        else SetFault(RowFault.LongCell, Line);
    }

    private void SetFault(RowFault fault, int line)
    {
        // An open quote explains the overlong cell that it causes, so it has the last word.
        if (Fault != RowFault.None && fault != RowFault.OpenQuote) return;
        Fault = fault;
        FaultLine = line;
        FaultCell = Cells.Count;
    }

    private void EndLine(int c)
    {
        if (c < 0) return;
        if (c == '\r' && Peek() == '\n') Take();
        _line++;
    }

    private int Peek()
    {
        if (_next == _end)
        {
            _next = 0;
            _end = text.Read(_buffer, 0, _buffer.Length);
        }

        return _next < _end ? _buffer[_next] : -1;
    }

    private int Take()
    {
        int c = Peek();
        if (c >= 0) _next++;
        return c;
    }
}
