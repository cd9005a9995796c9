using System.Text;

namespace Coolproof.Notebook.Tests;

/// <summary>What is no table at all is refused with one clear sentence.</summary>
public sealed class NoTables
{
    /// <summary>Name, bytes, and what is said to have been found.</summary>
    public static TheoryData<string, byte[], string> Bytes()
    {
        byte[] noise = new byte[20_000];
        new Random(1).NextBytes(noise);
        noise[0] = 0x80;
        return new TheoryData<string, byte[], string>
        {
            { "nothing", [], "an empty file" },
            { "a byte order mark alone", [0xEF, 0xBB, 0xBF], "nothing but blanks" },
            { "binary junk", noise, "bytes that are no text" },
            { "zeros", new byte[5000], "bytes that are no text" },
            { "a workbook", [(byte)'P', (byte)'K', 3, 4, .. noise], "a zip file or a spreadsheet workbook" },
            { "a PDF", Encoding.ASCII.GetBytes("%PDF-1.7\nx"), "a PDF file" },
            { "gzip", [0x1F, 0x8B, 8, 0, .. noise], "a compressed file" },
            { "UTF-32", [0xFF, 0xFE, 0, 0, .. Encoding.UTF32.GetBytes("option,read_c\nbare,61\n")], "bytes that are no text" },
        };
    }

    [Theory]
    [MemberData(nameof(Bytes))]
    public void What_is_no_table_is_named(string name, byte[] bytes, string found)
    {
        TableProblem problem = TableText.OnlyProblem(TableText.Read(bytes));
        Assert.True(found == problem.Found, $"{name}: {problem}");
        Assert.Equal(1, problem.Line);
        Assert.NotEmpty(problem.Expected);
    }

    [Fact]
    public void A_missing_file_a_folder_and_an_impossible_path_are_problems_and_not_exceptions()
    {
        string folder = Path.GetTempPath();
        Assert.EndsWith("no such file", TableText.OnlyProblem(ReadingsTableReader.Read(Path.Combine(folder, "no such table 8c1f.csv"))).Found, StringComparison.Ordinal);
        Assert.Contains("a folder", TableText.OnlyProblem(ReadingsTableReader.Read(folder)).Found, StringComparison.Ordinal);
        Assert.EndsWith("no such file", TableText.OnlyProblem(ReadingsTableReader.Read("a\0b")).Found, StringComparison.Ordinal);
        Assert.EndsWith("no such file", TableText.OnlyProblem(ReadingsTableReader.Read("")).Found, StringComparison.Ordinal);
    }

    [Fact]
    public void A_stream_that_breaks_is_a_problem_and_not_an_exception() =>
        Assert.Contains("cannot be read to its end", TableText.OnlyProblem(ReadingsTableReader.Read(new BrokenStream())).Found, StringComparison.Ordinal);

    [Fact]
    public void A_file_is_read_as_its_bytes_are()
    {
        string path = Path.GetTempFileName();
        try
        {
            File.WriteAllText(path, "option,read_c,drive_s\nbare,61.5,360\n");
            Assert.Equal(61.5, TableText.Understood(ReadingsTableReader.Read(path)).Runs[0].Readings[0].ReadC);
        }
        finally
        {
            File.Delete(path);
        }
    }

    [Fact]
    public void More_problems_than_are_listed_are_counted_and_the_first_lines_come_first()
    {
        string rows = string.Concat(Enumerable.Range(0, 5000).Select(_ => "bare,hot\n"));
        TableRead read = TableText.Read("option,read_c\n" + rows, givenDriveS: 300);
        Assert.Equal(Enumerable.Range(2, ReadingsTableLimits.ListedProblems), read.Problems.Select(problem => problem.Line));
        Assert.Equal(4800, read.ProblemsNotListed);
    }

    private sealed class BrokenStream : MemoryStream
    {
        public BrokenStream() : base(Encoding.UTF8.GetBytes("option,read_c\n" + new string('x', 10_000))) { }

        // Called by the span overload too, since this type is not MemoryStream itself.
        public override int Read(byte[] buffer, int offset, int count) =>
            Position > 5000 ? throw new IOException("the stick was pulled") : base.Read(buffer, offset, Math.Min(count, 3000));
    }
}
