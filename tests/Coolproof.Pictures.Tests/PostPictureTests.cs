using Coolproof.Evidence;
using Coolproof.Notebook;
using Coolproof.Pictures.Drawing;

namespace Coolproof.Pictures.Tests;

/// <summary>The picture to post: nothing on it is small, nothing is cut off, and what must be said is said, from one option to forty.</summary>
public sealed class PostPictureTests
{
    private const string When = "Readings of 9 June 2026, all made up. Drawn by Coolproof.";

    public static TheoryData<string, int> Posts => new(
        from name in Verdicts.Keys from width in new[] { PostPicture.SquarePx, PostPicture.WidePx } select (name, width));

    private static Dictionary<string, Func<Verdict>> Verdicts { get; } = new()
    {
        ["one"] = Samples.One,
        ["two"] = Samples.Two,
        ["six"] = Samples.Six,
        ["twelve"] = () => Samples.Of([.. Enumerable.Range(1, 12).Select(i => $"{Samples.SixNames[i % 6]}, version {i}")], [.. Enumerable.Range(1, 12).Select(i => 70 + 0.8 * (i * 17 % 40))], 1.4),
        ["forty"] = Samples.Forty,
        ["odd names"] = () => Samples.Named(OddNames.All),
        ["twelve long names and a long sentence"] = () => Samples.Of(
            [.. Enumerable.Range(1, 12).Select(i => $"{OddNames.Long} {i}")], [.. Enumerable.Range(1, 12).Select(i => 90 + 0.8 * i)], 4, string.Join("; ", Enumerable.Repeat(OddNames.Long, 9))),
    };

    [Theory]
    [MemberData(nameof(Posts))]
    public void No_letter_is_under_28_pixels_and_none_is_clipped_or_lies_over_another(string name, int width)
    {
        foreach (TemperatureUnitChoice unit in Enum.GetValues<TemperatureUnitChoice>())
        {
            Picture picture = PostPicture.Of(Verdicts[name](), When, new(width, Units: unit));
            Assert.Equal((width, PostPicture.SquarePx), (picture.WidthPx, picture.HeightPx));
            Assert.All(picture.Words, w => Assert.True(w.Size >= 28, $"{w.Size}: {w.Text}"));
            LayoutTests.WordsAreClear(picture);
        }
    }

    [Theory]
    [MemberData(nameof(Posts))]
    public void Runs_interval_unit_terms_and_date_are_on_it(string name, int width)
    {
        Verdict verdict = Verdicts[name]();
        Picture picture = PostPicture.Of(verdict, When, new(width));
        string[] words = [.. picture.Words.Select(w => w.Text)];
        string all = string.Join(" ", words);
        Assert.Contains("Can, °C", words);
        Assert.Contains("9 June 2026", all);
        Assert.Contains("27 °C air", all);
        int shown = words.Count(w => w == "3 runs");
        Assert.Equal(verdict.Options.Count, name == "forty" ? shown + More(words) : shown);
        // Each option's interval by its own numbers, the coolest first.
        OptionVerdict coolest = verdict.Options.MinBy(o => o.PeakCanC.Q50)!;
        Assert.Contains($"{coolest.PeakCanC.Q50:0} ({coolest.PeakCanC.Q05:0} to {coolest.PeakCanC.Q95:0})", words);
        Assert.Equal(shown, words.Count(w => w.Contains(" to ", StringComparison.Ordinal) && w.EndsWith(')') && char.IsDigit(w[0])) / (width == PostPicture.WidePx ? 2 : 1));
    }

    [Theory]
    [InlineData("two")]
    [InlineData("six")]
    [InlineData("twelve")]
    public void The_whole_sentence_is_on_it(string name)
    {
        Verdict verdict = Verdicts[name]();
        string[] words = [.. PostPicture.Of(verdict, When, new(PostPicture.SquarePx)).Words.Select(w => w.Text)];
        Assert.Contains(verdict.Sentence, string.Join(" ", words));
    }

    [Fact]
    public void It_is_an_image_of_exactly_that_size()
    {
        foreach (int width in new[] { PostPicture.SquarePx, PostPicture.WidePx })
        {
            using var image = new Image(PostPicture.Of(Samples.Six(), When, new(width)).Png());
            Assert.Equal((width, 1080), (image.Width, image.Height));
        }
    }

    [Fact]
    public void Names_that_begin_alike_are_cut_in_their_middle()
    {
        string cut = Typesetter.BuiltIn.CutMiddle("The clamp with the fan, version 12", 28, true, 260);
        Assert.StartsWith("The", cut);
        Assert.Contains(Typesetter.Ellipsis, cut);
        Assert.EndsWith("12", cut);
        Assert.True(Typesetter.BuiltIn.Width(cut, 28, true) <= 260);
        Assert.Equal("Bare can", Typesetter.BuiltIn.CutMiddle("Bare can", 28, true, 260));
    }

    [Fact]
    public void Another_width_and_a_verdict_without_options_are_refused()
    {
        Assert.Throws<ArgumentException>(() => PostPicture.Of(Samples.Six(), When, new(1000)));
        Assert.Throws<ArgumentException>(() => PostPicture.Of(Samples.None(), When, new(PostPicture.SquarePx)));
    }

    private static int More(string[] words) => int.Parse(words.Single(w => w.EndsWith("hotter than these", StringComparison.Ordinal)).Split(' ')[1], System.Globalization.CultureInfo.InvariantCulture);
}
