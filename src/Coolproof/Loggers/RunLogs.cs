using Coolproof.Notebook.Journal;

namespace Coolproof.Loggers;

/// <summary>A trace as it stands on a run's page: from a little before go to some minutes after the halt.</summary>
/// <param name="Trace">The trace.</param>
/// <param name="View">Its picture.</param>
/// <param name="Fit">Where the runs lie in it.</param>
internal sealed record RunLogs(NotedTrace Trace, TraceView View, TraceFit Fit)
{
    const double BeforeS = 30, AfterS = 240;

    /// <summary>Traces of a day whose clock was set and that hold the run.</summary>
    public static IEnumerable<RunLogs> Of(PitNotebook notebook, NotedDay day, NotedRun run, LoggerFiles files)
    {
        foreach (var noted in notebook.TracesOf(day.Id))
        {
            if (noted.AheadMs is not { } ms) continue;
            using var trace = files.Open(noted.Sha256);
            if (trace is null) continue;
            var fit = TraceFit.At(notebook, day, trace, files.GridOf(noted.Sha256!, trace), ms / 1000);
            if (fit.Runs.FirstOrDefault(one => one.Run.Id == run.Id) is not { } traced) continue;
            yield return new RunLogs(noted, TraceView.Of(trace, day, traced.GoS - BeforeS, (traced.HaltS ?? traced.StopS ?? traced.GoS) + AfterS), fit);
        }
    }
}
