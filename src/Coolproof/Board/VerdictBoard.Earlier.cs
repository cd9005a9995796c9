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

    Task JudgeTogetherAsync(Held it, EarlierTask task, CancellationToken ending) => DoAsync(
        new(it.State.About, task.Mark, Together: true),
        async stop =>
        {
            Change(it, state => state with
            {
                Earlier = (state.Earlier ?? EarlierState.Waiting(task.Days)) with { Days = task.Days, Current = false, Fault = null, Progress = new JudgeProgress("weighing the earlier days", 0) },
            });
            var progress = new Telling<JudgeProgress>(clock, TellEvery, value => TellEarlier(it, value));
            var judgement = await Task.Run(() => WithRaces(together(task.Own.Table.Table, task.Before, it.State.Verdict!, task.Own.Settings, progress, stop)), stop);
            it.EarlierMark = task.Mark;
            // Causes are told from the day by itself: their draws need not be held.
            if (judgement is Judged judged) judgement = judged with { Causes = null };
            ChangeEarlier(it, earlier => earlier with { Judgement = judgement, Mark = task.Mark, Judged = task.Days, JudgedAt = Instant.FromDateTimeOffset(clock.GetUtcNow()), Current = true, Progress = null });
        },
        stopped: () => ChangeEarlier(it, earlier => earlier with { Progress = null }),
        failed: fault =>
        {
            it.EarlierMark = task.Mark; // the same readings would fail the same way
            ChangeEarlier(it, earlier => earlier with { Progress = null, Fault = fault });
        },
        ending);

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
