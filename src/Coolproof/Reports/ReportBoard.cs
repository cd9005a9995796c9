using Coolproof.Board;
using Coolproof.Evidence;

namespace Coolproof.Reports;

/// <summary>Judged reports, the last few, so that page, print, pictures and data of one report are judged once.</summary>
internal sealed class ReportBoard(Judging judging, JudgingTogether together)
{
    const int MostHeld = 16;

    readonly Lock turn = new();
    readonly Dictionary<string, Task<ReportJudging>> held = [];
    readonly Queue<string> order = new();

    /// <summary>What came of judging a subject.</summary>
    /// <param name="subject">The subject.</param>
    /// <param name="kept">What need not be judged again.</param>
    /// <param name="cancel">Stops waiting; the work goes on for whoever asks next.</param>
    public Task<ReportJudging> OfAsync(ReportSubject subject, ReportKept kept, CancellationToken cancel)
    {
        var mark = $"{string.Join(' ', subject.Earlier.Select(one => one.Csv).Prepend(subject.Csv).Select(csv => Convert.ToHexString(System.Security.Cryptography.SHA256.HashData(csv))))} {subject.EarlierFirst} {subject.Settings}";
        lock (turn)
        {
            if (held.TryGetValue(mark, out var there) && !there.IsFaulted) return there.WaitAsync(cancel);
            if (!held.ContainsKey(mark)) order.Enqueue(mark);
            if (order.Count > MostHeld) held.Remove(order.Dequeue());
            var work = Task.Run(() => ReportJudging.Of(subject, judges, kept), CancellationToken.None);
            held[mark] = work;
            return work.WaitAsync(cancel);
        }
    }

    readonly ReportJudges judges = new(
        (table, how) => judging(table, how, Unwatched, CancellationToken.None), (table, before, alone, how) => together(table, before, alone, how, Unwatched, CancellationToken.None));

    static readonly IProgress<JudgeProgress> Unwatched = new Progress<JudgeProgress>();
}
