namespace Coolproof.Commands;

/// <summary>Whether a picture can be put where it is wanted, asked before any work is done.</summary>
internal static class PicturePath
{
    /// <summary>Null, or what is wrong with a path.</summary>
    public static string? Wrong(string path)
    {
        if (Path.GetExtension(path).ToLowerInvariant() is not (".svg" or ".png")) return "expected a name that ends in .svg or .png";
        if (Directory.Exists(path)) return "a folder has that name";
        var folder = Path.GetDirectoryName(Path.GetFullPath(path));
        return folder is null || Directory.Exists(folder) ? null : $"there is no folder {folder}";
    }
}
