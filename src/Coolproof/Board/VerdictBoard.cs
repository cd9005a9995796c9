using Coolproof.Evidence;
using Coolproof.Notebook;
using Coolproof.Notebook.Journal;
using NodaTime;

namespace Coolproof.Board;

/// <summary>Judges a table: <see cref="Judge.Of"/>.</summary>
internal delegate Judgement Judging(ReadingsTable table, JudgeSettings settings, IProgress<JudgeProgress> progress, CancellationToken cancel);

/// <summary>Judges a table together with those of earlier days: <see cref="Judge.Together"/>.</summary>
internal delegate Judgement JudgingTogether(
    ReadingsTable table, IReadOnlyList<ReadingsTable> before, Verdict alone, JudgeSettings settings, IProgress<JudgeProgress> progress, CancellationToken cancel);

/// <summary>
/// Verdicts of the days and questions that people look at, refreshed in the background, one after the other, when their readings change. Newer readings stop the work on
/// older ones. The last answer stays until the next one is there, and says that it is old. When all of them are up to date, days are judged together with earlier ones where
/// somebody looks at that.
/// </summary>
internal sealed partial class VerdictBoard(NotebookBoard board, TimeProvider clock, Judging judging, JudgingTogether together, ILogger<VerdictBoard> log) : BackgroundService
{
    /// <summary>Verdicts held; the ones that nobody has looked at for longest go first.</summary>
    public const int MostHeld = 64;

    // Several taps come within a moment; a verdict for each of them would only make all of them late.
    static readonly TimeSpan Settle = TimeSpan.FromMilliseconds(250);
    static readonly TimeSpan TellEvery = TimeSpan.FromMilliseconds(200);

    readonly Lock turn = new();
    readonly Dictionary<Guid, Held> held = [];
    readonly SemaphoreSlim wake = new(0, 1);
    readonly int threads = Math.Clamp(Environment.ProcessorCount - 1, 1, 4); // pages are served beside it
    long lastStamp;
    Running? running;

    /// <summary>Raised after a state has changed; whoever listens must be quick about it.</summary>
    public event Action? Changed;

    /// <summary>How the verdict of a day or a question stands; asking has it judged and kept up to date.</summary>
    public VerdictState Of(Guid about)
    {
        lock (turn)
        {
            var it = HoldOf(about);
            it.AskedAt = clock.GetTimestamp();
            // Readings may have changed a moment ago, and nobody looked yet.
            if (it.State.Judgement is null || it.Seen != board.Notebook) Wake();
            return it.State;
        }
    }

    /// <summary>The same of a day, which is then also judged together with the earlier ones that belong to it.</summary>
    public VerdictState WithEarlier(Guid about)
    {
        lock (turn)
        {
            var it = HoldOf(about);
            if (!it.EarlierAsked) Wake();
            it.EarlierAsked = true;
        }
        return Of(about);
    }

    /// <summary>States that changed after a stamp, in the order of change.</summary>
    public IReadOnlyList<VerdictState> Since(long stamp)
    {
        lock (turn) return [.. held.Values.Select(it => it.State).Where(state => state.Stamp > stamp).OrderBy(state => state.Stamp)];
    }

    /// <inheritdoc/>
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        await board.ReadyAsync(stoppingToken);
        void Look()
        {
            StopIfOutdated();
            Wake();
        }
        board.Changed += Look;
        try
        {
            Wake();
            while (true)
            {
                await wake.WaitAsync(stoppingToken);
                while (true)
                {
                    if (Next() is { } work) await JudgeAsync(work.Held, work.Task, stoppingToken);
                    else if (NextEarlier() is { } more) await JudgeTogetherAsync(more.Held, more.Task, stoppingToken);
                    else break;
                }
            }
        }
        finally
        {
            board.Changed -= Look;
        }
    }

    void Wake()
    {
        try
        {
            wake.Release();
        }
        catch (SemaphoreFullException)
        {
            // It is awake already.
        }
    }

    Held HoldOf(Guid about)
    {
        if (held.TryGetValue(about, out var there)) return there;
        if (held.Count >= MostHeld) held.Remove(held.MinBy(pair => pair.Value.AskedAt).Key);
        return held[about] = new Held(new VerdictState(about, NextStamp(), null, null, null, Current: false, null, null));
    }

    /// <summary>The next work: of what changed, the one that was asked for last. Brings the states of the others up to date on the way.</summary>
    (Held Held, JudgeTask Task)? Next()
    {
        var notebook = board.Notebook;
        Held[] all;
        lock (turn)
        {
            // The latest day is what people will look at; its verdict is ready when they do.
            if (notebook.Days.Count > 0 && notebook.Days[^1] is var day && notebook.RunsOf(day.Id).Count > 0) HoldOf(day.Id);
            all = [.. held.Values.Where(it => it.Seen != notebook).OrderByDescending(it => it.AskedAt)];
        }
        foreach (var it in all)
        {
            var task = JudgeTask.Of(notebook, it.State.About, threads);
            if (task is not null && task.Mark != it.Mark) return (it, task);
            it.Seen = notebook;
            // Readings that went and came back (an undo) have their verdict still.
            if (task is not null && !it.State.Current && it.State.Fault is null) Change(it, state => state with { Current = true, Progress = null, First = null });
            if (task is null && (it.State.Current || it.State.Progress is not null)) Change(it, state => state with { Current = false, Progress = null, First = null });
        }
        return null;
    }

    Task JudgeAsync(Held it, JudgeTask task, CancellationToken ending) => DoAsync(
        new(it.State.About, task.Mark, Together: false),
        async stop =>
        {
            Change(it, state => state with
            {
                Current = false,
                Fault = null,
                First = null,
                Progress = new JudgeProgress("waiting for the taps to settle", 0),
                Earlier = state.Earlier is { } earlier ? earlier with { Current = false, Progress = null } : null,
            });
            await Task.Delay(Settle, clock, stop);
            var quick = await Task.Run(() => FirstLook.Judged(task), stop);
            Change(it, state => state with { Quick = quick, QuickRuns = task.Table.Table.Runs.Count, First = FirstLook.Of(quick) });
            var progress = new Telling<JudgeProgress>(clock, TellEvery, value => Tell(it, value));
            var judgement = await Task.Run(() => WithRaces(judging(task.Table.Table, task.Settings, progress, stop)), stop);
            it.Mark = task.Mark;
            Change(it, state => state with
            {
                Judgement = judgement,
                Mark = task.Mark,
                Table = task.Table,
                JudgedAt = Instant.FromDateTimeOffset(clock.GetUtcNow()),
                Current = true,
                Progress = null,
                First = null,
            });
        },
        stopped: () => { },
        failed: fault =>
        {
            it.Mark = task.Mark; // the same readings would fail the same way
            Change(it, state => state with { Progress = null, First = null, Fault = fault });
        },
        ending);

    /// <summary>Does a piece of work that newer readings may stop: they are next. A failure of it is told and kept for the log.</summary>
    async Task DoAsync(Work work, Func<CancellationToken, Task> doing, Action stopped, Action<string> failed, CancellationToken ending)
    {
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(ending);
        lock (turn) running = new(work, stop);
        StopIfOutdated(); // what came while the task was put together found nothing to stop
        try
        {
            await doing(stop.Token);
        }
        catch (OperationCanceledException) when (!ending.IsCancellationRequested)
        {
            stopped();
        }
        catch (Exception fault) when (fault is not OperationCanceledException)
        {
            log.LogError(fault, "Judging {About}{Together} failed", work.About, work.Together ? " together with earlier days" : "");
            failed($"This is a fault of the program, not of your readings: {fault.Message}");
        }
        finally
        {
            lock (turn) running = null;
        }
    }

    // Draws for race days are taken out here, so that the first page that asks for one need not wait.
    static Judgement WithRaces(Judgement judgement)
    {
        _ = (judgement as Judged)?.Races?.Value;
        return judgement;
    }

    void Tell(Held it, JudgeProgress value)
    {
        lock (turn)
        {
            if (it.State.Progress is null) return; // a late report of work that has ended
        }
        Change(it, state => state with { Progress = value });
    }

    void StopIfOutdated()
    {
        Running? seen;
        lock (turn) seen = running;
        if (seen is not { } now || !Outdated(now.Work)) return;
        lock (turn)
        {
            if (running == now) now.Stop.Cancel(); // else it has ended meanwhile
        }
    }

    bool Outdated(Work work)
    {
        var notebook = board.Notebook;
        if (!work.Together) return JudgeTask.Of(notebook, work.About, threads)?.Mark != work.Mark;
        // What days say by themselves goes first; the latest is the one that people wait for.
        if (EarlierTask.Of(notebook, work.About, threads)?.Mark != work.Mark) return true;
        if (notebook.Days is not [.., var latest]) return false;
        lock (turn) return held.TryGetValue(latest.Id, out var it) && JudgeTask.Of(notebook, latest.Id, threads) is { } task && task.Mark != it.Mark;
    }

    void Change(Held it, Func<VerdictState, VerdictState> change)
    {
        lock (turn) it.State = change(it.State) with { Stamp = NextStamp() };
        Changed?.Invoke();
    }

    // By the clock, so that a listener from before a restart is told what it has not seen.
    long NextStamp() => lastStamp = Math.Max(lastStamp + 1, clock.GetUtcNow().ToUnixTimeMilliseconds());

    sealed record Work(Guid About, string Mark, bool Together);

    sealed record Running(Work Work, CancellationTokenSource Stop);

    sealed class Held(VerdictState state)
    {
        public VerdictState State { get; set; } = state;
        public string? Mark { get; set; }
        public PitNotebook? Seen { get; set; }
        public long AskedAt { get; set; }
        public bool EarlierAsked { get; set; }
        public string? EarlierMark { get; set; }
        public PitNotebook? EarlierSeen { get; set; }
    }
}
