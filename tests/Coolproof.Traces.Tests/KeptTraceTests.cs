using System.Globalization;
using System.Text;
using Coolproof.Traces.Import;
using Coolproof.Traces.Kept;
using CsCheck;

namespace Coolproof.Traces.Tests;

public sealed class KeptTraceTests : IDisposable
{
    readonly string _folder = Directory.CreateTempSubdirectory("kept-trace").FullName;

    public void Dispose() => Directory.Delete(_folder, true);

    string Keep(string text)
    {
        LogFile file = LogFile.Open(new MemoryStream(Encoding.UTF8.GetBytes(text)));
        TraceLayout layout = LayoutGuess.Of(file.Head);
        using TraceWriter writer = new(_folder, layout);
        file.Read(layout, writer.Take, 2);
        return Path.Combine(_folder, writer.Done() + TraceWriter.Ending);
    }

    static string Rows(int rows, Func<int, string> row) => string.Concat(Enumerable.Range(0, rows).Select(i => row(i) + "\n").Prepend("time (s),can (C),amp (mA)\n"));

    [Fact]
    public void Every_row_is_read_back_to_the_last_bit_with_its_mark()
    {
        Random chance = new(3);
        string text = Rows(150_000, i => string.Create(CultureInfo.InvariantCulture, $"{i * 0.01:0.00},{(i % 1000 == 7 ? "" : i % 1000 == 8 ? "x" : (20 + (chance.NextDouble() * 60)).ToString("0.##", CultureInfo.InvariantCulture))},{chance.NextDouble() * 4e4:R}"));
        var read = Logged.Of(text);
        using KeptTrace kept = KeptTrace.Open(Keep(text));
        Assert.Equal(150_000, kept.About.Rows);
        List<long> times = [];
        List<double> can = [], amp = [];
        foreach (KeptRows rows in kept.Rows(long.MinValue, long.MaxValue - 1, 0, 1))
        {
            times.AddRange(rows.AtUs);
            can.AddRange(rows.Values[0]);
            amp.AddRange(rows.Values[1]);
        }
        Assert.Equal(read.AtUs, times);
        Assert.Equal(read.Values[0].Select(BitConverter.DoubleToUInt64Bits), can.Select(BitConverter.DoubleToUInt64Bits));
        Assert.Equal(read.Values[1].Select(BitConverter.DoubleToUInt64Bits), amp.Select(BitConverter.DoubleToUInt64Bits));
        Assert.Equal(("A", 1e-3), (kept.About.Channels[1].Unit, kept.About.Channels[1].Scale));
    }

    [Fact]
    public void The_same_rows_make_the_same_file_which_is_named_for_its_content()
    {
        string text = Rows(5000, i => $"{i},{20 + (i % 50)},1");
        string name = Keep(text);
        Assert.Equal(name, Keep(text));
        Assert.Equal([name], Directory.GetFiles(_folder));
        Assert.True(KeptTrace.IsWhole(name));
        Assert.True(new FileInfo(name).Length < text.Length / 2.5);
    }

    [Fact]
    public void A_damaged_file_is_refused_and_does_not_match_its_name()
    {
        string name = Keep(Rows(5000, i => $"{i},{20 + (i % 50)},1"));
        byte[] whole = File.ReadAllBytes(name);
        File.WriteAllBytes(name, whole[..^40]);
        Assert.Throws<InvalidDataException>(() => KeptTrace.Open(name));
        whole[100] ^= 1;
        File.WriteAllBytes(name, whole);
        Assert.False(KeptTrace.IsWhole(name));
    }

    [Fact]
    public void Any_damage_is_either_refused_or_read_but_never_a_crash()
    {
        string name = Keep(Rows(600, i => $"{i},{20 + (i % 50)},{(i % 9 == 0 ? "" : "1.5")}"));
        byte[] whole = File.ReadAllBytes(name);
        Gen.Select(Gen.Int[0, whole.Length - 1], Gen.Byte).Array[1, 4].Sample(changes =>
        {
            byte[] bytes = [.. whole];
            foreach ((int at, byte with) in changes) bytes[at] = with;
            string other = Path.Combine(_folder, Guid.NewGuid().ToString("N"));
            File.WriteAllBytes(other, bytes);
            try
            {
                using KeptTrace kept = KeptTrace.Open(other);
                for (int c = 0; c < kept.About.Channels.Count; c++) _ = kept.Samples(c, long.MinValue, long.MaxValue - 1).Take(10_000).Count();
            }
            catch (Exception cause) when (cause is InvalidDataException or OverflowException)
            {
            }
            finally
            {
                File.Delete(other);
            }
        }, iter: 1000, threads: 1);
    }

    [Fact]
    public void A_file_that_is_not_done_leaves_nothing()
    {
        using (TraceWriter writer = new(_folder, Logged.Of("time (s),can (C)\n0,1\n1,2\n").Layout)) { }
        Assert.Empty(Directory.GetFiles(_folder));
    }

    [Fact]
    public void Drawing_finds_every_peak_whether_by_rows_or_by_pairs()
    {
        string text = Rows(200_000, i => $"{i * 0.01:0.00},{(i == 123_456 ? 99.25 : i == 77_000 ? 1.5 : 30 + (i % 7))},1");
        using KeptTrace kept = KeptTrace.Open(Keep(text));
        foreach (int steps in (int[])[10, 60, 1000])
        {
            Envelope drawn = kept.Drawn(0, 0, 2_000_000_000, steps);
            Assert.Equal(steps, drawn.Most.Count);
            Assert.Equal(99.25, drawn.Most.Max());
            Assert.Equal(1.5, drawn.Least.Min());
            Assert.InRange(drawn.Most.ToList().IndexOf(99.25), (steps * 0.61728) - 1.1, steps * 0.61728);
        }
        Envelope near = kept.Drawn(0, 1_234_500_000, 1_234_600_000, 10);
        Assert.Equal(99.25, near.Most[6]);
    }

    [Fact]
    public void Samples_are_in_own_units_on_the_server_s_clock()
    {
        using KeptTrace kept = KeptTrace.Open(Keep("time (s),can (C),amp (mA)\n10,20,1500\n11,,2500\n"));
        Assert.Equal([new Sample(9_000, 1.5, SampleMark.Good), new Sample(10_000, 2.5, SampleMark.Good)], kept.Samples(1, 0, 100_000_000, aheadMs: 1000));
        Assert.Equal([SampleMark.Good, SampleMark.Gap], kept.Samples(0, 0, 100_000_000).Select(sample => sample.Mark));
    }
}
