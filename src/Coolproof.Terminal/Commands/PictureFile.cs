using System.CommandLine;
using Coolproof.Pictures;
using Coolproof.Screen;

namespace Coolproof.Commands;

/// <summary>A picture that a command also draws to a file.</summary>
internal static class PictureFile
{
    /// <summary>The option --picture. Whether the picture can be put there is asked before any work is done.</summary>
    public static Option<string?> Option(string description)
    {
        var option = new Option<string?>("--picture") { HelpName = "OUT.svg|OUT.png", Description = description };
        option.Validators.Add(result =>
        {
            if (result.GetValueOrDefault<string?>() is { } path && Wrong(path) is { } wrong) result.AddError($"--picture {path}: {wrong}");
        });
        return option;
    }

    /// <summary>Draws, and says it where that can't be done after all.</summary>
    /// <returns>The exit code.</returns>
    public static int Drawn(Action draw, Terminal terminal)
    {
        try
        {
            draw();
            return Exit.Done;
        }
        catch (PictureException cause)
        {
            terminal.Error.WriteLine($"coolproof: {Cells.Clean(cause.Message)}");
            return Exit.Failed;
        }
    }

    /// <summary>Null, or what is wrong with a path.</summary>
    internal static string? Wrong(string path)
    {
        if (Path.GetExtension(path).ToLowerInvariant() is not (".svg" or ".png")) return "expected a name that ends in .svg or .png";
        if (Directory.Exists(path)) return "a folder has that name";
        var folder = Path.GetDirectoryName(Path.GetFullPath(path));
        return folder is null || Directory.Exists(folder) ? null : $"there is no folder {folder}";
    }
}
