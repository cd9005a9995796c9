using System.Diagnostics;
using System.Text;

namespace Coolproof.Notebook.Tests;

/// <summary>Files that are no readings tables any more: refused soon and in little memory.</summary>
[Collection("alone, since memory is measured")]
public sealed class LargeFiles(ITestOutputHelper output)
{
    private const long Huge = 200_000_000;
    private static readonly byte[] Head = Encoding.UTF8.GetBytes("option,run,read_c,stop_to_read_s,drive_s\n");

    /// <summary>Name and repeated part of a file of 200 MB, and what is said of it when it comes as a stream without a length.</summary>
    public static TheoryData<string, string, string> Files() => new()
    {
        { "rows", "bare can,1,61.5,15,360\n", "more than 100000 rows" },
        { "one line without an end", "61.5 ", "without an end in sight" },
        { "a quote that is never closed", "\"a,", "without an end in sight" },
        { "blank lines", "\n", "without an end in sight" },
        { "cells", ",", "without an end in sight" },
        { "problems in every row", "bare,1,hot,late,never\n", "a temperature" },
    };

    [Fact]
    public void A_file_of_200_MB_is_refused_at_once()
    {
        string path = Path.GetTempFileName();
        try
        {
            using (FileStream file = File.Create(path)) new EndlessStream(Head, Encoding.UTF8.GetBytes("bare can,1,61.5,15,360\n"), Huge).CopyTo(file);
            long started = Stopwatch.GetTimestamp();
            TableProblem problem = TableText.OnlyProblem(ReadingsTableReader.Read(path));
            output.WriteLine($"200 MB file: {Stopwatch.GetElapsedTime(started).TotalMilliseconds:F1} ms");
            Assert.Equal("a file of 200 MB", problem.Found);
            Assert.Contains("at most 64 MB", problem.Expected, StringComparison.Ordinal);
            Assert.True(Stopwatch.GetElapsedTime(started) < TimeSpan.FromSeconds(1));
        }
        finally
        {
            File.Delete(path);
        }
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void A_stream_of_200_MB_without_a_length_is_refused_in_seconds_and_little_memory(string name, string part, string found)
    {
        long before = GC.GetTotalMemory(forceFullCollection: true);
        long started = Stopwatch.GetTimestamp();
        EndlessStream stream = new(Head, Encoding.UTF8.GetBytes(part), Huge);
        TableRead read = ReadingsTableReader.Read(stream);
        TimeSpan took = Stopwatch.GetElapsedTime(started);
        long kept = GC.GetTotalMemory(forceFullCollection: true) - before;
        long peak = stream.PeakBytes - before;
        output.WriteLine($"{name}: {took.TotalMilliseconds:F0} ms, peak {peak / 1e6:F1} MB, {kept / 1e6:F1} MB kept");
        Assert.False(read.Understood);
        Assert.True(read.Problems.Count <= ReadingsTableLimits.ListedProblems);
        Assert.Contains(read.Problems, problem => problem.Found.Contains(found, StringComparison.Ordinal) || problem.Expected.Contains(found, StringComparison.Ordinal));
        Assert.True(took < TimeSpan.FromSeconds(20), $"{took}");
        Assert.True(peak < 100_000_000, $"{peak} bytes at the peak");
        Assert.True(kept < 5_000_000, $"{kept} bytes kept");
    }

    [Fact]
    public void As_many_rows_as_are_allowed_are_understood()
    {
        StringBuilder text = new("option,run,read_c,stop_to_read_s,drive_s\n");
        for (int i = 0; i < ReadingsTableLimits.Rows; i++) text.Append(System.Globalization.CultureInfo.InvariantCulture, $"mount {i / 3 % 7},{i / 3},{60 + (i % 10)}.5,{10 + (i % 3)},360\n");
        long started = Stopwatch.GetTimestamp();
        ReadingsTable table = TableText.Understood(text.ToString());
        output.WriteLine($"100,000 rows: {Stopwatch.GetElapsedTime(started).TotalMilliseconds:F0} ms");
        Assert.Equal(33_334, table.Runs.Count);
        Assert.Equal(ReadingsTableLimits.Rows, table.Runs.Sum(run => run.Readings.Count));
    }

    [Fact]
    public void A_hundred_thousand_rows_of_one_run_do_not_take_the_square_of_their_number()
    {
        string rows = string.Concat(Enumerable.Repeat(",1,,27\n", ReadingsTableLimits.Rows - 1));
        long started = Stopwatch.GetTimestamp();
        TableRead read = TableText.Read("option,run,read_c,winding_mohm\na,1,61,\n" + rows, givenDriveS: 300);
        Assert.Equal(ReadingsTableLimits.Rows - 1, read.Problems.Count + read.ProblemsNotListed);
        Assert.True(Stopwatch.GetElapsedTime(started) < TimeSpan.FromSeconds(10));
    }

    [Fact]
    public void Long_names_of_unknown_columns_cannot_fill_the_memory()
    {
        string header = "option,read_c," + string.Join(',', Enumerable.Range(0, 400).Select(i => new string((char)('a' + (i % 26)), 3000)));
        string rows = string.Concat(Enumerable.Repeat("a,61," + string.Join(',', Enumerable.Repeat("1", 400)) + "\n", 20_000));
        TableRead read = TableText.Read(header + "\n" + rows, givenDriveS: 300);
        Assert.Contains("unknown columns", TableText.OnlyProblem(read).Found, StringComparison.Ordinal);
    }

    /// <summary>Runs by itself: other tests' memory would be counted too.</summary>
    [CollectionDefinition("alone, since memory is measured", DisableParallelization = true)]
    public sealed class Alone;

    /// <summary>A head and then one part again and again, without a length and without seeking.</summary>
    private sealed class EndlessStream(byte[] head, byte[] part, long length) : Stream
    {
        private long _position;

        /// <summary>Most managed memory seen while reading, garbage included.</summary>
        public long PeakBytes { get; private set; }

        public override int Read(byte[] buffer, int offset, int count)
        {
            PeakBytes = Math.Max(PeakBytes, GC.GetTotalMemory(forceFullCollection: false));
            count = (int)Math.Min(count, length - _position);
            for (int i = 0; i < count; i++, _position++) buffer[offset + i] = _position < head.Length ? head[_position] : part[(_position - head.Length) % part.Length];
            return count;
        }

        public override bool CanRead => true;
        public override bool CanSeek => false;
        public override bool CanWrite => false;
        public override long Length => throw new NotSupportedException();
        public override long Position { get => throw new NotSupportedException(); set => throw new NotSupportedException(); }
        public override void Flush() { }
        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();
        public override void SetLength(long value) => throw new NotSupportedException();
        public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
    }
}
