namespace Coolproof.Rehearsal.Tests;

/// <summary>Where the repository lies, seen from a test's output folder.</summary>
static class RepositoryRoot
{
    internal static string PathOf(params string[] parts)
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Coolproof.slnx")))
            folder = folder.Parent;
        return Path.Combine([folder?.FullName ?? throw new DirectoryNotFoundException("No Coolproof.slnx above the tests."), .. parts]);
    }
}
