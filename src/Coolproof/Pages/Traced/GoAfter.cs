using System.Globalization;
using Coolproof.Pages.Forms;

namespace Coolproof.Pages.Traced;

/// <summary>When a run went, counted from the begin of a trace, as a person reads it off the picture: minutes and seconds like 83:20.5.</summary>
internal static class GoAfter
{
    /// <summary>Says it, to a tenth of a second.</summary>
    public static string Say(double seconds)
    {
        var tenths = Math.Round(Math.Abs(seconds) * 10);
        return string.Create(CultureInfo.InvariantCulture, $"{(seconds < 0 && tenths > 0 ? "−" : "")}{Math.Floor(tenths / 600):0}:{tenths % 600 / 10:00.0}");
    }

    /// <summary>Reads minutes and seconds, or seconds alone; before the begin with a minus.</summary>
    /// <returns>Seconds; null where it is none, or more than a month.</returns>
    public static double? Read(string? typed)
    {
        const double Month = 31 * 86_400;
        var text = (typed ?? "").Trim().Replace('−', '-');
        var before = text.StartsWith('-');
        var parts = (before ? text[1..] : text).Split(':');
        if (parts.Length > 3 || parts.Any(part => part.Length == 0 || !char.IsAsciiDigit(part[0]))) return null;
        double seconds = 0;
        foreach (var (part, i) in parts.Select((part, i) => (part, i)))
        {
            if (!TypedNumber.TryRead(part, out var number) || (i > 0 && number >= 60)) return null;
            seconds = (60 * seconds) + number;
        }
        return seconds > Month ? null : before ? -seconds : seconds;
    }
}
