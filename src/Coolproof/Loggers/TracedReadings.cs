using System.Globalization;
using Coolproof.Notebook.Journal;
using Coolproof.Pages.Forms;
using Coolproof.Traces.Import;
using Coolproof.Traces.Kept;
using Coolproof.Traces.Thinning;

namespace Coolproof.Loggers;

/// <summary>Takes readings out of a trace into the runs, as shots of a probe, and takes them out of the runs again.</summary>
internal static class TracedReadings
{
    // Without a note of when power and fan went off a trace counts no longer than this; tested so (docs/traces.md).
    const double UntilS = 60, ShortestPowerOnS = 10;

    /// <summary>Channels that may be the can's temperature, the likeliest first.</summary>
    public static IReadOnlyList<string> CanChannels(KeptTrace trace) =>
        [.. trace.About.Channels.Where(channel => channel.Measures == Measured.Temperature).OrderByDescending(channel => Says(channel.Name)).Select(channel => channel.Name)];

    /// <summary>What is said to take a trace's readings: its clock, the probe where it is new, and for each run the readings after its halt. Runs that had readings of this trace get new ones.</summary>
    /// <param name="notebook">The notebook.</param>
    /// <param name="noted">The trace.</param>
    /// <param name="trace">Its file.</param>
    /// <param name="fit">Where the runs lie in it.</param>
    /// <param name="channel">The channel; a temperature.</param>
    /// <param name="newId">Makes UUIDs.</param>
    public static IReadOnlyList<Said> Take(PitNotebook notebook, NotedTrace noted, KeptTrace trace, TraceFit fit, string channel, Func<Guid> newId)
    {
        List<Said> said = [.. Out(notebook, noted)];
        var place = trace.About.Channels.Select((one, i) => (one, i)).First(pair => pair.one.Name == channel).i;
        var probe = notebook.Instruments.FirstOrDefault(one => string.Equals(one.Name, channel, StringComparison.OrdinalIgnoreCase))?.Id;
        if (probe is null)
        {
            probe = newId();
            said.Add(new(EntryKind.InstrumentSet, probe.Value, EntryBody.Of(("name", channel), ("type", "probe"), ("unit", "c"))));
        }
        foreach (var run in fit.Runs) said.AddRange(Of(run, noted, trace, place, probe.Value, newId));
        said.Add(new(EntryKind.TraceSet, noted.Id, EntryBody.Of(("taken", true), ("aheadMs", Math.Round(1000 * fit.AheadS)), ("channel", channel))));
        return said;
    }

    /// <summary>What is said to take them out again.</summary>
    public static IEnumerable<Said> Out(PitNotebook notebook, NotedTrace noted)
    {
        foreach (var shot in Shots(notebook, noted)) yield return new(EntryKind.Remove, shot.Id, EntryBody.Empty);
        if (noted.Taken) yield return new(EntryKind.TraceSet, noted.Id, EntryBody.Of(("taken", false)));
    }

    /// <summary>Readings of a trace that stand in runs.</summary>
    public static IReadOnlyList<NotedShot> Shots(PitNotebook notebook, NotedTrace noted) =>
        noted.Day is { } day ? [.. notebook.RunsOf(day).SelectMany(run => run.Shots).Where(shot => shot.Trace == noted.Id)] : [];

    static IEnumerable<Said> Of(TracedRun traced, NotedTrace noted, KeptTrace trace, int channel, Guid probe, Func<Guid> newId)
    {
        if (traced.HaltS is not { } halt) yield break;
        var until = traced.Run.PowerOffS is { } off && off > ShortestPowerOnS ? Math.Min(off, UntilS) : UntilS;
        List<double> at = [], values = [];
        foreach (var rows in trace.Rows((long)(1e6 * (halt - 5)), (long)(1e6 * (halt + until + 5)), channel))
        {
            for (var i = 0; i < rows.AtUs.Length; i++)
            {
                if (double.IsNaN(rows.Values[0][i])) continue;
                at.Add((rows.AtUs[i] / 1e6) - halt);
                values.Add((rows.Values[0][i] * trace.About.Channels[channel].Scale) + trace.About.Channels[channel].Shift);
            }
        }
        var readings = StopReadings.Of([.. at], [.. values], until);
        for (var i = 0; i < readings.Count; i++)
        {
            var shot = newId();
            yield return new(EntryKind.ShotSet, shot, EntryBody.Of(
                ("run", traced.Run.Id), ("trace", noted.Id), ("instrument", probe), ("spot", "can"), ("surface", "tape"), ("hold", "average"), ("stopToReadS", Math.Round(readings[i].AfterHaltS, 1)), ("untimed", true), ("order", 1000 + i)));
            yield return new(EntryKind.ShotRead, shot, EntryBody.Of(("shot", shot), ("value", Math.Round(readings[i].Value, 2)), ("unit", "c")));
        }
    }

    static int Says(string name) => name.ToLower(CultureInfo.InvariantCulture) is var word && word.Contains("can", StringComparison.Ordinal) ? 3
        : word.Contains("mot", StringComparison.Ordinal) ? 2 : word.Contains("probe", StringComparison.Ordinal) || word.Contains("temp", StringComparison.Ordinal) ? 1 : 0;
}
