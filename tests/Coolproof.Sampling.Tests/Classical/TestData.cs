namespace Coolproof.Sampling.Tests.Classical;

static class TestData
{
    /// <summary>A file of the Data folder, beside the program or, when it was not copied, in the source tree.</summary>
    public static string Path(params string[] parts)
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            var file = System.IO.Path.Combine([folder.FullName, "Data", .. parts]);
            if (File.Exists(file)) return file;
        }
        throw new FileNotFoundException($"No Data/{string.Join('/', parts)} above {AppContext.BaseDirectory}.");
    }
}
