using Coolproof.Live.Shown;
using Coolproof.Notebook.Journal;
using Coolproof.Traces;
using Coolproof.Traces.Live;
using NodaTime;

namespace Coolproof.Sensors;

/// <summary>What the sensors told while a run was driven, and shortly before and after.</summary>
internal static class RunTraces
{
    const long BeforeMs = 10_000;
    const long AfterMs = 60_000; // the can soaks out for a minute and more after the stop

    /// <summary>The time of a run: from 10 s before go to a minute after halt, else after stop, else after the noted drive; null where it has no go, or it is still driven.</summary>
    public static (long GoMs, long FromMs, long ToMs)? SpanOf(NotedRun run)
    {
        if (run.Go?.At is not { } go) return null;
        var end = run.Halt?.At ?? run.Stop?.At ?? (run.DriveS is { } drive ? go + Duration.FromSeconds(drive) : (Instant?)null);
        if (end is not { } last || last < go) return null;
        return (go.ToUnixTimeMilliseconds(), go.ToUnixTimeMilliseconds() - BeforeMs, last.ToUnixTimeMilliseconds() + AfterMs);
    }

    /// <summary>What was kept of each channel within a span of time; channels without a sample are left out.</summary>
    /// <exception cref="IOException">It can't be read.</exception>
    public static IReadOnlyList<ChannelTrace> Of(TraceFolder folder, long fromMs, long toMs) =>
        [.. folder.Channels(fromMs, toMs).Select(channel => new ChannelTrace(channel, folder.Read(channel, fromMs, toMs))).Where(trace => trace.Samples.Count > 0)];
}

/// <summary>The samples of a channel within a span of time.</summary>
/// <param name="Channel">The channel.</param>
/// <param name="Samples">Samples in the order of time.</param>
internal sealed record ChannelTrace(TraceChannel Channel, IReadOnlyList<Sample> Samples)
{
    /// <summary>How many values there are.</summary>
    public int Values => Samples.Count(sample => sample.Mark == SampleMark.Good);

    /// <summary>How many gaps.</summary>
    public int Gaps => Samples.Count(sample => sample.Mark == SampleMark.Gap);

    /// <summary>How many that can't be right.</summary>
    public int Nonsense => Samples.Count(sample => sample.Mark == SampleMark.Nonsense);

    /// <summary>Least and greatest value; null where there is none.</summary>
    public (double Low, double High)? Span => Values == 0 ? null
        : (Samples.Where(sample => sample.Mark == SampleMark.Good).Min(sample => sample.Value), Samples.Where(sample => sample.Mark == SampleMark.Good).Max(sample => sample.Value));

    /// <summary>Its picture over a span of time.</summary>
    public MovingPicture Picture(long toMs, long spanMs) => MovingPicture.Of(Samples, toMs, Channel.Unit == "°C" ? 2 : 0, spanMs);
}
