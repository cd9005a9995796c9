using System.ComponentModel;
using System.Diagnostics;

namespace Coolproof.Web;

/// <summary>The person's browser.</summary>
internal static class Browser
{
    /// <summary>Opens an address where there is a display; does nothing where there is none, or no way to open it.</summary>
    public static void Open(string address, Func<string, string?> variable)
    {
        if (variable("DISPLAY") is not { Length: > 0 } && variable("WAYLAND_DISPLAY") is not { Length: > 0 }) return;
        try
        {
            using var started = Process.Start(new ProcessStartInfo("xdg-open", [address]) { RedirectStandardOutput = true, RedirectStandardError = true });
        }
        catch (Win32Exception)
        {
            // No xdg-open: the printed address is there to be clicked.
        }
    }
}
