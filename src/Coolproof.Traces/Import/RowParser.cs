using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Text;

namespace Coolproof.Traces.Import;

/// <summary>Whole lines of a logger's file into columns of numbers. One for each thread.</summary>
sealed class RowParser
{
    const int Skip = -1, Time = -2, Date = -3;
    const int ListedInOnePiece = TraceProblems.Listed;

    readonly TraceLayout _layout;
    readonly int[] _targets;
    readonly (double Least, double Most)[] _limits;
    readonly byte _separator, _mark;
    readonly bool _timeIsNumber;
    readonly List<(int Line, int Column, string Found, string Expected)> _problems = [];

    public RowParser(TraceLayout layout)
    {
        _layout = layout;
        Rows = new TraceRows(layout.Channels.Count);
        _separator = (byte)layout.Separator;
        _mark = (byte)(layout.DecimalComma ? ',' : '.');
        _timeIsNumber = layout.TimeForm is not (TimeForm.Clock or TimeForm.DateAndTime);
        int last = Math.Max(layout.TimeColumn, layout.DateColumn);
        foreach (LoggedChannel channel in layout.Channels) last = Math.Max(last, channel.Column);
        _targets = new int[last + 1];
        Array.Fill(_targets, Skip);
        if (layout.TimeColumn >= 0) _targets[layout.TimeColumn] = Time;
        if (layout.DateColumn >= 0) _targets[layout.DateColumn] = Date;
        for (int c = 0; c < layout.Channels.Count; c++) _targets[layout.Channels[c].Column] = c;
        _limits = [.. layout.Channels.Select(channel => channel.Unit.WrittenLimits())];
    }

    /// <summary>What was parsed last.</summary>
    public TraceRows Rows { get; }

    /// <summary>How many lines that was.</summary>
    public int Lines { get; private set; }

    /// <summary>The first problems of it: line from 0 within the piece, column or −1, what was found and what would be right.</summary>
    public IReadOnlyList<(int Line, int Column, string Found, string Expected)> Problems => _problems;

    /// <summary>How many problems there were.</summary>
    public long ProblemCount { get; private set; }

    /// <summary>Lines in the piece, for each row: 0-based.</summary>
    public List<int>? LineOfRow { get; private set; }

    /// <summary>Parses lines.</summary>
    /// <param name="piece">Whole lines; the last byte is a line end.</param>
    public void Parse(ReadOnlySpan<byte> piece)
    {
        TraceRows rows = Rows;
        rows.Count = 0;
        Array.Clear(rows.MostDecimals);
        _problems.Clear();
        ProblemCount = 0;
        Lines = 0;
        // Lines that give no row are rare: while there is none, row and line go together.
        LineOfRow = null;
        int at = 0;
        while (at < piece.Length)
        {
            if (piece[at] == '\n' || (piece[at] == '\r' && piece[at + 1] == '\n'))
            {
                NoRow();
                at += piece[at] == '\n' ? 1 : 2;
            }
            else
            {
                if (rows.Count == rows.Times.Length) rows.MakeRoom(Math.Max(1024, 2 * rows.Count));
                bool good = Row(piece, ref at);
                if (good)
                {
                    LineOfRow?.Add(Lines);
                    rows.Count++;
                }
                else NoRow();
                if (piece[at] != '\n') at += piece[at..].IndexOf((byte)'\n');
                at++;
            }
            Lines++;
        }
    }

    // Fills the row behind the last; leaves at on the end of what was read, at most the line end.
    bool Row(ReadOnlySpan<byte> piece, ref int at)
    {
        TraceRows rows = Rows;
        ref byte bytes = ref MemoryMarshal.GetReference(piece);
        int row = rows.Count;
        long time = 0;
        bool placed = true;
        double[][] columns = rows.Columns;
        for (int column = 0; column < _targets.Length; column++)
        {
            int target = _targets[column];
            if (target >= 0)
            {
                int length = CellNumber.Plain(ref Unsafe.Add(ref bytes, at), _mark, out double value, out int decimals);
                if (length > 0 && Ends(Unsafe.Add(ref bytes, at + length))) at += length;
                else value = Unusual(Cell(piece, ref at), column, out decimals);
                (double least, double most) = _limits[target];
                if (value < least || value > most) value = OutOfLimits(value, column, _layout.Channels[target].Unit);
                if (decimals > rows.MostDecimals[target]) rows.MostDecimals[target] = decimals;
                else if (decimals < 0) rows.MostDecimals[target] = 99;
                columns[target][row] = value;
            }
            else if (target == Skip) SkipCell(piece, ref at);
            else placed &= TimeCell(piece, ref at, column, target == Date, ref time);
            if (Unsafe.Add(ref bytes, at) == _separator) at++;
            else if (column + 1 < _targets.Length) return Short(column + 1, row, placed, time);
        }
        rows.Times[row] = time;
        return placed;
    }

    bool Ends(byte b) => b == _separator || b is (byte)'\n' or (byte)'\r';

    bool Short(int cells, int row, bool placed, long time)
    {
        Rows.Times[row] = time;
        Note(-1, $"{cells} {(cells == 1 ? "cell" : "cells")}", $"{_layout.Columns} cells, or a mistake in the separator: {Separators.Name(_layout.Separator)} was taken");
        bool timed = _layout.TimeColumn < cells && _layout.DateColumn < cells;
        for (int column = cells; column < _targets.Length; column++)
            if (_targets[column] >= 0) Rows.Columns[_targets[column]][row] = TraceRows.Gap;
        return placed && timed && cells > 1;
    }

    bool TimeCell(ReadOnlySpan<byte> piece, ref int at, int column, bool date, ref long time)
    {
        if (_timeIsNumber && !date)
        {
            int length = CellNumber.Plain(ref Unsafe.AsRef(in piece[at]), _mark, out double value, out _);
            if (length > 0 && Ends(piece[at + length]))
            {
                at += length;
                if (CellTime.OfNumber(value, _layout.TimeForm) is { } plain)
                {
                    time = plain;
                    return true;
                }
            }
        }
        ReadOnlySpan<byte> cell = Cell(piece, ref at);
        long? found = date ? CellTime.OfDate(cell, _layout.DateOrder, out _)
            : _layout.TimeForm == TimeForm.Clock ? CellTime.OfClock(cell)
            : _layout.TimeForm == TimeForm.DateAndTime ? CellTime.OfDate(cell, _layout.DateOrder, out _)
            : CellNumber.TryCell(cell, _mark, out double number, out _) ? CellTime.OfNumber(number, _layout.TimeForm) : null;
        if (found is { } us)
        {
            time += us;
            return true;
        }
        Note(column, Shown(cell), $"a time as in the rows before ({_layout.TimeForm switch { TimeForm.Clock => "h:mm:ss", TimeForm.DateAndTime => "date and time", _ => "a number" }}); the row is left out");
        return false;
    }

    double Unusual(ReadOnlySpan<byte> cell, int column, out int decimals)
    {
        decimals = 0;
        if (CellNumber.TryCell(cell, _mark, out double value, out decimals)) return value;
        decimals = 0;
        if (SaysNothing(cell)) return TraceRows.Gap;
        Note(column, Shown(cell), "a number; the cell is marked as nonsense");
        return TraceRows.Nonsense;
    }

    double OutOfLimits(double value, int column, ChannelUnit unit)
    {
        Note(column, FormattableString.Invariant($"{value} ({unit.Own(value):0.#} {unit.Name})"), FormattableString.Invariant($"{unit.Least:0.#} to {unit.Most:0.#} {unit.Name}; the cell is marked as nonsense"));
        return TraceRows.Nonsense;
    }

    static bool SaysNothing(ReadOnlySpan<byte> cell) => cell.Length == 0 || (cell.Length <= 4 && Encoding.Latin1.GetString(cell).ToLowerInvariant() is "-" or "--" or "---" or "nan" or "n/a" or "na" or "null" or "none");

    void SkipCell(ReadOnlySpan<byte> piece, ref int at)
    {
        if (piece[at] == '"') Cell(piece, ref at);
        else at += piece[at..].IndexOfAny(_separator, (byte)'\n');
    }

    // The cell that begins here, without blanks and quotes around it; leaves at on the separator or line end behind it. A quote holds within its line.
    ReadOnlySpan<byte> Cell(ReadOnlySpan<byte> piece, ref int at)
    {
        ReadOnlySpan<byte> rest = piece[at..];
        int begin = 0;
        while (rest[begin] == ' ') begin++;
        if (rest[begin] == '"')
        {
            int close = rest[(begin + 1)..].IndexOfAny((byte)'"', (byte)'\n');
            if (rest[begin + 1 + close] == '"')
            {
                ReadOnlySpan<byte> inside = rest.Slice(begin + 1, close);
                int end = begin + 2 + close;
                at += end + rest[end..].IndexOfAny(_separator, (byte)'\n');
                return inside.Trim((byte)' ');
            }
        }
        int length = rest.IndexOfAny(_separator, (byte)'\n');
        at += length;
        return rest[..length].Trim(" \r"u8);
    }

    void NoRow()
    {
        LineOfRow ??= [.. Enumerable.Range(0, Rows.Count)];
    }

    void Note(int column, string found, string expected)
    {
        ProblemCount++;
        if (_problems.Count < ListedInOnePiece) _problems.Add((Lines, column, found, expected));
    }

    static string Shown(ReadOnlySpan<byte> cell)
    {
        if (cell.Length == 0) return "nothing";
        string text = Encoding.UTF8.GetString(cell[..Math.Min(cell.Length, 40)]);
        return $"“{string.Concat(text.Select(c => char.IsControl(c) ? '·' : c))}{(cell.Length > 40 ? "…" : "")}”";
    }
}

/// <summary>Names of what stands between cells.</summary>
static class Separators
{
    public static readonly char[] All = [',', ';', '\t', '|'];

    public static string Name(char separator) => separator switch { ',' => "a comma", ';' => "a semicolon", '\t' => "a tab", _ => "a bar" };
}
