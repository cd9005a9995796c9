namespace Coolproof.EndToEnd.Support;

/// <summary>Where the sources are.</summary>
static class RepositoryRoot
{
    /// <summary>The folder that holds the solution.</summary>
    public static string Path { get; } = Find();

    static string Find()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(System.IO.Path.Combine(folder.FullName, "Coolproof.slnx"))) folder = folder.Parent;
        return folder?.FullName ?? throw new InvalidOperationException("The tests run outside the repository.");
    }
}
