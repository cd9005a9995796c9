using System.ComponentModel;
using System.Diagnostics;
using System.Net;

namespace Coolproof.Web;

/// <summary>The person's browser.</summary>
internal static class Browser
{
    /// <summary>Opens an address where there is a display; does nothing where there is none, or no way to open it.</summary>
    /// <param name="address">Address with a key in it.</param>
    /// <param name="folder">The person's own folder.</param>
    /// <param name="variable">Reads an environment variable.</param>
    /// <remarks>
    /// What a program is started with can be seen by everyone on the machine, so the address is handed over in a file that only its owner may read.
    /// </remarks>
    public static void Open(string address, string folder, Func<string, string?> variable)
    {
        if (variable("DISPLAY") is not { Length: > 0 } && variable("WAYLAND_DISPLAY") is not { Length: > 0 }) return;
        try
        {
            var page = Path.Combine(folder, "open.html");
            File.Delete(page);
            var options = new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.Write };
            if (!OperatingSystem.IsWindows()) options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
            var coded = WebUtility.HtmlEncode(address);
            using (var writer = new StreamWriter(page, options))
                writer.Write($"<!DOCTYPE html><html lang=\"en\"><meta charset=\"utf-8\"><title>Coolproof</title><meta http-equiv=\"refresh\" content=\"0;url={coded}\"><p><a href=\"{coded}\">To the pit table</a></p></html>\n");
            using var started = Process.Start(new ProcessStartInfo("xdg-open", [page]) { RedirectStandardOutput = true, RedirectStandardError = true });
        }
        catch (Exception cause) when (cause is Win32Exception or IOException or UnauthorizedAccessException)
        {
            // The printed address is there to be clicked.
        }
    }
}
