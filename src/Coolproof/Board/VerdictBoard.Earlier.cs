using Coolproof.Evidence;
using NodaTime;

namespace Coolproof.Board;

// Days together with earlier ones.
internal sealed partial class VerdictBoard
{
    /// <summary>The next work of judging days together: the one that was asked for last. Brings the others up to date on the way.</summary>
    (Held Held, EarlierTask Task)? NextEarlier()
    {
        var notebook = board.Notebook;
        Held[] asked;
        lock (turn) asked = [.. held.Values.Where(it => it is { EarlierAsked: true, State: { Current: true, Verdict: not null } } && it.EarlierSeen != notebook).OrderByDescending(it => it.AskedAt)];
        foreach (var it in asked)
        {
            var task = EarlierTask.Of(notebook, it.State.About, threads);
            if (task is not null && task.Own.Mark != it.Mark) continue; // readings came this moment: what the day says by itself goes first
            if (task is not null && task.Mark != it.EarlierMark) return (it, task);
            it.EarlierSeen = notebook;
            if (task is null && it.State.Earlier is not null) Change(it, state => state with { Earlier = null });
            if (task is null) it.EarlierMark = null;
            if (task is not null && it.State.Earlier is { Current: false, Fault: null }) ChangeEarlier(it, earlier => earlier with { Current = true, Progress = null });
        }
        return null;
    }

    async Task JudgeTogetherAsync(Held it, EarlierTask task, CancellationToken ending)
    {
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(ending);
        lock (turn) running = new(it.State.About, task.Mark, Together: true, stop);
        StopIfOutdated(); // what came while the task was put together found nothing to stop
        Change(it, state => state with
        {
            Earlier = (state.Earlier ?? EarlierState.Waiting(task.Days)) with { Days = task.Days, Current = false, Fault = null, Progress = new JudgeProgress("weighing the earlier days", 0) },
        });
        try
        {
            var progress = new Telling<JudgeProgress>(clock, TellEvery, value => TellEarlier(it, value));
            var judgement = await Task.Run(() => together(task.Own.Table.Table, task.Before, it.State.Verdict!, task.Own.Settings, progress, stop.Token), stop.Token);
            it.EarlierMark = task.Mark;
            // Races and causes are told from the day by itself: their draws need not be held.
            if (judgement is Judged judged) judgement = judged with { Races = null, Causes = null };
            ChangeEarlier(it, earlier => earlier with { Judgement = judgement, Mark = task.Mark, Judged = task.Days, JudgedAt = Instant.FromDateTimeOffset(clock.GetUtcNow()), Current = true, Progress = null });
        }
        catch (OperationCanceledException) when (!ending.IsCancellationRequested)
        {
            ChangeEarlier(it, earlier => earlier with { Progress = null }); // newer readings came: they are next
        }
        catch (Exception fault) when (fault is not OperationCanceledException)
        {
            log.LogError(fault, "Judging {About} together with earlier days failed", it.State.About);
            it.EarlierMark = task.Mark; // the same readings would fail the same way
            ChangeEarlier(it, earlier => earlier with { Progress = null, Fault = $"This is a fault of the program, not of your readings: {fault.Message}" });
        }
        finally
        {
            lock (turn) running = null;
        }
    }

    void TellEarlier(Held it, JudgeProgress value)
    {
        lock (turn)
        {
            if (it.State.Earlier?.Progress is null) return; // a late report of work that has ended
        }
        ChangeEarlier(it, earlier => earlier with { Progress = value });
    }

    void ChangeEarlier(Held it, Func<EarlierState, EarlierState> change) => Change(it, state => state.Earlier is { } earlier ? state with { Earlier = change(earlier) } : state);
}
