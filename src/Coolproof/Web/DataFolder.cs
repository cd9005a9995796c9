namespace Coolproof.Web;

/// <summary>The person's own folder for data, by the XDG base directory specification: the notebook, and what this machine keeps beside it.</summary>
internal static class DataFolder
{
    /// <summary>The folder, made where there is none, readable by nobody else.</summary>
    /// <param name="variable">Reads an environment variable.</param>
    /// <exception cref="IOException">It can't be made.</exception>
    public static string Of(Func<string, string?> variable)
    {
        // A relative path in the variable is to be ignored, says the specification.
        var data = variable("XDG_DATA_HOME") is { Length: > 0 } given && Path.IsPathRooted(given)
            ? given
            : Path.Combine(variable("HOME") is { Length: > 0 } home ? home : Environment.GetFolderPath(Environment.SpecialFolder.UserProfile), ".local", "share");
        var folder = Path.Combine(data, "coolproof");
        Private(folder);
        return folder;
    }

    /// <summary>Makes a folder that only its owner may look into; one that is there is left as it is.</summary>
    public static void Private(string folder)
    {
        if (OperatingSystem.IsWindows()) Directory.CreateDirectory(folder);
        else Directory.CreateDirectory(folder, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
    }
}
