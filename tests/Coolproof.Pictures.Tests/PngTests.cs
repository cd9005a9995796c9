using Coolproof.Pictures.Drawing;

namespace Coolproof.Pictures.Tests;

public sealed class PngTests
{
    [Theory]
    [MemberData(nameof(GalleryTests.Names), MemberType = typeof(GalleryTests))]
    public void Ink_lies_where_every_word_is_expected(string name)
    {
        foreach (Theme theme in Enum.GetValues<Theme>())
        {
            Picture picture = GalleryTests.Draw(name, new(PictureStyle.PhoneWidthPx, theme));
            using var image = new Image(picture.Png());
            Assert.Equal((picture.WidthPx, picture.HeightPx), (image.Width, image.Height));
            Assert.All(picture.Words.Where(w => w.Text.Trim().Length > 0), w =>
            {
                Extent e = Extent.Of(w);
                Assert.True(image.Near(w.Colour, e.Left, e.Top, e.Right, e.Bottom) >= w.Text.Trim().Length, $"{theme}: {e}");
            });
        }
    }

    [Fact]
    public void The_ground_is_the_paper_of_the_theme()
    {
        foreach (Theme theme in Enum.GetValues<Theme>())
        {
            using var image = new Image(VerdictPicture.Of(Samples.Two(), new(PictureStyle.PhoneWidthPx, theme)).Png());
            Assert.Equal(25, image.Near(ThemeColours.Of(theme).Paper, 0, 0, 5, 5));
        }
    }

    [Fact]
    public void Density_multiplies_pixels()
    {
        Picture once = VerdictPicture.Of(Samples.Two(), new(PictureStyle.PhoneWidthPx));
        using var twice = new Image(VerdictPicture.Of(Samples.Two(), new(PictureStyle.PhoneWidthPx, PixelDensity: 2)).Png());
        Assert.Equal((2 * once.WidthPx, 2 * once.HeightPx), (twice.Width, twice.Height));
    }
}
