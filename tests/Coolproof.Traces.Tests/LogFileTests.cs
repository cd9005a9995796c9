using System.Globalization;
using System.Text;
using Coolproof.Traces.Import;
using CsCheck;

namespace Coolproof.Traces.Tests;

public class LogFileTests
{
    [Fact]
    public void Bad_cells_are_marked_and_told_with_line_and_column_and_the_rest_is_kept()
    {
        var got = Logged.Of("time (s),can (C),amp (A)\n0,20,1\n1,-127,2\n2,,3\n3,err,nan\n4,21,5000\nx,22,1\n5,23\n4.5,24,1\n\n6,25,1\n");
        Assert.Equal([0, 1, 2, 3, 4, 5, 6], got.AtUs.Select(us => us / 1_000_000));
        Assert.Equal([SampleMark.Good, SampleMark.Nonsense, SampleMark.Gap, SampleMark.Nonsense, SampleMark.Good, SampleMark.Good, SampleMark.Good], got.Values[0].Select(TraceRows.MarkOf));
        Assert.Equal([SampleMark.Good, SampleMark.Good, SampleMark.Good, SampleMark.Gap, SampleMark.Nonsense, SampleMark.Gap, SampleMark.Good], got.Values[1].Select(TraceRows.MarkOf));
        Assert.Equal(6, got.Read.Problems.Count);
        Assert.Equal([(3, "can (C)"), (5, "can (C)"), (6, "amp (A)"), (7, "time (s)"), (8, ""), (9, "time (s)")], got.Read.Problems.First.Select(problem => ((int)problem.Line, problem.Column)));
        Assert.Equal("line 3, can (C): found -127 (-127 °C); expected -60 to 400 °C; the cell is marked as nonsense", got.Read.Problems.First[0].ToString());
        Assert.Contains("2 cells", got.Read.Problems.First[4].Found);
        Assert.Contains("0.5 s before", got.Read.Problems.First[5].Found);
    }

    [Fact]
    public void The_first_fifty_problems_are_listed_in_the_order_of_lines_and_all_are_counted()
    {
        StringBuilder text = new("time (s),can (C)\n");
        for (int i = 0; i < 300_000; i++) text.Append(CultureInfo.InvariantCulture, $"{i},{(i % 3 == 1 ? "?" : "20")}\n");
        var got = Logged.Of(text.ToString());
        Assert.Equal(100_000, got.Read.Problems.Count);
        Assert.Equal(Enumerable.Range(0, 50).Select(i => (long)(3 * i) + 3), got.Read.Problems.First.Select(problem => problem.Line));
        Assert.Equal(300_000, got.Read.Rows);
    }

    [Fact]
    public void A_line_without_an_end_is_refused() =>
        Assert.Contains("megabyte", Logged.Refused("time (s),can (C)\n0,20\n1,21\n2," + new string('9', 3_000_000)).Found);

    [Fact]
    public void However_many_threads_read_a_file_over_several_pieces_the_rows_are_the_same_and_in_order()
    {
        StringBuilder text = new("time (ms),can (C),amp (A)\r\n");
        Random chance = new(5);
        for (int i = 0; i < 200_000; i++) text.Append(CultureInfo.InvariantCulture, $"{i},{20 + (chance.NextDouble() * 50):0.###},{chance.Next(-40, 40)}\r\n");
        var one = Logged.Of(text.ToString(), threads: 1);
        var three = Logged.Of(text.ToString(), threads: 3);
        Assert.Equal(200_000, one.Read.Rows);
        Assert.Equal(one.AtUs, three.AtUs);
        Assert.Equal(one.Values[0], three.Values[0]);
        Assert.Equal(one.Values[1], three.Values[1]);
        Assert.Equal(199_999_000, one.AtUs[^1]);
    }

    [Fact]
    public void A_number_is_the_one_that_the_runtime_reads_to_the_last_bit() =>
        Gen.Double[-1e9, 1e9].Select(Gen.Int[0, 12]).Select((value, decimals) => value.ToString("F" + decimals, CultureInfo.InvariantCulture)).Sample(text =>
        {
            byte[] bytes = Encoding.ASCII.GetBytes(text + "\n");
            int length = CellNumber.Plain(ref bytes[0], (byte)'.', out double value, out int decimals);
            if (length == 0) return CellNumber.TryCell(bytes.AsSpan(..^1), (byte)'.', out value, out _) && value == double.Parse(text, CultureInfo.InvariantCulture);
            return length == text.Length && value == double.Parse(text, CultureInfo.InvariantCulture) && decimals == (text.Contains('.') ? text.Length - text.IndexOf('.') - 1 : 0);
        }, iter: 20_000);

    [Theory]
    [InlineData("1.5e3", 1500)]
    [InlineData("-2E-2", -0.02)]
    [InlineData("+7", 7)]
    [InlineData("123456789012345678901234", 123456789012345678901234.0)]
    [InlineData("0.1234567890123456789012", 0.1234567890123456789012)]
    public void Unusual_numbers_are_read_too(string text, double value)
    {
        Assert.True(CellNumber.TryCell(Encoding.ASCII.GetBytes(text), (byte)'.', out double got, out _));
        Assert.Equal(value, got);
    }

    [Theory]
    [InlineData("1.2.3")]
    [InlineData("1,5")]
    [InlineData("1e")]
    [InlineData("e5")]
    [InlineData("1e999")]
    [InlineData("--1")]
    [InlineData("12a")]
    [InlineData("+-3")]
    public void What_is_no_number_is_none(string text) => Assert.False(CellNumber.TryCell(Encoding.ASCII.GetBytes(text), (byte)'.', out _, out _));

    [Fact]
    public void Mutated_files_are_read_or_refused_and_never_crash()
    {
        byte[] good = Encoding.UTF8.GetBytes("time (s),can (C),\"amp\" (A)\n0,20.5,1\n1,21.25,-2\n2,\"22\",3\n3,23,nan\n4,24,5\n5,25,6e-1\n");
        Gen.Select(Gen.Int[0, good.Length - 1], Gen.Byte, Gen.Int[0, 3]).Array[1, 8].Sample(changes =>
        {
            List<byte> bytes = [.. good];
            foreach ((int at, byte with, int how) in changes)
            {
                int place = at % bytes.Count;
                if (how == 0) bytes[place] = with;
                else if (how == 1) bytes.Insert(place, with);
                else if (how == 2) bytes.RemoveAt(place);
                else bytes.Insert(place, (byte)",;\t|\"\n\r.-0"[with % 10]);
            }
            try
            {
                var got = Logged.Of([.. bytes], threads: 1);
                return got.AtUs.Length == got.Read.Rows && got.Values.All(values => values.Length == got.AtUs.Length) && got.AtUs.SequenceEqual(got.AtUs.Order())
                    && got.Values.All(values => values.All(value => double.IsFinite(value) || double.IsNaN(value)));
            }
            catch (TraceRefusedException refused)
            {
                return refused.Problem.Expected.Length > 0;
            }
        }, iter: 20_000);
    }
}
