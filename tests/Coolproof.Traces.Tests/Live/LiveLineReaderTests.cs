using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using Coolproof.Traces.Live;
using CsCheck;

namespace Coolproof.Traces.Tests.Live;

/// <summary>Lines of sensors by docs/formats/live-lines.md.</summary>
public partial class LiveLineReaderTests
{
    static readonly long Now = DateTimeOffset.Parse("2026-06-09T16:05:07.000Z", CultureInfo.InvariantCulture).ToUnixTimeMilliseconds();

    [Theory]
    [InlineData("can 64.3 °C", "can", "°C", 64.3)]
    [InlineData("can\t64.3\tC", "can", "°C", 64.3)]
    [InlineData("  can  64.3°C  ", "can", "°C", 64.3)]
    [InlineData("can: 64.3 degC", "can", "°C", 64.3)]
    [InlineData("can=64.3 C", "can", "°C", 64.3)]
    [InlineData("can = 64.3 C", "can", "°C", 64.3)]
    [InlineData("motor/can_top.2 -5 C", "motor/can_top.2", "°C", -5)]
    [InlineData("can 6.43e1 C", "can", "°C", 64.3)]
    [InlineData("can .5 C", "can", "°C", 0.5)]
    [InlineData("flag 1 -", "flag", "", 1)]
    [InlineData("flag 1 1", "flag", "", 1)]
    [InlineData("weight 1520 g", "weight", "g", 1520)]
    [InlineData("Umdrehung 18500 rpm", "Umdrehung", "1/min", 18_500)]
    public void A_line_is_a_name_a_value_and_a_unit(string text, string name, string unit, double value)
    {
        var line = LiveLineReader.Read(text, Now).Line;
        Assert.Equal((name, unit, new Sample(Now, value, SampleMark.Good)), (line?.Name, line?.Unit.Name, line?.Sample));
    }

    [Theory] // Factors: NIST SP 811 (2008), B.8 and B.9; fixed points of water: the same, 4.3.1 note, and ITS-90.
    [InlineData("t 212 °F", 100)]
    [InlineData("t 32 F", 0)]
    [InlineData("t 273.15 K", 0)]
    [InlineData("p 1 psi", 0.06894757)]
    [InlineData("v 60 mph", 26.8224)]
    [InlineData("v 36 km/h", 10)]
    [InlineData("u 7400 mV", 7.4)]
    public void Units_are_converted(string text, double own) => Assert.Equal(own, LiveLineReader.Read(text, Now).Line!.Sample.Value, 7);

    [Theory]
    [InlineData("can nan C")]
    [InlineData("can open C")]
    [InlineData("can - C")]
    [InlineData("can 2000 C")]
    [InlineData("can -127 C")] // what many digital sensors give while their wire is off (common practice, no source)
    [InlineData("can 1e999 C")]
    [InlineData("can 0 K")] // absolute zero (BIPM, SI Brochure) is −273.15 °C: no motor is
    [InlineData("pack 8400 V")]
    [InlineData("rpm 9e9 rpm")]
    public void What_can_not_be_right_is_kept_as_nonsense_with_the_reason(string text)
    {
        var line = LiveLineReader.Read(text, Now).Line;
        Assert.Equal(SampleMark.Nonsense, line?.Sample.Mark);
        Assert.True(double.IsNaN(line!.Sample.Value));
        Assert.NotEmpty(line.Doubt!);
    }

    [Theory]
    [InlineData("can", "no value")]
    [InlineData("can 64.3", "no unit")]
    [InlineData("can 64.3 @-1s", "no unit")]
    [InlineData("64.3", "no name")]
    [InlineData("can 64,3 C", "comma")]
    [InlineData("can top 64.3 C", "no number")]
    [InlineData("can 64.3 C now", "no time")]
    [InlineData("can 64.3 C @-1s more", "more than four")]
    [InlineData("can 0x40 C!", "no time")]
    [InlineData("c?n 64.3 C", "no name")]
    [InlineData("can 64.3 [C]", "no unit")]
    [InlineData("{\"can\":64.3}", "JSON")]
    [InlineData("can 64.3 C @2026-06-09T16:05:07", "no time")]
    [InlineData("can 64.3 C @yesterday", "no time")]
    [InlineData("can 64.3 C @-25e3min", "more than a day")]
    [InlineData("can 64.3 C @2026-06-07T16:05:07Z", "more than a day")]
    [InlineData("can 64.3 C @2026-06-09T17:05:07Z", "yet to come")]
    [InlineData("c\u0001n 64.3 C", "no letters")]
    [InlineData("c\u0000a\u0000n\u0000", "zero bytes")]
    public void What_is_not_understood_says_why_and_what_helps(string text, string reason)
    {
        var problem = LiveLineReader.Read(text, Now).Problem;
        Assert.NotNull(problem);
        Assert.Matches(reason, problem.Reason);
        Assert.NotEmpty(problem.Remedy);
    }

    [Theory]
    [InlineData("@-2.5s", -2500)]
    [InlineData("@-250ms", -250)]
    [InlineData("@-2min", -120_000)]
    [InlineData("@2026-06-09T16:05:06.750Z", -250)]
    [InlineData("@2026-06-09T18:05:06+02:00", -1000)]
    [InlineData("@1781021106750", -250)] // the instant above, by `date -u -d 2026-06-09T16:05:06Z +%s`
    public void A_line_may_say_when_it_was_measured(string time, long after) =>
        Assert.Equal(Now + after, LiveLineReader.Read($"can 64.3 C {time}", Now).Line?.Sample.AtMs);

    [Theory]
    [InlineData("64.3", "can", "", 64.3)]
    [InlineData("64.3 °C", "can", "°C", 64.3)]
    [InlineData("64.3 @-1s", "can", "", 64.3)]
    [InlineData("endbell 70 C", "endbell", "°C", 70)]
    public void A_channel_with_a_name_needs_only_its_value(string text, string name, string unit, double value)
    {
        var line = LiveLineReader.ReadOf("can", text, Now).Line;
        Assert.Equal((name, unit, value), (line?.Name, line?.Unit.Name, line?.Sample.Value));
    }

    [Theory]
    [InlineData("")]
    [InlineData("   ")]
    [InlineData("# a remark")]
    public void Empty_lines_and_remarks_are_nothing(string text) => Assert.Equal(LineRead.Nothing, LiveLineReader.Read(text, Now));

    [Fact]
    public void A_line_longer_than_allowed_says_so() => Assert.Contains("longer", LiveLineReader.Read(new string('a', 201), Now).Problem!.Reason, StringComparison.Ordinal);

    static readonly Gen<string> NearlyLines = Gen.OneOf(
        Gen.String[0, 40],
        Gen.String[Gen.Char["can t64.3eE+-:=@°CFKVms#,\t\u00a0\u2003\u000b"], 0, 40],
        Gen.Select(Gen.OneOf<string>("can", "", "can:", "=", "ä", "-"), Gen.OneOf<string>("64.3", "1e400", "-", "nan", "1e", ".", "64.3°C"), Gen.OneOf<string>("C", "°F", "@-1s", "", "%"), Gen.OneOf<string>("", "@-1s", "@", "@-", "@-1e300s", "@99999999999999999999", "@-.ms")).Select((a, b, c, d) => $"{a} {b} {c} {d}"));

    [Fact]
    public void Any_text_at_all_is_a_value_within_its_limits_or_a_problem_or_nothing() => NearlyLines.Sample(
        text =>
        {
            foreach (var read in new[] { LiveLineReader.Read(text, Now), LiveLineReader.ReadOf("topic", text, Now) })
            {
                Assert.False(read.Line is not null && read.Problem is not null);
                if (read.Line is not { } line) continue;
                Assert.Equal(line.Sample.Mark == SampleMark.Good, double.IsFinite(line.Sample.Value));
                if (line.Sample.Mark == SampleMark.Good) Assert.InRange(line.Sample.Value, line.Unit.Least, line.Unit.Most);
                Assert.InRange(line.Sample.AtMs, Now - 86_400_000, Now + 5000);
                Assert.InRange(line.Name.Length, 1, LiveLineReader.LongestName);
            }
        },
        iter: 20_000);

    [Fact]
    public void A_number_is_read_as_the_language_reads_it() => Gen.Double[-50, 300].Sample(value =>
        Assert.Equal(value, LiveLineReader.Read(string.Create(CultureInfo.InvariantCulture, $"can {value:R} C"), Now).Line?.Sample.Value));

    [Fact]
    public void Where_a_number_ends_is_told_as_by_its_grammar() => Gen.String[Gen.Char["0123.eE+-x"], 0, 10].Sample(
        word => Assert.Equal(Number().Match(word).Length, LiveLineReader.NumberLength(word)), iter: 20_000);

    [GeneratedRegex(@"^[+-]?([0-9]+(\.[0-9]*)?|\.[0-9]+)([eE][+-]?[0-9]+)?")]
    private static partial Regex Number();

    [Fact]
    public void Bytes_give_the_same_lines_in_whatever_pieces_they_come() => Gen.Select(Gen.Byte.Array[0, 400], Gen.OneOf<byte>((byte)'\n', (byte)'\r', (byte)'a', (byte)0xB0).Array[0, 100], Gen.Int[1, 50]).Sample(
        (noise, lines, piece) =>
        {
            byte[] all = [.. noise, .. lines, (byte)'\n'];
            var (once, pieces) = (new LineSplitter(skipFirst: false), new LineSplitter(skipFirst: false));
            Assert.Equal(once.Add(all), all.Chunk(piece).SelectMany(part => pieces.Add(part)));
            Assert.Equal(once.Add(all).Count, LineSplitter.All(all).Count(line => line.Length > 0));
            foreach (var line in once.Add(all)) LiveLineReader.Read(line, Now);
        });

    [Fact]
    public void The_piece_of_a_line_that_was_running_as_the_port_was_opened_is_left_out()
    {
        var splitter = new LineSplitter(skipFirst: true);
        Assert.Empty(splitter.Add("an 64"u8));
        Assert.Equal(["can 64.4 C"], splitter.Add(".3 C\r\ncan 64.4 C\r\ncan 6"u8));
        Assert.Equal("can 6", splitter.End());
    }

    [Fact]
    public void A_degree_sign_may_be_written_in_ISO_8859_1()
    {
        var lines = new LineSplitter(skipFirst: false).Add([.. "can 64.3 "u8, 0xB0, (byte)'C', (byte)'\n', .. Encoding.UTF8.GetBytes("can 64.3 °C\n")]);
        Assert.All(lines, line => Assert.Equal(64.3, LiveLineReader.Read(line, Now).Line?.Sample.Value));
        Assert.Equal(2, lines.Count);
    }

    [Fact]
    public void A_line_without_an_end_does_not_fill_the_memory()
    {
        var splitter = new LineSplitter(skipFirst: false);
        for (var i = 0; i < 1000; i++) Assert.Empty(splitter.Add(new byte[1000].Select(_ => (byte)'a').ToArray()));
        var line = Assert.Single(splitter.Add("\n"u8));
        Assert.InRange(line.Length, 201, 220);
        Assert.Contains("longer", LiveLineReader.Read(line, Now).Problem!.Reason, StringComparison.Ordinal);
    }
}
