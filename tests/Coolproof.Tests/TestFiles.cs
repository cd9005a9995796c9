namespace Coolproof.Tests;

/// <summary>Where the repository's own files are.</summary>
static class TestFiles
{
    /// <summary>The folder that holds the solution.</summary>
    public static string Root { get; } = FindRoot();

    /// <summary>A path inside the repository.</summary>
    public static string Of(params string[] parts) => Path.Combine([Root, .. parts]);

    static string FindRoot()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
            if (File.Exists(Path.Combine(folder.FullName, "Coolproof.slnx"))) return folder.FullName;
        throw new DirectoryNotFoundException("No folder above the tests holds Coolproof.slnx.");
    }
}
