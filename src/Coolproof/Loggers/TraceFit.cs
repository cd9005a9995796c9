using Coolproof.Notebook.Journal;
using Coolproof.Traces.Import;
using Coolproof.Traces.Kept;
using Coolproof.Traces.Shape;
using NodaTime;

namespace Coolproof.Loggers;

/// <summary>A run as it lies in a trace. Times are s by the trace's own clock.</summary>
/// <param name="Run">The run.</param>
/// <param name="GoS">Go.</param>
/// <param name="StopS">End of hard driving; null where not known.</param>
/// <param name="HaltS">Halt; where it is not known, of a run that is typed from a sheet, eight seconds after the stop.</param>
/// <param name="Seen">Whether go or stop was seen in the trace there.</param>
internal sealed record TracedRun(NotedRun Run, double GoS, double? StopS, double? HaltS, bool Seen);

/// <summary>How a trace's clock may stand to the notebook's, and where the runs lie in it then.</summary>
/// <param name="AheadS">The trace's clock minus the notebook's, s.</param>
/// <param name="Odds">Probability of it by times, shape and clock; 1 where the person said it.</param>
/// <param name="Score">Log odds of its gos and stops.</param>
/// <param name="Runs">The runs.</param>
internal sealed record TraceFit(double AheadS, double Odds, double Score, IReadOnlyList<TracedRun> Runs)
{
    const double TapSdS = 1.5, MinuteSdS = 20, TypedRollInS = 8;
    // Loggers whose clock somebody set are off by a minute or two.
    const double SetClockSdS = 90;

    /// <summary>Whether so much speaks for it that one tap is enough.</summary>
    public bool Sure => Score >= ClockMatch.LeastScore && Odds >= 0.9;

    /// <summary>The ways in which a trace fits its day, the likeliest first.</summary>
    public static IReadOnlyList<TraceFit> Of(PitNotebook notebook, NotedDay day, KeptTrace trace, SecondGrid grid)
    {
        var (runs, known) = Known(notebook, day);
        return [.. ClockMatch.Of(grid, known, PriorOf(day, trace, known)).Select(way => new TraceFit(way.AheadS, way.Odds, way.Score, [.. way.Runs.Select(found => Placed(runs[found.Run], known[found.Run], way.AheadS, found))]))];
    }

    /// <summary>The way that the person has said.</summary>
    public static TraceFit At(PitNotebook notebook, NotedDay day, KeptTrace trace, SecondGrid grid, double aheadS)
    {
        var (runs, known) = Known(notebook, day);
        // A clock that is known to a second, so that gos and stops are still seen where they are.
        var way = ClockMatch.Of(grid, known, new ClockPrior(aheadS, 1)).FirstOrDefault(one => Math.Abs(one.AheadS - aheadS) < 5);
        double first = trace.About.FirstUs / 1e6, last = trace.About.LastUs / 1e6;
        return new TraceFit(aheadS, 1, way?.Score ?? 0, [.. runs.Select((run, i) => (run, i)).Where(one => (known[one.i].StopS ?? known[one.i].GoS) + aheadS > first && known[one.i].GoS + aheadS < last)
            .Select(one => Placed(one.run, known[one.i], aheadS, way?.Runs.Where(found => found.Run == one.i).Cast<FoundRun?>().FirstOrDefault()))]);
    }

    /// <summary>Go of the first run of a day that a clock tells of, s since 1970 UTC, and its name; null where none is.</summary>
    public static (double GoS, string Name)? FirstGo(PitNotebook notebook, NotedDay day) => Known(notebook, day).Known is [var first, ..] ? (first.GoS, first.Name) : null;

    /// <summary>Runs of a day that a clock tells of, with what the notebook knows of them.</summary>
    static (NotedRun[] Runs, KnownRun[] Known) Known(PitNotebook notebook, NotedDay day)
    {
        List<NotedRun> runs = [];
        List<KnownRun> known = [];
        foreach (var run in notebook.RunsOf(day.Id))
        {
            var typed = run.Go is null ? RunStart.Of(run, day) : null;
            if ((run.Go?.At ?? typed?.Local.WithOffset(typed.Offset ?? day.UtcOffset).ToInstant()) is not { } go) continue;
            var goS = Seconds(go);
            double? stopS = (run.Stop ?? run.Halt)?.At is { } stop ? Seconds(stop) : run.DriveS is { } drive ? goS + drive : null;
            runs.Add(run);
            known.Add(new KnownRun(Pages.Shown.TimeWords.Run(run), goS, stopS, typed is { Local.Second: 0 } ? MinuteSdS : TapSdS));
        }
        return ([.. runs], [.. known]);
    }

    // Of a clock that was read to the minute the trace knows better when go was; of taps the taps do.
    static TracedRun Placed(NotedRun run, KnownRun known, double aheadS, FoundRun? found)
    {
        var seen = found is { } one && (one.GoScore > 3 || one.StopScore > 3);
        var minute = known.SdS >= MinuteSdS;
        var go = minute && found is { GoScore: > 3 } at ? at.GoS : known.GoS + aheadS;
        double? stop = minute ? run.DriveS is { } drive ? go + drive : null : known.StopS + aheadS;
        double? halt = run.Halt is { } stamp ? Seconds(stamp.At) + aheadS : stop is { } ended ? ended + (run.RollInS ?? TypedRollInS) : null;
        return new TracedRun(run, go, stop, halt, seen);
    }

    static ClockPrior? PriorOf(NotedDay day, KeptTrace trace, KnownRun[] known)
    {
        var offset = day.UtcOffset.Seconds;
        return trace.About.Clock switch
        {
            TraceClock.Utc => new ClockPrior(0, SetClockSdS),
            TraceClock.LocalDate => new ClockPrior(offset, SetClockSdS),
            TraceClock.Midnight when known.Length > 0 => new ClockPrior(offset - (86_400 * Math.Floor((known.Min(run => run.GoS) + offset) / 86_400)), SetClockSdS),
            _ => null,
        };
    }

    static double Seconds(Instant at) => at.ToUnixTimeTicks() / (double)NodaConstants.TicksPerSecond;
}
