namespace Coolproof.Pictures.Tests;

public sealed class SaveTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("pictures").FullName;

    [Fact]
    public void The_extension_chooses_the_kind_of_file()
    {
        VerdictPicture.Save(Samples.Two(), In("a.svg"));
        VerdictPicture.Save(Samples.Two(), In("a.PNG"));
        Assert.StartsWith("<svg ", File.ReadAllText(In("a.svg")));
        // First eight bytes of a PNG file: W3C, Portable Network Graphics, third edition, 5.2.
        Assert.Equal([0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A], File.ReadAllBytes(In("a.PNG"))[..8]);
        Assert.Equal(2, Directory.GetFiles(folder).Length);
    }

    [Theory]
    [InlineData("a.jpg")]
    [InlineData("a")]
    [InlineData("svg")]
    public void Another_extension_is_refused_with_the_two_that_work(string name)
    {
        var error = Assert.Throws<PictureException>(() => VerdictPicture.Save(Samples.Two(), In(name)));
        Assert.Contains(name, error.Message);
        Assert.Contains("neither .svg nor .png", error.Message);
        Assert.Empty(Directory.GetFiles(folder));
    }

    [Fact]
    public void A_folder_that_is_not_there_gives_one_clear_error()
    {
        string path = In("nowhere/a.svg");
        var error = Assert.Throws<PictureException>(() => VerdictPicture.Save(Samples.Two(), path));
        Assert.Contains(path, error.Message);
        Assert.Contains("Your readings are safe", error.Message);
    }

    [Fact]
    public void A_folder_in_the_place_of_the_file_gives_one_clear_error_and_leaves_nothing_behind()
    {
        Directory.CreateDirectory(In("a.svg"));
        Assert.Throws<PictureException>(() => VerdictPicture.Save(Samples.Two(), In("a.svg")));
        Assert.Empty(Directory.GetFiles(folder));
        Assert.True(Directory.Exists(In("a.svg")));
    }

    [Fact]
    public void A_file_that_is_there_is_replaced()
    {
        File.WriteAllText(In("a.svg"), new string('x', 1_000_000));
        VerdictPicture.Save(Samples.Two(), In("a.svg"));
        Assert.Equal(VerdictPicture.Of(Samples.Two()).Svg(), File.ReadAllText(In("a.svg")));
    }

    public void Dispose() => Directory.Delete(folder, recursive: true);

    private string In(string name) => Path.Combine(folder, name);
}
