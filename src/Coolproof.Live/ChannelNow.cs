using Coolproof.Live.Shown;
using Coolproof.Traces;
using Coolproof.Traces.Live;

namespace Coolproof.Live;

/// <summary>A channel while it is heard: its last ten minutes and its pulse. Its owner sees to it that one thread at a time uses it.</summary>
/// <param name="channel">The channel.</param>
/// <param name="recent">What was kept of it within the last ten minutes, before the program began.</param>
internal sealed class ChannelNow(TraceChannel channel, IEnumerable<Sample> recent)
{
    readonly List<Sample> recent = [.. recent];
    Sample? value;
    string? doubt;
    long count;

    /// <summary>Its pulse.</summary>
    public ChannelPulse Pulse { get; } = new();

    /// <summary>The channel.</summary>
    public TraceChannel Channel => channel;

    /// <summary>The last sample that is held; null when there is none.</summary>
    public Sample? Last => recent.Count > 0 ? recent[^1] : null;

    /// <summary>Takes a sample.</summary>
    public void Take(Sample sample, string? why)
    {
        recent.Add(sample);
        if (sample.Mark == SampleMark.Gap) return;
        count++;
        doubt = why;
        if (sample.Mark == SampleMark.Good && (value is not { } before || sample.AtMs >= before.AtMs)) value = sample;
    }

    /// <summary>Lets go what is older than the picture shows.</summary>
    public void Forget(long nowMs)
    {
        var old = recent.FindIndex(sample => sample.AtMs >= nowMs - MovingPicture.WindowMs);
        if (old > 0) recent.RemoveRange(0, old);
        else if (old < 0 && recent.Count > 0) recent.Clear();
    }

    /// <summary>How it is shown.</summary>
    public ShownChannel Show(long nowMs)
    {
        var samples = Timeline.Of(recent);
        var state = Pulse.Silent ? ChannelState.Silent : doubt is not null ? ChannelState.Nonsense : ChannelState.Live;
        return new(channel, state, value?.Value, value?.AtMs ?? 0, doubt, count, MovingPicture.Of(samples, nowMs, SensorView.LeastSpan(channel, samples)));
    }
}
