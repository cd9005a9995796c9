using Coolproof.Evidence;
using Coolproof.Notebook;
using CsCheck;

namespace Coolproof.Pictures.Tests;

public sealed class LayoutTests
{
    [Theory]
    [MemberData(nameof(GalleryTests.Names), MemberType = typeof(GalleryTests))]
    public void No_words_are_clipped_or_lie_over_other_words(string name)
    {
        foreach (int width in new[] { 320, PictureStyle.PhoneWidthPx, 1000, PictureStyle.PageWidthPx })
        {
            foreach (Theme theme in Enum.GetValues<Theme>())
            {
                WordsAreClear(GalleryTests.Draw(name, new(width, theme, Note: "Made-up readings.")));
            }
        }
    }

    [Fact]
    public void No_words_are_clipped_or_lie_over_other_words_whatever_the_numbers()
    {
        Gen<Verdict> verdicts =
            from n in Gen.Int[1, 12]
            from names in Gen.String[Gen.Char.AlphaNumeric, 1, 40].Array[n]
            from cans in Gen.Double[-20, 260].Array[n]
            from sd in Gen.Double[0.05, 25]
            select Samples.Of([.. names.Select((x, i) => $"{x} {i}")], cans, sd);
        verdicts.Select(Gen.Int[340, 1500], Gen.Enum<Theme>(), Gen.Enum<TemperatureUnitChoice>()).Sample(
            (verdict, width, theme, unit) => WordsAreClear(VerdictPicture.Of(verdict, new(width, theme, unit))), iter: 60);
    }

    [Theory]
    [MemberData(nameof(GalleryTests.Names), MemberType = typeof(GalleryTests))]
    public void No_words_are_smaller_than_12_pixels_on_a_phone(string name) =>
        Assert.All(GalleryTests.Draw(name, new(PictureStyle.PhoneWidthPx)).Words, w => Assert.True(w.Size >= 12, w.Text));

    [Fact]
    public void A_picture_grows_with_its_options()
    {
        foreach (int width in new[] { PictureStyle.PhoneWidthPx, PictureStyle.PageWidthPx })
        {
            int[] heights = [.. new[] { Samples.One(), Samples.Two(), Samples.Six(), Samples.Forty() }.Select(v => VerdictPicture.Of(v, new(width)).HeightPx)];
            Assert.Equal(heights.Order(), heights);
            Assert.True(heights[^1] - heights[2] > 34 * 60);
        }
    }

    [Theory]
    [InlineData(319)]
    [InlineData(4001)]
    public void A_width_that_is_not_designed_for_is_refused(int width) =>
        Assert.Equal("WidthPx", Assert.Throws<ArgumentOutOfRangeException>(() => VerdictPicture.Of(Samples.Two(), new(width))).ParamName);

    internal static void WordsAreClear(Picture picture)
    {
        Extent[] all = [.. picture.Words.Where(w => w.Text.Length > 0).Select(Extent.Of)];
        Assert.All(all, e => Assert.True(e.Left >= 0 && e.Right <= picture.WidthPx + 0.5 && e.Top >= 0 && e.Bottom <= picture.HeightPx, $"clipped at {picture.WidthPx}: {e}"));
        for (int i = 0; i < all.Length; i++)
        {
            for (int j = i + 1; j < all.Length; j++)
            {
                Assert.False(all[i].Meets(all[j]), $"at {picture.WidthPx}: {all[i]} over {all[j]}");
            }
        }
    }
}
