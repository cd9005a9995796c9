using System.Text;
using Coolproof.Traces.Live;
using CsCheck;

namespace Coolproof.Traces.Tests.Live;

/// <summary>What was kept is read back, whatever happened to the machine meanwhile.</summary>
public sealed class TraceLogTests : IDisposable
{
    static readonly TraceChannel Can = new("serial test", "can", "°C");

    readonly string folder = Directory.CreateTempSubdirectory("coolproof-traces-").FullName;

    string Path => System.IO.Path.Combine(folder, "can.trace");

    public static TheoryData<byte[], uint> Vectors => new()
    {
        // RFC 3720, appendix B.4 (bytes there in the order of the wire).
        { new byte[32], 0x8A9136AA },
        { [.. Enumerable.Repeat((byte)0xFF, 32)], 0x62A8AB43 },
        { [.. Enumerable.Range(0, 32).Select(one => (byte)one)], 0x46DD794E },
        { [.. Enumerable.Range(0, 32).Select(one => (byte)(31 - one))], 0x113FDB5C },
    };

    [Theory, MemberData(nameof(Vectors))]
    public void The_check_sum_is_that_of_the_standard(byte[] bytes, uint expected) => Assert.Equal(expected, TraceRecord.Check(bytes));

    static readonly Gen<Sample> Samples = Gen.Select(Gen.Long[0, 4_000_000_000_000], Gen.Double, Gen.Enum<SampleMark>()).Select((at, value, mark) => new Sample(at, mark == SampleMark.Good ? value : double.NaN, mark));

    [Fact]
    public void Samples_read_back_as_they_were_kept() => Samples.List[0, 60].Sample(
        samples =>
        {
            var path = System.IO.Path.Combine(folder, Guid.NewGuid() + ".trace");
            using (var log = TraceLog.Open(path, Can))
                foreach (var sample in samples) log.Append(sample);
            var content = TraceLog.Content(path)!;
            Assert.Equal(Can, content.Channel);
            Assert.Equal(samples, content.Samples);
        },
        iter: 60, threads: 1);

    [Fact]
    public void A_log_torn_at_any_byte_keeps_every_whole_record_and_goes_on()
    {
        using (var log = TraceLog.Open(Path, Can))
            for (var i = 0; i < 5; i++) log.Append(new Sample(1000 * i, i, SampleMark.Good));
        var whole = File.ReadAllBytes(Path);
        var header = TraceContent.Header(Can).Length;
        for (var length = 0; length <= whole.Length; length++)
        {
            File.WriteAllBytes(Path, whole[..length]);
            using (var log = TraceLog.Open(Path, Can)) log.Append(new Sample(99_000, 99, SampleMark.Good));
            var kept = Math.Max(0, length - header) / TraceRecord.Size;
            Assert.Equal([.. Enumerable.Range(0, kept).Select(one => (double)one), 99], TraceLog.Read(Path)!.Value.Samples.Select(sample => sample.Value));
        }
    }

    [Fact]
    public void Zeros_that_a_file_system_left_at_the_end_are_no_samples()
    {
        using (var log = TraceLog.Open(Path, Can)) log.Append(new Sample(1000, 1, SampleMark.Good));
        File.WriteAllBytes(Path, [.. File.ReadAllBytes(Path), .. new byte[200]]);
        using (var log = TraceLog.Open(Path, Can)) log.Append(new Sample(2000, 2, SampleMark.Good));
        Assert.Equal([1.0, 2.0], TraceLog.Read(Path)!.Value.Samples.Select(sample => sample.Value));
    }

    [Fact]
    public void A_damaged_record_in_the_middle_is_left_out_and_counted_and_those_behind_it_stay()
    {
        using (var log = TraceLog.Open(Path, Can))
            for (var i = 0; i < 4; i++) log.Append(new Sample(1000 * i, i, SampleMark.Good));
        var bytes = File.ReadAllBytes(Path);
        bytes[TraceContent.Header(Can).Length + TraceRecord.Size + 9] ^= 0x10;
        File.WriteAllBytes(Path, bytes);
        using (TraceLog.Open(Path, Can))
        {
        }
        var content = TraceLog.Content(Path)!;
        Assert.Equal(1, content.Damaged);
        Assert.Equal([0.0, 2.0, 3.0], content.Samples.Select(sample => sample.Value));
    }

    [Fact]
    public void A_batch_torn_at_any_byte_is_dropped_as_a_whole()
    {
        using (var log = TraceLog.Open(Path, Can)) log.Append(new Sample(500, 0, SampleMark.Good));
        var before = new FileInfo(Path).Length;
        using (var log = TraceLog.Open(Path, Can)) log.Append([new(1000, 1, SampleMark.Good), new(2000, 2, SampleMark.Good)], session: 7, last: 2);
        var whole = File.ReadAllBytes(Path);
        for (var length = before; length < whole.Length; length++)
        {
            File.WriteAllBytes(Path, whole[..(int)length]);
            using (var log = TraceLog.Open(Path, Can)) Assert.Empty(log.Sessions);
            Assert.Equal(before, new FileInfo(Path).Length);
        }
        File.WriteAllBytes(Path, whole);
        using (var log = TraceLog.Open(Path, Can)) Assert.Equal(2, log.Sessions[7]);
        Assert.Equal(3, TraceLog.Read(Path)!.Value.Samples.Count);
    }

    [Fact]
    public void Any_bytes_at_all_are_read_or_refused_and_nothing_else() => Gen.Byte.Array[0, 300].Sample(bytes =>
    {
        TraceContent.Of(bytes);
        TraceContent.Of([.. TraceContent.Header(Can), .. bytes]);
        TraceContent.Of([.. Encoding.ASCII.GetBytes(TraceContent.Magic), .. bytes]);
    });

    [Fact]
    public void What_is_no_log_of_the_channel_is_left_alone()
    {
        File.WriteAllText(Path, "something else\n");
        Assert.Contains("no trace log", Assert.Throws<IOException>(() => TraceLog.Open(Path, Can)).Message, StringComparison.Ordinal);
        Assert.Equal("something else\n", File.ReadAllText(Path));
        File.Delete(Path);
        TraceLog.Open(Path, Can).Dispose();
        Assert.Throws<IOException>(() => TraceLog.Open(Path, Can with { Unit = "V" }));
    }

    [Fact]
    public void Samples_sent_late_are_put_in_order_and_fill_the_gap_that_was_marked()
    {
        Sample Good(long at) => new(at, at, SampleMark.Good);
        var gap = new Sample(5000, double.NaN, SampleMark.Gap);
        Assert.Equal([Good(1000), Good(2000), gap, Good(9000)], Timeline.Of([Good(1000), Good(2000), gap, Good(9000)]));
        Assert.Equal([.. Enumerable.Range(1, 9).Select(one => Good(one * 1000))], Timeline.Of([Good(1000), Good(2000), gap, Good(9000), .. Enumerable.Range(3, 6).Select(one => Good(one * 1000))]));
    }

    public void Dispose() => Directory.Delete(folder, recursive: true);
}
