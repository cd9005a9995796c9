using System.Globalization;
using System.Text.RegularExpressions;
using Coolproof.Live.Shown;
using Coolproof.Traces;
using CsCheck;

namespace Coolproof.Live.Tests;

/// <summary>The small picture shows what was measured, where it was, and nothing where nothing was.</summary>
public partial class MovingPictureTests
{
    const long Now = 1_781_021_106_000;
    const long ColumnMs = MovingPicture.WindowMs / MovingPicture.Width;

    [Fact]
    public void Values_lie_where_their_time_and_size_put_them()
    {
        var picture = MovingPicture.Of([Good(-597, 20), Good(-300, 60), Good(0, 100)], Now, 2);
        Assert.Equal((20.0, 100.0, 0, ""), (picture.Low, picture.High, picture.GapCount, picture.Gaps));
        var points = Points(picture.Line);
        Assert.Equal((58.0, 30.0, 2.0), (points[0].Y, points[^2].Y, points[^1].Y));
        Assert.InRange(points[0].X, 0, 1);
        Assert.InRange(points[^2].X, 118, 120);
        Assert.Equal(239, points[^1].X);
    }

    [Fact]
    public void A_gap_breaks_the_line_and_is_a_stretch_of_its_own_until_the_next_value()
    {
        var picture = MovingPicture.Of([Good(-120, 50), Good(-60, 50), Mark(-57, SampleMark.Gap), Good(-30, 52)], Now, 2);
        Assert.Equal(2, picture.Line.Count(letter => letter == 'M'));
        Assert.Equal(1, picture.GapCount);
        var edges = Band().Match(picture.Gaps).Groups;
        Assert.Equal(-60, Seconds(edges[1].Value), 1.5);
        Assert.Equal(-30, Seconds(edges[2].Value), 1.5);
    }

    [Fact]
    public void A_gap_that_is_still_open_reaches_the_present()
    {
        var picture = MovingPicture.Of([Good(-60, 50), Mark(-57, SampleMark.Gap)], Now, 2);
        Assert.Equal(0, Seconds(Band().Match(picture.Gaps).Groups[2].Value), 2.6);
    }

    [Fact]
    public void Nonsense_breaks_the_line_and_is_no_gap()
    {
        var picture = MovingPicture.Of([Good(-60, 50), Mark(-40, SampleMark.Nonsense), Good(-20, 50)], Now, 2);
        Assert.Equal((2, 0), (picture.Line.Count(letter => letter == 'M'), picture.GapCount));
    }

    [Fact]
    public void Noise_of_a_sensor_is_not_drawn_as_a_climb()
    {
        var picture = MovingPicture.Of([Good(-60, 50), Good(-20, 50.1)], Now, 2);
        Assert.Equal(2, picture.High - picture.Low, 9);
        Assert.InRange(Points(picture.Line).Max(point => point.Y) - Points(picture.Line).Min(point => point.Y), 0, 3.5);
    }

    [Fact]
    public void An_empty_picture_is_empty() => Assert.Equal("", MovingPicture.Of([], Now, 2).Line);

    static readonly Gen<Sample[]> Traces = Gen.Select(Gen.Long[-700_000, 0], Gen.Double[-40, 300], Gen.Int[0, 9]).Select((ago, value, mark) =>
        new Sample(Now + ago, mark > 1 ? value : double.NaN, mark == 0 ? SampleMark.Gap : mark == 1 ? SampleMark.Nonsense : SampleMark.Good)).Array[0, 2000].Select(all => all.OrderBy(one => one.AtMs).ToArray());

    [Fact]
    public void Whatever_was_measured_the_picture_stays_in_its_field_reaches_the_extremes_and_stays_small() => Traces.Sample(
        samples =>
        {
            var picture = MovingPicture.Of(samples, Now, 2);
            var points = Points(picture.Line);
            Assert.All(points, point => Assert.True(point is { X: >= 0 and < MovingPicture.Width, Y: >= 2 and <= MovingPicture.Height - 2 }, $"{point}"));
            Assert.InRange(picture.Line.Length, 0, 6000);
            var shown = samples.Where(one => one.Mark == SampleMark.Good && one.AtMs / ColumnMs > (Now / ColumnMs) - MovingPicture.Width).ToList();
            if (shown.Count == 0) return;
            Assert.True(picture.Low <= shown.Min(one => one.Value) && picture.High >= shown.Max(one => one.Value));
            if (picture.High - picture.Low > 2) Assert.Equal((2.0, 58.0), (points.Min(point => point.Y), points.Max(point => point.Y)));
        },
        iter: 100);

    static Sample Good(double ago, double value) => new(Now + (long)(ago * 1000), value, SampleMark.Good);

    static Sample Mark(double ago, SampleMark mark) => new(Now + (long)(ago * 1000), double.NaN, mark);

    static double Seconds(string x) => (Number(x) - MovingPicture.Width + 1) * ColumnMs / 1000.0;

    static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    static List<(double X, double Y)> Points(string path) => [.. Point().Matches(path).Select(match => (Number(match.Groups[1].Value), Number(match.Groups[2].Value)))];

    [GeneratedRegex("[ML]([0-9.]+) ([0-9.]+)")]
    private static partial Regex Point();

    [GeneratedRegex("M([0-9.]+) 0H([0-9.]+)V60H")]
    private static partial Regex Band();
}
