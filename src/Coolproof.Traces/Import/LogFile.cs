using System.Text;

namespace Coolproof.Traces.Import;

/// <summary>
/// A logger's file: text, cells by a separator, one row a line. Read in pieces of a megabyte, each parsed by whichever of a few threads is free and handed on in order, so that memory stays
/// flat however long the file is.
/// </summary>
public sealed class LogFile
{
    const int PieceBytes = 1 << 20;
    const int HeadBytes = 1 << 18;
    const long DayUs = 86_400_000_000;

    readonly Stream _stream;
    readonly bool _returnsOnly;
    byte[] _carried;

    LogFile(Stream stream, byte[] head, bool returnsOnly)
    {
        _stream = stream;
        _carried = head;
        _returnsOnly = returnsOnly;
        Head = FileHead.Of(head);
    }

    /// <summary>The first lines.</summary>
    public FileHead Head { get; }

    /// <summary>Opens a file and reads its first 256 kB.</summary>
    /// <param name="stream">The file; UTF-8, UTF-16 with a byte order mark, or letters of Windows-1252 in names. Stays the caller's to close.</param>
    /// <exception cref="TraceRefusedException">It is empty or no text.</exception>
    public static LogFile Open(Stream stream)
    {
        ArgumentNullException.ThrowIfNull(stream);
        byte[] head = new byte[HeadBytes];
        int count = stream.ReadAtLeast(head, HeadBytes, throwOnEndOfStream: false);
        if (count == 0) throw Refused("an empty file", "rows of a logger");
        ReadOnlySpan<byte> bytes = head.AsSpan(0, count);
        Encoding? wide = bytes.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xFE]) ? Encoding.Unicode : bytes.StartsWith((ReadOnlySpan<byte>)[0xFE, 0xFF]) ? Encoding.BigEndianUnicode : null;
        if (wide is not null)
        {
            Stream narrow = Encoding.CreateTranscodingStream(new Following(bytes[2..].ToArray(), stream), wide, Encoding.UTF8, leaveOpen: true);
            return Open(narrow);
        }
        if (bytes.StartsWith((ReadOnlySpan<byte>)[0xEF, 0xBB, 0xBF])) bytes = bytes[3..];
        if (bytes.Contains((byte)0)) throw Refused("bytes that are no text", "a logger's file as text (CSV); a logger's own format must be exported as CSV by its own program first");
        bool returnsOnly = !bytes.Contains((byte)'\n') && bytes.Contains((byte)'\r');
        byte[] own = bytes.ToArray();
        if (returnsOnly) own.AsSpan().Replace((byte)'\r', (byte)'\n');
        return new LogFile(stream, own, returnsOnly);
    }

    /// <summary>Reads all rows. Can be done once.</summary>
    /// <param name="layout">How they are laid out.</param>
    /// <param name="take">Is given the rows piece by piece, in order, never two at once.</param>
    /// <param name="threads">How many threads parse; at least 1.</param>
    /// <param name="cancel">To stop; what was taken is then not whole.</param>
    /// <exception cref="TraceRefusedException">A line is longer than a megabyte, or no row has a time.</exception>
    public LogRead Read(TraceLayout layout, Action<TraceRows> take, int threads, CancellationToken cancel = default)
    {
        ArgumentNullException.ThrowIfNull(layout);
        ArgumentNullException.ThrowIfNull(take);
        ArgumentOutOfRangeException.ThrowIfLessThan(threads, 1);
        Pieces pieces = new(this, layout.FirstLine);
        Delivery delivery = new(layout, take);
        void Work()
        {
            byte[] buffer = new byte[PieceBytes];
            RowParser parser = new(layout);
            try
            {
                while (pieces.Next(buffer, cancel) is var (number, length) && length > 0)
                {
                    if (delivery.Failed) return;
                    parser.Parse(buffer.AsSpan(0, length));
                    delivery.InTurn(number, parser);
                }
            }
            catch (Exception)
            {
                delivery.GiveUp();
                throw;
            }
        }
        if (threads == 1) Work();
        else Together(Work, threads);
        cancel.ThrowIfCancellationRequested();
        return delivery.Done();
    }

    static void Together(Action work, int threads)
    {
        // Threads of their own: they wait for each other, which those of the pool should not.
        Task[] all = [.. Enumerable.Range(0, threads).Select(_ => Task.Factory.StartNew(work, CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default))];
        try
        {
            Task.WaitAll(all);
        }
        catch (AggregateException several)
        {
            System.Runtime.ExceptionServices.ExceptionDispatchInfo.Throw(several.InnerExceptions[0]);
        }
    }

    static TraceRefusedException Refused(string found, string expected) => new(new TraceProblem(0, "", found, expected));

    /// <summary>Whole lines of the file, a piece at a time, to several threads.</summary>
    sealed class Pieces(LogFile file, int firstLine)
    {
        readonly Lock _one = new();
        int _number;
        int _linesToSkip = firstLine - 1;
        long _line = 1;
        bool _ended;

        /// <summary>The next piece, ended by a line end; its number from 0 and how many bytes it has: 0 at the end.</summary>
        public (int Number, int Length) Next(byte[] buffer, CancellationToken cancel)
        {
            lock (_one)
            {
                cancel.ThrowIfCancellationRequested();
                if (_ended) return (_number, 0);
                int length = Fill(buffer);
                for (; _linesToSkip > 0 && length > 0; _linesToSkip--)
                {
                    int end = buffer.AsSpan(0, length).IndexOf((byte)'\n') + 1;
                    buffer.AsSpan(end, length - end).CopyTo(buffer);
                    length -= end;
                }
                return (_number++, length);
            }
        }

        int Fill(byte[] buffer)
        {
            int length = file._carried.Length;
            file._carried.CopyTo(buffer, 0);
            // One byte is kept for a line end that the last line may lack.
            int read = file._stream.ReadAtLeast(buffer.AsSpan(length, PieceBytes - 1 - length), PieceBytes - 1 - length, throwOnEndOfStream: false);
            if (file._returnsOnly) buffer.AsSpan(length, read).Replace((byte)'\r', (byte)'\n');
            length += read;
            if (length < PieceBytes - 1)
            {
                _ended = true;
                if (length > 0 && buffer[length - 1] != '\n') buffer[length++] = (byte)'\n';
                return length;
            }
            int last = buffer.AsSpan(0, length).LastIndexOf((byte)'\n') + 1;
            if (last == 0) throw new TraceRefusedException(new TraceProblem(_line, "", "a line of more than a megabyte", "rows, each on its own line"));
            file._carried = buffer.AsSpan(last, length - last).ToArray();
            _line += buffer.AsSpan(0, last).Count((byte)'\n');
            return last;
        }
    }

    /// <summary>Hands parsed pieces on in their order, and sees to it that time never goes back.</summary>
    sealed class Delivery(TraceLayout layout, Action<TraceRows> take)
    {
        readonly object _turn = new();
        readonly TraceProblems _problems = new();
        readonly bool _wraps = layout.TimeForm == TimeForm.Clock && layout.DateColumn < 0;
        int _next;
        long _rows, _lines = layout.FirstLine, _last = long.MinValue, _first, _midnights;

        public bool Failed { get; private set; }

        public void InTurn(int number, RowParser parser)
        {
            lock (_turn)
            {
                while (_next != number && !Failed) Monitor.Wait(_turn);
                if (Failed) return;
                Take(parser);
                _next++;
                Monitor.PulseAll(_turn);
            }
        }

        public void GiveUp()
        {
            lock (_turn)
            {
                Failed = true;
                Monitor.PulseAll(_turn);
            }
        }

        public LogRead Done()
        {
            if (_rows == 0)
                throw new TraceRefusedException(_problems.First.Count > 0 ? _problems.First[0] : new TraceProblem(0, "", "no row of values", "rows of a logger below the line of names"));
            return new LogRead(layout, _rows, _lines - layout.FirstLine, _first, _last, _problems);
        }

        void Take(RowParser parser)
        {
            List<TraceProblem> going = [];
            long back = layout.TimeForm == TimeForm.EvenSteps ? Number(parser.Rows) : Order(parser, going);
            foreach ((int line, int column, string found, string expected) in parser.Problems) going.Add(new TraceProblem(_lines + line, NameOf(column), found, expected));
            foreach (TraceProblem problem in going.OrderBy(problem => problem.Line)) _problems.Add(problem);
            _problems.AddUnlisted(back + parser.ProblemCount - going.Count);
            _lines += parser.Lines;
            TraceRows rows = parser.Rows;
            if (rows.Count == 0) return;
            if (_rows == 0) _first = rows.Times[0];
            _rows += rows.Count;
            _last = rows.Times[rows.Count - 1];
            take(rows);
        }

        long Number(TraceRows rows)
        {
            for (int i = 0; i < rows.Count; i++) rows.Times[i] = (long)Math.Round((_rows + i) * layout.StepS * 1e6);
            return 0;
        }

        // Leaves out rows whose time goes back; after midnight a clock of the day begins anew.
        long Order(RowParser parser, List<TraceProblem> problems)
        {
            TraceRows rows = parser.Rows;
            long last = _last, back = 0;
            int kept = 0;
            for (int i = 0; i < rows.Count; i++)
            {
                long time = rows.Times[i] + (_midnights * DayUs);
                if (time < last)
                {
                    if (_wraps && last - time > DayUs / 2)
                    {
                        _midnights++;
                        time += DayUs;
                    }
                    else
                    {
                        if (back++ < TraceProblems.Listed)
                            problems.Add(new TraceProblem(_lines + (parser.LineOfRow?[i] ?? i), NameOf(layout.TimeColumn), FormattableString.Invariant($"a time {(last - time) / 1e6:0.######} s before that of the row above"), "times that never go back; the row is left out"));
                        continue;
                    }
                }
                last = time;
                if (kept != i || time != rows.Times[i]) rows.Times[kept] = time;
                if (kept != i)
                {
                    foreach (double[] column in rows.Columns) column[kept] = column[i];
                }
                kept++;
            }
            rows.Count = kept;
            return back;
        }

        string NameOf(int column)
        {
            if (column < 0) return "";
            string[] names = layout.Header.Split('|');
            return column < names.Length && names[column].Length > 0 ? names[column] : $"column {column + 1}";
        }
    }

    /// <summary>Bytes that were read already, and the rest of their stream.</summary>
    sealed class Following(byte[] first, Stream rest) : Stream
    {
        int _at;

        public override bool CanRead => true;
        public override bool CanSeek => false;
        public override bool CanWrite => false;
        public override long Length => throw new NotSupportedException();
        public override long Position { get => throw new NotSupportedException(); set => throw new NotSupportedException(); }
        public override int Read(byte[] buffer, int offset, int count) => Read(buffer.AsSpan(offset, count));
        public override int Read(Span<byte> buffer)
        {
            if (_at == first.Length) return rest.Read(buffer);
            int count = Math.Min(buffer.Length, first.Length - _at);
            first.AsSpan(_at, count).CopyTo(buffer);
            _at += count;
            return count;
        }
        public override void Flush() { }
        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();
        public override void SetLength(long value) => throw new NotSupportedException();
        public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
    }
}

/// <summary>What a file held.</summary>
/// <param name="Layout">How it was read.</param>
/// <param name="Rows">Rows that were taken.</param>
/// <param name="Lines">Lines below the names, blank ones too.</param>
/// <param name="FirstUs">Time of the first row, µs.</param>
/// <param name="LastUs">Time of the last row, µs.</param>
/// <param name="Problems">Cells and lines that could not be taken as they stand.</param>
public sealed record LogRead(TraceLayout Layout, long Rows, long Lines, long FirstUs, long LastUs, TraceProblems Problems);
