namespace Coolproof.Pictures.Tests;

public sealed class SamenessTests
{
    [Theory]
    [MemberData(nameof(GalleryTests.Names), MemberType = typeof(GalleryTests))]
    public void The_same_data_give_the_same_bytes(string name)
    {
        var style = new PictureStyle(PictureStyle.PageWidthPx, Theme.Sun);
        Picture first = GalleryTests.Draw(name, style);
        string svg = first.Svg();
        byte[] png = first.Png();
        // Other pictures come between: whatever a drawing library counts on from one to the next must not show.
        VerdictPicture.Of(Samples.Two(), new(PictureStyle.PhoneWidthPx)).Svg();
        Assert.Equal(svg, GalleryTests.Draw(name, style).Svg());
        Assert.Equal(png, GalleryTests.Draw(name, style).Png());
        Assert.Equal(svg, first.Svg());
    }

    [Fact]
    public void Pictures_drawn_side_by_side_are_the_same_as_alone()
    {
        string alone = VerdictPicture.Of(Samples.Six()).Svg();
        string[] together = new string[8];
        Parallel.For(0, together.Length, i => together[i] = VerdictPicture.Of(Samples.Six()).Svg());
        Assert.All(together, svg => Assert.Equal(alone, svg));
    }
}
