using System.Globalization;
using Coolproof.Notebook.Journal;
using Coolproof.Traces.Import;
using Coolproof.Traces.Kept;
using Coolproof.Traces.Load;

namespace Coolproof.Loggers;

/// <summary>What a logged current says of a run, from go to the end of hard driving.</summary>
/// <param name="Run">The run.</param>
/// <param name="Channel">Name of the channel.</param>
/// <param name="OfPack">Whether it is the pack's current: only then it tells the charge drawn.</param>
/// <param name="Current">Mean, root mean square, charge.</param>
internal sealed record TracedLoad(NotedRun Run, string Channel, bool OfPack, DriveCurrent Current)
{
    /// <summary>Loads of the runs that lie in a trace; of several currents the pack's. A run whose end isn't known, or that was logged in part only, has none.</summary>
    public static IReadOnlyList<TracedLoad> Of(KeptTrace trace, TraceFit fit)
    {
        var currents = trace.About.Channels.Select((channel, i) => (channel, i)).Where(one => one.channel.Measures == Measured.Current).OrderByDescending(one => Says(one.channel.Name)).ToList();
        return currents is [var (best, index), ..] ? [.. fit.Runs.Select(run => Of(trace, best, index, run)).OfType<TracedLoad>()] : [];
    }

    /// <summary>In words: charge first, where it is the pack's.</summary>
    public string Words() => string.Create(CultureInfo.InvariantCulture,
        $"{(OfPack ? $"{Current.ChargeMah:0} mAh drawn, " : "motor ")}{Current.MeanA:0.0} A in the mean, {Current.RmsA:0} A rms as logged");

    static TracedLoad? Of(KeptTrace trace, KeptChannel channel, int index, TracedRun run)
    {
        if (run.StopS is not { } stop || stop <= run.GoS) return null;
        List<double> at = [], amperes = [];
        foreach (var rows in trace.Rows((long)(1e6 * (run.GoS - 5)), (long)(1e6 * (stop + 5)), index))
        {
            for (var i = 0; i < rows.AtUs.Length; i++)
            {
                at.Add(rows.AtUs[i] / 1e6);
                amperes.Add((rows.Values[0][i] * channel.Scale) + channel.Shift);
            }
        }
        return DriveCurrent.Of([.. at], [.. amperes], run.GoS, stop) is { } current ? new(run.Run, channel.Name, Says(channel.Name) > 0, current) : null;
    }

    // The pack's by its name, or where nothing is said; a motor's current is more than the pack's while the throttle is part open.
    static int Says(string name) => name.ToLower(CultureInfo.InvariantCulture) is var word && (word.Contains("mot", StringComparison.Ordinal) || word.Contains("phase", StringComparison.Ordinal)) ? 0
        : word.Contains("bat", StringComparison.Ordinal) || word.Contains("pack", StringComparison.Ordinal) || word.Contains("input", StringComparison.Ordinal) ? 2 : 1;
}
