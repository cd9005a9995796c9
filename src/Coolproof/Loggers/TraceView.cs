using System.Globalization;
using Coolproof.Notebook.Journal;
using Coolproof.Pages.Shown;
using Coolproof.Pictures;
using Coolproof.Traces.Import;
using Coolproof.Traces.Kept;

namespace Coolproof.Loggers;

/// <summary>A trace as a page shows it.</summary>
/// <param name="FirstS">Its begin by its own clock, s.</param>
/// <param name="Channels">Channels that may be the can.</param>
/// <param name="Drawn">Channels that are drawn, the can first.</param>
/// <param name="UtcOffsetS">Local time of the day minus UTC, s.</param>
internal sealed record TraceView(double FirstS, IReadOnlyList<string> Channels, IReadOnlyList<DrawnChannel> Drawn, double UtcOffsetS)
{
    const int MostDrawn = 4, Steps = 500;

    /// <summary>Draws a trace for the eye.</summary>
    /// <param name="trace">The trace.</param>
    /// <param name="day">Its day.</param>
    /// <param name="fromS">From, by its own clock, s; null: its begin.</param>
    /// <param name="toS">To; null: its end.</param>
    public static TraceView Of(KeptTrace trace, NotedDay day, double? fromS = null, double? toS = null)
    {
        long from = fromS is { } first ? (long)(1e6 * first) : trace.About.FirstUs, to = Math.Max(from + 1_000_000, toS is { } last ? (long)(1e6 * last) : trace.About.LastUs);
        var can = TracedReadings.CanChannels(trace);
        var drawn = trace.About.Channels.Select((channel, i) => (channel, i)).OrderBy(one => can.Count > 0 && one.channel.Name == can[0] ? 0 : one.channel.Measures == Measured.Other ? 2 : 1).ThenBy(one => one.i).Take(MostDrawn)
            .Select(one => new DrawnChannel(one.channel.Name, one.channel.Unit, one.channel.Measures, trace.Drawn(one.i, from, to, Steps)));
        return new TraceView(trace.About.FirstUs / 1e6, can, [.. drawn], day.UtcOffset.Seconds);
    }

    /// <summary>Draws it with runs laid over.</summary>
    public Picture Draw(PictureStyle style, TraceFit? fit) => TracePicture.Of(
        Drawn, [.. (fit?.Runs ?? []).Select(run => new DrawnRun(TimeWords.Run(run.Run), run.GoS, run.StopS, run.HaltS))], at => Clock(at, fit), style);

    /// <summary>A time of the trace: of the day where its clock is set, else minutes from its begin.</summary>
    public string Clock(double atS, TraceFit? fit) => fit is null
        ? TimeWords.MinutesSeconds(atS - FirstS)
        : DateTime.UnixEpoch.AddSeconds(Math.Clamp(atS - fit.AheadS + UtcOffsetS, 0, 4e9)).ToString("HH:mm", CultureInfo.InvariantCulture);
}
