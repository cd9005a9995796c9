namespace Coolproof.Commands;

/// <summary>Files that are written whole or not at all.</summary>
internal static class WholeFile
{
    /// <summary>Writes a new file: under another name first, then under its own; one that is there is never overwritten.</summary>
    /// <exception cref="IOException">It can't be written, or is there already.</exception>
    public static void Write(string path, Action<TextWriter> write)
    {
        var beside = path + ".part";
        try
        {
            using (var writer = new StreamWriter(beside, append: false) { NewLine = "\n" }) write(writer);
            File.Move(beside, path, overwrite: false);
        }
        finally
        {
            File.Delete(beside);
        }
    }
}
