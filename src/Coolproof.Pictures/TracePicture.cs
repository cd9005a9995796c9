using Coolproof.Pictures.Drawing;
using Coolproof.Traces.Import;
using Coolproof.Traces.Kept;

namespace Coolproof.Pictures;

/// <summary>A channel of a trace as it is drawn.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Unit">Its own unit; °C follows the picture's choice.</param>
/// <param name="Measures">What it measures.</param>
/// <param name="Drawn">Smallest and greatest values over time.</param>
public sealed record DrawnChannel(string Name, string Unit, Measured Measures, Envelope Drawn);

/// <summary>A run laid over a trace. Times are s by the trace's own clock.</summary>
/// <param name="Label">Like "run 3".</param>
/// <param name="GoS">Go.</param>
/// <param name="StopS">End of hard driving; null where not known.</param>
/// <param name="HaltS">Halt; null where not known.</param>
public sealed record DrawnRun(string Label, double GoS, double? StopS, double? HaltS);

/// <summary>A logger's trace with the runs laid over it: shaded from go to stop, a line at the halt.</summary>
public static class TracePicture
{
    /// <summary>Draws channels one below the other over one span of time.</summary>
    /// <param name="channels">At least one; all over the same span.</param>
    /// <param name="runs">Runs in it.</param>
    /// <param name="clock">Says a time by the trace's own clock, s.</param>
    /// <param name="style">Width, theme, units; null: a page, light, Celsius. Its title is the finding.</param>
    public static Picture Of(IReadOnlyList<DrawnChannel> channels, IReadOnlyList<DrawnRun> runs, Func<double, string> clock, PictureStyle? style = null)
    {
        ArgumentNullException.ThrowIfNull(channels);
        ArgumentNullException.ThrowIfNull(runs);
        ArgumentOutOfRangeException.ThrowIfZero(channels.Count);
        style ??= new();
        style.Check();
        var sheet = new Sheet(style, Typesetter.BuiltIn);
        string finding = style.Title ?? $"{channels[0].Name} and {runs.Count} {(runs.Count == 1 ? "run" : "runs")}";
        const string About = "Shaded: from go to the end of hard driving. Line: the halt. Each step is as high as all between its smallest and greatest value: no peak is left out.";
        double y = Heading.Draw(sheet, finding, About) + sheet.Measures.Margin * 0.8;
        for (int c = 0; c < channels.Count; c++)
            y = new TracePanel(sheet, channels[c], runs, clock).Draw(y, c == 0 ? (sheet.Measures.Narrow ? 170 : 220) : 90, last: c == channels.Count - 1);
        return new(sheet, Heading.Foot(sheet, y, [style.Note]), finding, $"{About} {string.Join(", ", channels.Select(channel => channel.Name))}; {string.Join(", ", runs.Select(run => $"{run.Label} from {clock(run.GoS)}"))}.");
    }
}
