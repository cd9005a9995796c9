namespace Coolproof.Commands;

/// <summary>Where a rehearsal is put: a table that is there already is never written over, since it may hold a real day.</summary>
internal static class RehearsalPlace
{
    /// <summary>Null, or what is wrong with a path.</summary>
    public static string? Wrong(string path)
    {
        if (!path.EndsWith(".csv", StringComparison.OrdinalIgnoreCase)) return "expected a name that ends in .csv";
        foreach (var there in new[] { path, TruthBeside(path) })
            if (Path.Exists(there)) return $"{there} is there already and is left as it is; give another name";
        var folder = Path.GetDirectoryName(Path.GetFullPath(path));
        return folder is null || Directory.Exists(folder) ? null : $"there is no folder {folder}";
    }

    /// <summary>The truth's file: evening.csv has evening.truth.json.</summary>
    public static string TruthBeside(string path) => path[..^4] + ".truth.json";
}
